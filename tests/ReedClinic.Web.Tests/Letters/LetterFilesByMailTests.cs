using System.IO.Compression;
using System.Net;
using System.Text;
using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MimeKit;
using ReedClinic.Data;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Guardians;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>The letter with its mail, for those who chose so on My account. Mails are read by MimeKit (RFC 2045, RFC 2046, RFC 2183).</summary>
public sealed class LetterFilesByMailTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_letter_comes_with_its_mail_once_it_was_chosen_and_not_before_and_is_the_file_of_its_own_address()
    {
        var email = ClinicHost.NewEmail("liv");
        using var student = await host.SignedIn(await host.Admit("Liv", email), SignInWay.Password);
        var before = await SentAsync("Liv");
        using var bare = await MailAsync(email, $"The letter about your batch {before}");
        Assert.Empty(bare.Attachments);
        Assert.Contains("nothing private", Flat(bare.TextBody!), StringComparison.Ordinal);

        using (var chosen = await ChooseAsync(student, "pdf"))
        {
            Assert.Equal("/account?done=letter-files", chosen.Leads());
        }

        Assert.Contains("brings the letter as a PDF", (await student.See("/account?done=letter-files")).Page, StringComparison.Ordinal);
        Assert.Equal("pdf", await ChosenAsync(student));
        var code = await SentAsync("Liv");
        using var message = await MailAsync(email, $"The letter about your batch {code}");

        var file = Assert.IsType<MimePart>(Assert.Single(message.Attachments));
        Assert.Equal(("application/pdf", $"letter-{code}.pdf", "attachment"), (file.ContentType.MimeType, file.FileName, file.ContentDisposition!.Disposition));
        Assert.Equal(await OwnFileAsync(student, code), PdfOf(file));
        Assert.Equal("multipart/mixed", message.Body!.ContentType.MimeType);
        Assert.Equal(["multipart/alternative", "application/pdf"], ((Multipart)message.Body!).Select(part => part.ContentType.MimeType)); // the words first
        foreach (var said in new[] { Flat(message.TextBody!), Flat(new HtmlParser().ParseDocument(message.HtmlBody!).Body!.TextContent) })
        {
            Assert.Contains("The letter comes with this mail as a PDF, because you chose that", said, StringComparison.Ordinal);
            Assert.Contains($"/letters/{code}", said, StringComparison.Ordinal);
            Assert.DoesNotContain("nothing private", said, StringComparison.Ordinal);
        }

        using var back = await ChooseAsync(student, "link");
        Assert.Equal("/account?done=letter-files-off", back.Leads());
        var last = await SentAsync("Liv");
        using var again = await MailAsync(email, $"The letter about your batch {last}");
        Assert.Empty(again.Attachments);
    }

    [Fact]
    public async Task The_mail_about_a_correction_brings_the_corrected_letter_and_the_copy_has_both_under_names_of_their_own()
    {
        var email = ClinicHost.NewEmail("runa");
        using var student = await host.SignedIn(await host.Admit("Runa", email), SignInWay.Password);
        using var chosen = await ChooseAsync(student, "pdf");
        var code = await SentAsync("Runa");
        using var first = await MailAsync(email, $"The letter about your batch {code}");
        await CorrectAsync(code, "It is the upper blade.");

        using var second = await MailAsync(email, CorrectedSubject(code));

        var (was, now) = (PdfOf(first), PdfOf(second));
        Assert.NotEqual(was, now);
        Assert.Equal(await OwnFileAsync(student, code), now);
        using var answer = await (await Form.At(student, "/privacy/export")).Post();
        using var zip = new ZipArchive(await answer.Content.ReadAsStreamAsync(Ct));
        Assert.Equal(now, PdfOf(zip, $"letters/letter-{code}.pdf"));
        Assert.Equal(await OwnFileAsync(student, code, "&sending=1"), PdfOf(zip, $"letters/letter-{code}-sent-1.pdf"));
    }

    [Fact]
    public async Task A_form_without_a_choice_says_so_beside_it_and_changes_nothing()
    {
        using var student = await host.Student("Saga");

        var (status, page, _) = await (await ChooseAsync(student, "both")).Read();

        using var refused = new HtmlParser().ParseDocument(page);
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.NotNull(refused.QuerySelector("#f-Letters-Wanted-error"));
        Assert.Equal("link", await ChosenAsync(student));
    }

    [Fact]
    public async Task The_choice_is_offered_to_whom_such_mails_go_the_guardian_of_a_younger_student_and_no_teacher()
    {
        var student = await host.YoungerAsync("Tilda Vale");
        var (guardian, _) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        using var teacher = await host.Teacher();

        Assert.Null(await ChosenAsync(student));
        Assert.Null(await ChosenAsync(teacher));
        Assert.Equal("link", await ChosenAsync(guardian));
        Assert.Contains("a letter to a student you answer for", (await guardian.See("/account")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_a_student_and_a_guardian_is_told_that_the_choice_holds_for_both()
    {
        var (guardian, _) = await host.AgreedAsync(await host.YoungerAsync("Sunniva Vale"), ClinicHost.NewEmail("rosa"), "Torunn Vale");
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            var account = new AccountId((await db.Users.SingleAsync(user => user.DisplayName == "Torunn Vale", Ct)).Id);
            var student = new Student(new StudentId(Parcel.NewOperation().Value), "Torunn Vale", account);
            student.SayAge(AgeAnswer.OldEnough);
            db.Add(student);
            await db.SaveChangesAsync(Ct);
        }

        Assert.Contains("holds for your own letters and for theirs", await guardian.TextAsync("/account"), StringComparison.Ordinal);
    }

    private static string CorrectedSubject(BatchCode code) => $"Corrected letter about the batch {code}";

    private async Task<BatchCode> SentAsync(string student)
    {
        var batch = (await host.Announce(student, "green thread")).Batch;
        await host.SendLetter(batch.Code);
        return batch.Code;
    }

    private async Task CorrectAsync(BatchCode code, string putRight)
    {
        var teacher = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);
        await using var scope = host.Services.CreateAsyncScope();
        var (letters, corrections) = (scope.ServiceProvider.GetRequiredService<LetterBook>(), scope.ServiceProvider.GetRequiredService<LetterCorrectionBook>());
        var letter = (await letters.ReadAsync(teacher, code, Ct))!;
        await corrections.BeginAsync(teacher, code, letter.Version, Parcel.NewOperation(), Ct);
        await corrections.SayAsync(teacher, code, null, putRight, Parcel.NewOperation(), Ct);
        Assert.IsType<Outcome<LetterView>.Done>(await corrections.SendAsync(teacher, code, letter.Mark, putRight, Parcel.NewOperation(), Ct));
    }

    private static async Task<HttpResponseMessage> ChooseAsync(HttpClient who, string wanted) =>
        await Form.Named(who, "/account", (await who.See("/account")).Page, "letter-files").Set("Letters.Wanted", wanted).Post();

    private static async Task<string?> ChosenAsync(HttpClient who)
    {
        using var page = new HtmlParser().ParseDocument((await who.See("/account")).Page);
        return page.QuerySelector("#letter-files input[type=radio][checked]")?.GetAttribute("value");
    }

    private async Task<MimeMessage> MailAsync(string email, string subject) =>
        await MimeMessage.LoadAsync(new MemoryStream(Encoding.ASCII.GetBytes(await MailedLinks.MailAsync(host.MailFolder, email, subject, Ct))), Ct);

    private static async Task<string> OwnFileAsync(HttpClient student, BatchCode code, string which = "") =>
        PdfContent.Of(await student.GetByteArrayAsync(new Uri($"/letters/{code}/file?paper=a4{which}", UriKind.Relative), Ct));

    private static string PdfOf(MimeMessage message) => PdfOf(Assert.IsType<MimePart>(Assert.Single(message.Attachments)));

    private static string PdfOf(MimePart file)
    {
        using var bytes = new MemoryStream();
        file.Content!.DecodeTo(bytes);
        return PdfContent.Of(bytes.ToArray());
    }

    private static string PdfOf(ZipArchive zip, string name)
    {
        using var from = zip.GetEntry(name)!.Open();
        using var to = new MemoryStream();
        from.CopyTo(to);
        return PdfContent.Of(to.ToArray());
    }

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
