using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Audit;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>Proving once more who one is, and what becomes of the browser then. OWASP ASVS 5.0: 6.3.3, 7.5.1.</summary>
public sealed class ProvingAgainTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_password_alone_and_signed_in_long_ago_leads_to_the_proof_that_is_missing()
    {
        var (account, _) = await host.AccountAsync("femke", Role.Teacher);
        await host.AddPasskeyAsync(account);
        using var weak = await host.SignedIn(account, SignInWay.Password);

        Assert.Equal("/account/again?back=/account/password", (await weak.See("/account/password")).Location);
        using var posted = await (await Form.At(weak, "/account")).Set("_handler", "password").Set("Form.Old", ClinicHost.Password).Set("Form.Password", "nine gulls over the pier").PostTo("/account/password");
        Assert.Equal("/account/again?back=/account/password", posted.Leads());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Only_a_passkey_of_the_same_account_proves_again_who_one_is(bool own)
    {
        var (account, email) = await host.AccountAsync("gesa");
        var (other, _) = await host.AccountAsync("hille");
        using var hers = await SoftPasskey.AddAsync(host, account);
        using var somebodys = await SoftPasskey.AddAsync(host, other);
        using var gesa = await host.SignedIn(account);
        gesa.DefaultRequestHeaders.Add("Origin", SoftPasskey.Origin);
        await host.GrowStaleAsync(email);
        const string page = "/account/again?back=/account/email";

        var form = Form.Named(gesa, page, (await gesa.See(page)).Page, "passkey");
        using var asked = await form.PostTo("/account/passkey/use");
        using var answer = await form.Set("Form.Credential", (own ? hers : somebodys).Sign(await asked.Content.ReadAsStringAsync(Ct))).Post();

        Assert.Equal(own ? "/account/email" : null, answer.Leads());
        Assert.Equal(own ? null : page, (await gesa.See("/account/email")).Location);
        Assert.Contains(email, (await gesa.See("/account")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Somebody_elses_passkey_opens_their_own_account_at_the_door()
    {
        var (other, email) = await host.AccountAsync("imke");
        using var passkey = await SoftPasskey.AddAsync(host, other);
        using var visitor = host.Visitor();
        visitor.DefaultRequestHeaders.Add("Origin", SoftPasskey.Origin);

        var form = Form.Named(visitor, "/account/sign-in", (await visitor.See("/account/sign-in")).Page, "passkey");
        using var asked = await form.PostTo("/account/passkey/use");
        using var answer = await form.Set("Form.Credential", passkey.Sign(await asked.Content.ReadAsStringAsync(Ct))).Post();

        Assert.Equal("/", answer.Leads());
        Assert.Contains(email, (await visitor.See("/account")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_works_here_with_an_address_from_before_proves_it_by_a_button_on_their_account()
    {
        var (account, email) = await host.AccountAsync("sigrun", Role.Teacher);
        using var teacher = await host.SignedIn(account);
        var page = (await teacher.See("/account")).Page;
        Assert.Contains("No link that we mailed to this address was opened yet.", page, StringComparison.Ordinal);

        using (var sent = await Form.Named(teacher, "/account", page, "prove").Post())
        {
            Assert.Contains($"A link is on its way to <bdi>{email}</bdi>.", (await sent.Read()).Page, StringComparison.Ordinal);
        }

        var link = await host.Mailed(email, "/account/new-email/");
        using (var proved = await (await Form.At(teacher, link)).Post())
        {
            Assert.StartsWith("/account", proved.Leads(), StringComparison.Ordinal);
        }

        Assert.DoesNotContain("No link that we mailed", (await teacher.See("/account")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_stays_signed_in_still_does_after_proving_again_who_they_are()
    {
        var (_, email) = await host.AccountAsync("liene");
        using var visitor = host.Visitor();
        using (var first = await (await Form.At(visitor, "/account/sign-in")).Set("Form.Email", email).Set("Form.Password", ClinicHost.Password).Set("Form.Stay", "true").Post())
        {
            Assert.Contains("expires=", CookieOf(first), StringComparison.OrdinalIgnoreCase);
        }

        using var again = await (await Form.At(visitor, "/account/again?back=/account")).Set("Form.Password", ClinicHost.Password).Post();

        Assert.Equal("/account", again.Leads());
        Assert.Contains("expires=", CookieOf(again), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Whoever_does_not_stay_signed_in_does_not_by_proving_again_either()
    {
        var (_, email) = await host.AccountAsync("oona");
        using var visitor = host.Visitor();
        using (await visitor.SignInAsync(email))
        {
        }

        using var again = await (await Form.At(visitor, "/account/again?back=/account")).Set("Form.Password", ClinicHost.Password).Post();

        Assert.DoesNotContain("expires=", CookieOf(again), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Whoever_is_signed_in_goes_on_where_they_were_when_another_tab_lands_on_the_sign_in_page()
    {
        using var student = await host.SignedIn((await host.AccountAsync("imke")).Account);

        Assert.Equal("/batches", (await student.See("/account/sign-in?back=%2Fbatches")).Location);
        Assert.Equal("/", (await student.See("/account/sign-in?back=https:%2F%2Felsewhere.example")).Location);
    }

    [Fact]
    public async Task A_closed_account_is_refused_and_the_audit_knows()
    {
        var (account, email) = await host.AccountAsync("berend");
        await using (var db = await host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(Ct))
        {
            await db.Users.Where(user => user.Id == account.Value).ExecuteUpdateAsync(row => row.SetProperty(user => user.DisabledAt, TimeProvider.System.GetUtcNow()), Ct);
        }

        using var visitor = host.Visitor();
        using var refused = await visitor.SignInAsync(email);

        Assert.Null(refused.Leads());
        await using var audit = await host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(Ct);
        Assert.True(
            await audit.Set<AuditNote>().AnyAsync(note => note.Event == AuditEvent.SignInRefused && note.Whom == account.Value, Ct)
            || await audit.Set<AuditEntry>().AnyAsync(
                entry => entry.Event == AuditEvent.SignInRefused && audit.Set<Pseudonym>().Any(one => one.Person == account.Value && one.Mask == entry.Whom), Ct));
    }

    private static string CookieOf(HttpResponseMessage answer) =>
        Assert.Single(answer.Headers.GetValues("Set-Cookie"), cookie => cookie.StartsWith("__Host-reedclinic=", StringComparison.Ordinal));
}
