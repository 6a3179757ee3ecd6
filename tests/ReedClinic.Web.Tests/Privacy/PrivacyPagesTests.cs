using System.IO.Compression;
using System.Net;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Query;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;
using ReedClinic.Web.Features.Privacy;
using ReedClinic.Web.Tests.Account;
using ReedClinic.Web.Tests.Hosting;
using ReedClinic.Web.Tests.Letters;

namespace ReedClinic.Web.Tests.Privacy;

public sealed class PrivacyPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string Secret = "Yqzvwk-between-us";

    private static readonly Actor Colleague = new(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_tells_every_kind_to_everybody_and_every_page_leads_there()
    {
        var (status, page, _) = await host.Visitor().See("/privacy");

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.All(DataMap.Own.Classes, kind => Assert.Contains(WebUtility.HtmlEncode(kind.What).Replace("&#8217;", "’", StringComparison.Ordinal), WebUtility.HtmlDecode(page).Replace("&", "&amp;", StringComparison.Ordinal), StringComparison.Ordinal));
        Assert.Contains("35", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/privacy\"", (await host.Visitor().See("/")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_wants_to_ask_or_complain_is_told_where()
    {
        await using var own = new Reachable();
        await own.OpenStudio();
        var page = WebUtility.HtmlDecode((await own.Visitor().See("/privacy")).Page);
        Assert.Contains("href=\"mailto:ilse@harbour.example\"", page, StringComparison.Ordinal);

        await SetAsync(own, set => set.SetProperty(studio => studio.PostTo, "Quay Reeds, 1 Mole Street"));

        // Where parcels go may be somebody's home: only those who are signed in see it.
        Assert.DoesNotContain("1 Mole Street", (await own.Visitor().See("/privacy")).Page, StringComparison.Ordinal);
        using (var student = await own.Student("Ines"))
        {
            Assert.Contains("1 Mole Street", (await student.See("/privacy")).Page, StringComparison.Ordinal);
            await MailGoesToTheOwnerForThoseWhoAreSignedInAsync(own, student);
        }

        await SetAsync(own, set => set.SetProperty(studio => studio.PrivacyContact, "Ask Mara at the counter"));

        page = (await own.Visitor().See("/privacy")).Page;
        Assert.Contains("Ask Mara at the counter", page, StringComparison.Ordinal);
        Assert.DoesNotContain("mailto:", page, StringComparison.Ordinal);
    }

    private static async Task SetAsync(Reachable own, Action<UpdateSettersBuilder<Studio>> set)
    {
        await using var scope = own.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Studio>().ExecuteUpdateAsync(set, Ct);
    }

    // What may be typed as an address can’t add a reader to the mail.
    private static async Task MailGoesToTheOwnerForThoseWhoAreSignedInAsync(Reachable own, HttpClient student)
    {
        await SetAsync(own, set => set.SetProperty(studio => studio.WriteTo, "mara?bcc=x@harbour.example"));

        var seen = WebUtility.HtmlDecode((await student.See("/privacy")).Page);
        Assert.Contains("href=\"mailto:mara%3Fbcc%3Dx@harbour.example\"", seen, StringComparison.Ordinal);
        var stranger = WebUtility.HtmlDecode((await own.Visitor().See("/privacy")).Page);
        Assert.DoesNotContain("mara?bcc", stranger, StringComparison.Ordinal);
        Assert.Contains("href=\"mailto:ilse@harbour.example\"", stranger, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_copy_is_a_zip_with_everything_of_ones_own_and_no_note_of_the_staff()
    {
        var student = await host.Student("Nele");
        var batch = (await host.Announce("Nele", "=thread", "amber thread")).Batch;
        await SendLetterAsync(batch.Code);
        await NoteAsync(batch.Student, Secret);

        using var answer = await (await Form.At(student, "/privacy/export")).Post();
        using var zip = new ZipArchive(await answer.Content.ReadAsStreamAsync(Ct));

        Assert.Equal("application/zip", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal(["about.json", $"letters/{batch.Code}.html", $"letters/{batch.Code}.txt", $"letters/letter-{batch.Code}.pdf", "readme.txt", "reeds.csv"], zip.Entries.Select(entry => entry.FullName).Order(StringComparer.Ordinal));
        using var own = await student.GetAsync(new Uri($"/letters/{batch.Code}/file", UriKind.Relative), Ct);
        Assert.Equal($"letter-{batch.Code}.pdf", own.Content.Headers.ContentDisposition?.FileName);
        Assert.Equal(PdfContent.Of(await own.Content.ReadAsByteArrayAsync(Ct)), PdfOf(zip, $"letters/letter-{batch.Code}.pdf"));
        var texts = zip.Entries.ToDictionary(entry => entry.FullName, Read);
        Assert.Contains("letter-….pdf", texts["readme.txt"], StringComparison.Ordinal);
        Assert.DoesNotContain(texts.Values, text => text.Contains(Secret, StringComparison.Ordinal));
        Assert.Contains("amber thread", texts["about.json"], StringComparison.Ordinal);
        Assert.Contains("'=thread", texts["reeds.csv"], StringComparison.Ordinal);
        Assert.DoesNotContain(",=thread", texts["reeds.csv"], StringComparison.Ordinal);
        Assert.Contains("What we may do", texts["reeds.csv"], StringComparison.Ordinal);
        Assert.Matches("only advise|safe changes only|take risks", texts["reeds.csv"]);
        Assert.DoesNotMatch("AdviseOnly|SafeChangesOnly|TakeRisks|Announced", texts["reeds.csv"]);
        Assert.Equal(3, texts["reeds.csv"].TrimEnd().Split("\r\n").Length);
        Assert.Contains("Dear Nele", texts[$"letters/{batch.Code}.html"], StringComparison.Ordinal);
        Assert.Contains("Dear Nele", texts[$"letters/{batch.Code}.txt"], StringComparison.Ordinal);
        Assert.Contains("no-store", answer.Headers.CacheControl?.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Days_in_a_copy_are_those_of_the_studios_clock()
    {
        await host.Student("Pelle");
        var batch = (await host.Announce("Pelle", "amber thread")).Batch;
        await SendLetterAsync(batch.Code);
        var late = new DateTimeOffset(2026, 3, 9, 23, 30, 0, TimeSpan.Zero);
        await using var scope = host.Services.CreateAsyncScope();
        var me = (await scope.ServiceProvider.GetRequiredService<AccountBook>().ActorFor(await AccountOfAsync(batch.Student), Ct))! with { IsFresh = true };
        var taken = Assert.IsType<Outcome<PersonCopy>.Done>(await scope.ServiceProvider.GetRequiredService<PrivacyBook>().ExportAsync(me, null, Parcel.NewOperation(), Ct)).Value;
        var copy = taken with { Letters = [.. taken.Letters.Select(letter => letter with { SentAt = late })], Reeds = [.. taken.Reeds.Select(reed => reed with { SubmittedAt = late })] };
        using var made = new MemoryStream();

        await CopyFile.WriteAsync(made, copy, late, TimeZoneInfo.CreateCustomTimeZone("quay", TimeSpan.FromHours(2), null, null), Ct);
        using var zip = new ZipArchive(made);
        var texts = zip.Entries.ToDictionary(entry => entry.FullName, Read);

        Assert.Contains("2026-03-10", texts["reeds.csv"], StringComparison.Ordinal);
        Assert.Contains("10 March 2026", texts[$"letters/{batch.Code}.txt"], StringComparison.Ordinal);
        Assert.Contains("10 March 2026", texts[$"letters/{batch.Code}.html"], StringComparison.Ordinal);
        Assert.DoesNotContain("9 March 2026", string.Concat(texts.Values), StringComparison.Ordinal);
        Assert.Contains("2026-03-10 01:30", texts["readme.txt"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_note_of_the_staff_is_on_their_page_and_on_no_students_page()
    {
        var student = await host.Student("Orla");
        var batch = (await host.Announce("Orla", "grey thread")).Batch;
        await SendLetterAsync(batch.Code);
        var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}";
        using var kept = await Form.Named(teacher, path, (await teacher.See(path)).Page, "staff-note").Set("Note.Words", Secret).Post();
        Assert.Equal($"{path}?saved=note", kept.Leads());
        Assert.DoesNotContain("The note is kept.", (await teacher.See(path)).Page, StringComparison.Ordinal);
        Assert.Contains("The note is kept.", (await teacher.See($"{path}?saved=note")).Page, StringComparison.Ordinal);

        Assert.Contains(Secret, (await teacher.See(path)).Page, StringComparison.Ordinal);
        string[] pages = ["/", "/batches", path, $"{path}/slip", $"/letters/{batch.Code}", "/intake", "/privacy", "/privacy/export", "/privacy/erase", "/guardian", "/wards"];
        foreach (var page in pages)
        {
            Assert.DoesNotContain(Secret, (await student.See(page)).Page, StringComparison.Ordinal);
        }

        Assert.DoesNotContain(Secret, (await teacher.See($"/letters/{batch.Code}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_is_erased_is_signed_out_and_cannot_come_in_again()
    {
        var student = await host.Student("Ulf");
        using var wrong = await (await Form.At(student, "/privacy/erase")).Set("Form.Typed", "no").Post();
        Assert.Equal(HttpStatusCode.OK, wrong.StatusCode);

        using var erased = await (await Form.At(student, "/privacy/erase")).Set("Form.Typed", "erase").Post();

        Assert.Equal("/privacy/erased", erased.Leads());
        Assert.StartsWith("/account/sign-in", (await student.See("/batches")).Location, StringComparison.Ordinal);
        await using var scope = host.Services.CreateAsyncScope();
        Assert.False(await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Student>().AnyAsync(person => person.Name == "Ulf", Ct));
    }

    [Fact]
    public async Task The_word_that_was_typed_is_there_again_after_showing_who_one_is_and_is_nobody_elses()
    {
        var (account, email) = await host.AccountAsync("torun");
        using var torun = await host.SignedIn(account);
        var form = await Form.At(torun, "/privacy/erase");
        await host.GrowStaleAsync(email);
        using var stale = await form.Set("Form.Typed", "erase").Post();
        var (_, page, _) = await stale.Read();
        var way = System.Text.RegularExpressions.Regex.Match(WebUtility.HtmlDecode(page), "href=\"(/account/again[^\"]*)\"").Groups[1].Value;
        Assert.Equal("erase", Form.Of(torun, "/privacy/erase", page)["Form.Typed"]);

        using var shown = await (await Form.At(torun, way)).Set("Form.Password", ClinicHost.Password).Post();
        var back = shown.Leads()!;
        Assert.StartsWith("/privacy/erase?kept=", back, StringComparison.Ordinal);
        Assert.Equal("erase", (await Form.At(torun, back))["Form.Typed"]);
        Assert.Equal("", (await Form.At(torun, "/privacy/erase?kept=erase"))["Form.Typed"]);
        using var other = await host.Student("Una");
        Assert.Equal("", (await Form.At(other, back))["Form.Typed"]);

        using var erased = await (await Form.At(torun, back)).Post();
        Assert.Equal("/privacy/erased", erased.Leads());
    }

    [Fact]
    public async Task Reaching_for_somebody_elses_batch_is_noted_for_the_audit_without_words()
    {
        await host.Student("Vera");
        var batch = (await host.Announce("Vera", "pink thread")).Batch;
        var other = await host.Student("Xavi");
        var before = await RefusalsAsync();

        Assert.Equal(HttpStatusCode.NotFound, (await other.See($"/batches/{batch.Code}")).Status);
        Assert.StartsWith("/account/not-yours", (await other.See("/desk")).Location, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await host.Visitor().See("/no-such-page")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await other.See("/no-such-page")).Status);

        Assert.Equal(before + 2, await RefusalsAsync());
    }

    [Fact]
    public async Task Whoever_reaches_again_and_again_fills_no_audit()
    {
        using var other = await host.Student("Yves");
        var before = await RefusalsAsync();

        for (var i = 0; i < 3 * RefusalNotes.MostAMinute; i++)
        {
            Assert.StartsWith("/account/not-yours", (await other.See("/desk")).Location, StringComparison.Ordinal);
        }

        Assert.InRange(await RefusalsAsync() - before, RefusalNotes.MostAMinute, 2 * RefusalNotes.MostAMinute); // a minute may have ended meanwhile
    }

    private sealed class Reachable : ClinicHost
    {
        protected override void ConfigureWebHost(Microsoft.AspNetCore.Hosting.IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.UseSetting("Mail:ReplyTo", "ilse@harbour.example");
        }
    }

    private async Task<int> RefusalsAsync()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        return await db.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.Refused, Ct) + await db.Set<AuditEntry>().CountAsync(entry => entry.Event == AuditEvent.Refused, Ct);
    }

    private async Task<AccountId> AccountOfAsync(StudentId student)
    {
        await using var scope = host.Services.CreateAsyncScope();
        return (await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Student>().SingleAsync(person => person.Id == student, Ct)).Account!.Value;
    }

    private async Task NoteAsync(StudentId student, string words)
    {
        await using var scope = host.Services.CreateAsyncScope();
        Assert.IsType<Outcome<StaffNoteView>.Done>(await scope.ServiceProvider.GetRequiredService<StaffNoteBook>()
            .WriteAsync(Colleague, student, words, Guid.Empty, Parcel.NewOperation(), Ct));
    }

    private async Task SendLetterAsync(Domain.Intake.BatchCode code)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var letters = scope.ServiceProvider.GetRequiredService<LetterBook>();
        var view = (await letters.ReadAsync(Colleague, code, Ct))!;
        foreach (var gap in view.Gaps)
        {
            view = Assert.IsType<Outcome<LetterView>.Done>(await letters.WaiveAsync(Colleague, code, gap.Key, "next time", Parcel.NewOperation(), Ct)).Value;
        }

        Assert.IsType<Outcome<LetterView>.Done>(await letters.SendAsync(Colleague, code, view.Mark, Parcel.NewOperation(), Ct));
        Assert.IsType<Outcome<Data.Intake.BatchView>.Done>(await scope.ServiceProvider.GetRequiredService<Data.Intake.DeskBook>()
            .MoveOnAsync(Colleague, view.AtBench.Batch.Id, Domain.Intake.Stage.OnItsWayHome, Parcel.NewOperation(), Ct));
    }

    private static string PdfOf(ZipArchive zip, string name)
    {
        using var from = zip.GetEntry(name)!.Open();
        using var to = new MemoryStream();
        from.CopyTo(to);
        return PdfContent.Of(to.ToArray());
    }

    private static string Read(ZipArchiveEntry entry)
    {
        using var reader = new StreamReader(entry.Open(), Encoding.UTF8);
        return reader.ReadToEnd();
    }

    [Fact]
    public async Task A_sound_that_is_removed_while_the_copy_is_made_is_named_and_the_rest_is_whole()
    {
        var here = Path.GetTempFileName();
        await File.WriteAllTextAsync(here, "sound", Ct);
        var code = Assert.IsType<Outcome<BatchCode>.Done>(BatchCode.Read("7KP-W3MQ")).Value;
        var copy = new PersonCopy([], [], []) { Files = [new(code, 1, "gone.webm", here + "-gone"), new(code, 2, "here.webm", here)] };
        using var made = new MemoryStream();

        await CopyFile.WriteAsync(made, copy, new DateTimeOffset(2026, 3, 9, 10, 0, 0, TimeSpan.Zero), TimeZoneInfo.Utc, Ct);
        using var bare = new MemoryStream();
        await CopyFile.WriteAsync(bare, copy with { Files = [] }, new DateTimeOffset(2026, 3, 9, 23, 30, 0, TimeSpan.Zero), TimeZoneInfo.CreateCustomTimeZone("quay", TimeSpan.FromHours(2), null, null), Ct);
        using var without = new ZipArchive(bare);
        Assert.Equal(["about.json", "reeds.csv", "readme.txt"], without.Entries.Select(entry => entry.FullName));
        var told = Read(without.Entries[^1]);
        Assert.DoesNotContain("recordings/", told, StringComparison.Ordinal);
        Assert.Contains("taken on 2026-03-10 01:30 by the studio’s clock", told, StringComparison.Ordinal);
        File.Delete(here);
        using var zip = new ZipArchive(made);
        var texts = zip.Entries.ToDictionary(entry => entry.FullName, Read);

        Assert.Equal("readme.txt", zip.Entries[^1].FullName);
        Assert.Equal("sound", texts[$"recordings/{code}/reed-2/here.webm"]);
        Assert.DoesNotContain($"recordings/{code}/reed-1/gone.webm", texts.Keys);
        Assert.Contains("recordings/    the sounds", texts["readme.txt"], StringComparison.Ordinal);
        Assert.DoesNotContain("letters/", texts["readme.txt"], StringComparison.Ordinal);
        Assert.Contains($"aren't in it:\r\n  recordings/{code}/reed-1/gone.webm", texts["readme.txt"], StringComparison.Ordinal);
    }
}
