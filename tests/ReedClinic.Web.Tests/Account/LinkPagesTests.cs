using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>Coming in by a link from a mail, on the real pages and with the real mail.</summary>
public sealed partial class LinkPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string Gone = "This link doesn’t work any more";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_student_asks_for_a_link_gets_it_by_mail_and_makes_an_account_with_it_once()
    {
        await host.OpenStudio();
        var email = ClinicHost.NewEmail("marit");
        using var visitor = host.Visitor();
        using (var asked = await (await Form.At(visitor, "/account/sign-up")).Set("Form.Email", email).Post())
        {
            Assert.Contains($"A mail to <bdi>{email}</bdi> is on its way.", (await asked.Read()).Page, StringComparison.Ordinal);
        }

        var link = await host.Mailed(email, "/join/");
        using (var scanner = host.Visitor())
        {
            await scanner.See(link);
            await scanner.See(link);
        }

        using (var made = await (await Form.At(visitor, link)).Set("Form.Name", "Marit").Set("Form.Age", "OldEnough").Set("Form.Password", ClinicHost.Password).Post())
        {
            Assert.Equal("/", made.Leads());
        }

        Assert.Contains("/account/sign-out", (await visitor.See("/")).Page, StringComparison.Ordinal);
        using var second = host.Visitor();
        Assert.Contains(Gone, WebUtility.HtmlDecode((await second.See(link)).Page), StringComparison.Ordinal);
        Assert.Contains(Gone, WebUtility.HtmlDecode((await second.See(link[..^1])).Page), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/account/sign-up")]
    [InlineData("/begin")]
    public async Task Known_and_unknown_addresses_get_the_same_answer_the_same_work_and_different_mails(string page)
    {
        await host.OpenStudio();
        var (known, unknown) = (ClinicHost.NewEmail("known"), ClinicHost.NewEmail("nobody"));
        await host.Admit("Known", known);
        var (forKnown, rowsForKnown) = await AskAsync(page, known);
        var (forUnknown, rowsForUnknown) = await AskAsync(page, unknown);

        Assert.Equal(forUnknown, forKnown);
        Assert.Equal(rowsForUnknown, rowsForKnown);
        Assert.Equal("/account/sign-in", await host.Mailed(known, "/account/sign-in"));
        Assert.StartsWith(page == "/begin" ? "/begin/" : "/join/", await host.Mailed(unknown, page == "/begin" ? "/begin/" : "/join/"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_to_begin_stays_with_its_first_browser_until_a_password_is_chosen()
    {
        await host.OpenStudio();
        var email = ClinicHost.NewEmail("jory");
        using var phone = host.Visitor();
        var link = await host.BeginLinkAsync(phone, email);
        using (var begun = await (await Form.At(phone, link)).Set("Form.Name", "Jory").Set("Form.Age", "OldEnough").Post())
        {
            Assert.Equal("/", begun.Leads());
        }

        Assert.Contains("/account/claim", (await phone.See("/")).Page, StringComparison.Ordinal);
        using var laptop = host.Visitor();
        var elsewhere = WebUtility.HtmlDecode((await laptop.See(link)).Page);
        Assert.Contains("stays with another device", elsewhere, StringComparison.Ordinal);
        using (var sent = await Form.Named(laptop, link, elsewhere, "send-new").Post())
        {
            Assert.Contains("A new link is on its way", (await sent.Read()).Page, StringComparison.Ordinal);
        }

        using (await (await Form.At(phone, "/account/leaving", "/account/sign-out")).Set("Sure", "yes").Post())
        {
        }

        using (var again = await (await Form.At(phone, link)).Post())
        {
            Assert.Equal("/", again.Leads());
        }

        using (var claimed = await (await Form.At(phone, "/account/claim")).Set("Form.Password", ClinicHost.Password).Post())
        {
            Assert.Equal("/account/claim?done=yes", claimed.Leads());
        }

        Assert.DoesNotContain("/account/claim", (await phone.See("/")).Page, StringComparison.Ordinal);
        Assert.Contains("You sign in by yourself now", (await phone.See(link)).Page, StringComparison.Ordinal);
        using var signedIn = await (await Form.At(laptop, "/account/sign-in")).Set("Form.Email", email).Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal("/", signedIn.Leads());
    }

    [Fact]
    public async Task Who_came_by_a_link_is_warned_before_they_are_signed_out_and_told_how_to_come_back()
    {
        await host.OpenStudio();
        using var phone = host.Visitor();
        using (await (await Form.At(phone, await host.BeginLinkAsync(phone, ClinicHost.NewEmail("silje")))).Set("Form.Name", "Silje").Set("Form.Age", "OldEnough").Post())
        {
        }

        using (var warned = await (await Form.At(phone, "/", "/account/sign-out")).Post())
        {
            Assert.Equal("/account/leaving", warned.Leads());
        }

        var leaving = WebUtility.HtmlDecode((await phone.See("/account/leaving")).Page);
        Assert.Contains("only a link brings you back", leaving, StringComparison.Ordinal);
        Assert.Contains("href=\"/account/claim\"", leaving, StringComparison.Ordinal);
        using (var left = await Form.Of(phone, "/account/leaving", leaving).Post())
        {
            Assert.Equal("/", left.Leads());
        }

        Assert.StartsWith("/account/sign-in", (await phone.See("/batches")).Location, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_has_a_password_signs_out_at_once()
    {
        using var student = await host.Student("Liva");
        using var left = await (await Form.At(student, "/", "/account/sign-out")).Post();

        Assert.Equal("/", left.Leads());
        Assert.StartsWith("/account/sign-in", (await student.See("/batches")).Location, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_came_by_a_link_is_told_to_open_it_again_where_others_prove_who_they_are()
    {
        await host.OpenStudio();
        using var phone = host.Visitor();
        var email = ClinicHost.NewEmail("wieke");
        var link = await host.BeginLinkAsync(phone, email);
        using (await (await Form.At(phone, link)).Set("Form.Name", "Wieke").Set("Form.Age", "OldEnough").Post())
        {
        }

        Assert.Contains("value=\"add-passkey\"", (await phone.See("/account/claim")).Page, StringComparison.Ordinal);
        Assert.Equal("/account/claim", (await phone.See("/account/password")).Location);
        await host.GrowStaleAsync(email);

        var page = WebUtility.HtmlDecode((await phone.See("/account/again?back=/account")).Page);

        Assert.Contains("Open it once more on this device", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/begin\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_mail_is_off_the_pages_that_need_it_say_so()
    {
        await using var silent = new SilentHost();
        await silent.OpenStudio();
        using var visitor = silent.Visitor();
        foreach (var page in new[] { "/account/sign-up", "/begin", "/account/forgotten" })
        {
            var words = WebUtility.HtmlDecode((await visitor.See(page)).Page);
            Assert.Contains("can’t send mail just now", words, StringComparison.Ordinal);
            Assert.DoesNotContain("name=\"Form.Email\"", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task An_owner_invites_takes_back_and_closes_and_sees_each_at_once()
    {
        await using var own = new ClinicHost();
        using var owner = await own.SignedIn(await own.OpenStudio());
        var (email, student) = (ClinicHost.NewEmail("edgar"), await own.Admit("Tove", ClinicHost.NewEmail("tove")));
        using (var sent = await Form.Named(owner, "/people", (await owner.See("/people")).Page, "invite").Set("Form.Email", email).Set("Form.As", "Teacher").Post())
        {
            Assert.Equal(2, Regex.Count((await sent.Read()).Page, $"<bdi>{Regex.Escape(email)}</bdi>")); // what was done, and the list
        }

        using (var again = await Form.Named(owner, "/people", (await owner.See("/people")).Page, "invite").Set("Form.Email", email).Set("Form.As", "Student").Post())
        {
            var second = WebUtility.HtmlDecode((await again.Read()).Page);
            Assert.Contains("It takes the place of the one that was sent to this address before", second, StringComparison.Ordinal);
            Assert.Equal(2, Regex.Count(second, $"<bdi>{Regex.Escape(email)}</bdi>"));
        }

        var page = (await owner.See("/people")).Page;
        var withdraw = Regex.Match(page, "value=\"(withdraw:[^\"]+)\"").Groups[1].Value;
        using (var withdrawn = await Form.Named(owner, "/people", page, "invitation").Set("Form.Do", withdraw).Post())
        {
            var without = WebUtility.HtmlDecode((await withdrawn.Read()).Page);
            Assert.DoesNotContain(email, without, StringComparison.Ordinal);
            Assert.Contains("That invitation is taken back", without, StringComparison.Ordinal);
        }

        using (var closed = await Form.Named(owner, "/people", page, "person").Set("Form.Do", $"disable:{student.Value}").Post())
        {
            Assert.Equal("/people?done=yes", closed.Leads());
        }

        Assert.Contains("closed since", (await owner.See("/people")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_owner_whose_studio_has_no_mail_is_shown_the_link_to_hand_over()
    {
        await using var own = new SilentHost();
        using var owner = await own.SignedIn(await own.OpenStudio());
        using var sent = await Form.Named(owner, "/people", (await owner.See("/people")).Page, "invite").Set("Form.Email", "edgar@harbour.example").Set("Form.As", "Student").Post();
        var link = Regex.Match((await sent.Read()).Page, "https://localhost(/join/[A-Za-z0-9_-]{43})<");

        Assert.True(link.Success);
        Assert.Contains("edgar@harbour.example", (await owner.See(link.Groups[1].Value)).Page, StringComparison.Ordinal);
        Assert.DoesNotContain("/join/", (await owner.See("/people")).Page, StringComparison.Ordinal);
    }

    private async Task<(string Page, string Rows)> AskAsync(string path, string email)
    {
        var before = await RowsAsync();
        using var visitor = host.Visitor();
        using var answer = await (await Form.At(visitor, path)).Set("Form.Email", email).Post();
        var (status, page, _) = await answer.Read();
        Assert.Equal(HttpStatusCode.OK, status);
        var after = await RowsAsync();
        return (Address().Replace(Token().Replace(page[page.IndexOf("<h1", StringComparison.Ordinal)..page.IndexOf("</main>", StringComparison.Ordinal)], ""), ""),
            $"{after.Tickets - before.Tickets} {after.Jobs - before.Jobs} {after.Operations - before.Operations}");
    }

    private async Task<(int Tickets, int Jobs, int Operations)> RowsAsync()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        return (await db.Set<Ticket>().CountAsync(Ct), await db.Set<Job>().CountAsync(Ct), await db.Set<DoneOperation>().CountAsync(Ct));
    }

    private sealed class SilentHost : ClinicHost
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.UseSetting("Mail:Folder", "");
        }
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"[^\"]*\"")]
    private static partial Regex Token();

    [GeneratedRegex(@"(known|nobody)-\d+@harbour\.example")]
    private static partial Regex Address();
}
