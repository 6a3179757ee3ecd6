using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>Ten minutes after the sign-in the pages of what can’t be taken back ask once more who one is. OWASP ASVS 5.0: 7.5.1, 6.3.3.</summary>
public sealed class LateSignInTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/account/codes")]
    [InlineData("/account/email")]
    public async Task The_page_leads_to_the_proof_and_comes_back(string page)
    {
        var (account, _) = await host.AccountAsync("ylva");
        using var visitor = await host.SignedIn(account);
        Assert.Equal(HttpStatusCode.OK, (await visitor.See(page)).Status);
        await AgeAsync(account);

        Assert.Equal($"/account/again?back={page}", (await visitor.See(page)).Location);
    }

    [Fact]
    public async Task A_form_that_was_opened_in_time_and_sent_too_late_does_nothing_and_says_so()
    {
        var (account, _) = await host.AccountAsync("ylva");
        using var visitor = await host.SignedIn(account);
        var codes = Form.Named(visitor, "/account/codes", (await visitor.See("/account/codes")).Page, "codes-begin");
        var email = (await Form.At(visitor, "/account/email")).Set("Form.Email", ClinicHost.NewEmail("elsewhere"));
        var passkey = Form.Named(visitor, "/account", (await visitor.See("/account")).Page, "add-passkey");
        await AgeAsync(account);

        using var begun = await codes.Post();
        var (_, asked, _) = await (await email.Post()).Read();
        using var made = await passkey.PostTo("/account/passkey/make");

        Assert.Equal("/account/again?back=/account/codes", begun.Leads());
        Assert.Contains("show once more that it is you", asked, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, made.StatusCode);
    }

    [Fact]
    public async Task Whoever_works_here_and_waited_before_the_second_step_proves_the_first_once_more()
    {
        var (account, _) = await host.AccountAsync("yuna", Role.Teacher);
        using var teacher = await host.SignedIn(account, SignInWay.Password);
        Assert.Equal(HttpStatusCode.OK, (await teacher.See("/account/second-step")).Status);
        await AgeAsync(account);

        Assert.Equal("/account/again?back=/", (await teacher.See("/account/second-step")).Location);
    }

    [Fact]
    public async Task Where_a_passkey_is_a_teachers_only_second_step_no_password_is_asked_for_to_prove_it_again()
    {
        var (account, _) = await host.AccountAsync("yorick", Role.Teacher);
        await host.AddPasskeyAsync(account);
        using var teacher = await host.SignedIn(account);

        Assert.DoesNotContain("name=\"Form.Password\"", (await teacher.See("/account/again?back=/account")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_passwords_typed_to_end_the_codes_make_the_account_rest()
    {
        var (account, _) = await host.AccountAsync("yara");
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var (book, actor) = (scope.ServiceProvider.GetRequiredService<SecondStepBook>(), new Actor(account, null, false, false) { IsFresh = true });
            var key = TimeCode.FromLetters(Assert.IsType<Outcome<string>.Done>(await book.BeginAsync(actor, Parcel.NewOperation(), Ct)).Value);
            Assert.IsType<Outcome<IReadOnlyList<string>>.Done>(await book.ConfirmAsync(actor, TimeCode.Of(key, TimeCode.StepAt(TimeProvider.System.GetUtcNow())), Parcel.NewOperation(), Ct));
        }

        using var visitor = await host.SignedIn(account, SignInWay.PasswordAndCode);
        var page = "";
        for (var i = 0; i <= WrongTries.Most; i++)
        {
            (_, page, _) = await (await Form.Named(visitor, "/account/codes", (await visitor.See("/account/codes")).Page, "codes-off").Set("Form.Password", $"wrong {i}").Post()).Read();
        }

        Assert.Contains("rests for five minutes", page, StringComparison.Ordinal);
    }

    private async Task AgeAsync(AccountId account)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var longAgo = TimeProvider.System.GetUtcNow() - SessionRules.FreshFor;
        await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Session>().Where(session => session.Account == account)
            .ExecuteUpdateAsync(row => row.SetProperty(session => session.FreshAt, longAgo), Ct);
    }
}
