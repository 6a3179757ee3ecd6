using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Audit;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>What a sign-in leaves behind, in the audit and in the browser. OWASP ASVS 5.0: 6.3.1, 7.2.4, 16.3.1.</summary>
public sealed class SignInRecordTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_sign_in_a_sign_out_an_account_that_rests_and_a_passkey_nobody_has_are_noted()
    {
        var (_, email) = await host.AccountAsync("ulf");
        using var visitor = host.Visitor();
        var came = await ToldAsync(AuditEvent.SignedIn);
        var (locked, left, refused) = (await ToldAsync(AuditEvent.LockedOut), await ToldAsync(AuditEvent.SignedOut), await ToldAsync(AuditEvent.SignInRefused));
        using (await visitor.SignInAsync(email))
        {
        }

        using (await Form.Of(visitor, "/", (await visitor.See("/")).Page, "/account/sign-out").Post())
        {
        }

        Assert.Equal((came + 1, left + 1), (await ToldAsync(AuditEvent.SignedIn), await ToldAsync(AuditEvent.SignedOut)));
        using (await Form.Named(visitor, "/account/sign-in", (await visitor.See("/account/sign-in")).Page, "passkey").Set("Form.Credential", "{}").Post())
        {
        }

        Assert.Equal(refused + 1, await ToldAsync(AuditEvent.SignInRefused));
        for (var i = 0; i < WrongTries.Most; i++)
        {
            await WrongAsync(visitor, email);
        }

        Assert.Equal(locked + 1, await ToldAsync(AuditEvent.LockedOut));
        Assert.Equal(refused + WrongTries.Most, await ToldAsync(AuditEvent.SignInRefused));
    }

    [Fact]
    public async Task Whoever_is_in_begins_with_no_wrong_tries_and_one_session_a_browser()
    {
        var (account, email) = await host.AccountAsync("una");
        for (var round = 0; round < 2; round++)
        {
            using var visitor = host.Visitor();
            for (var i = 1; i < WrongTries.Most; i++)
            {
                await WrongAsync(host.Visitor(), email);
            }

            using var right = await visitor.SignInAsync(email);
            using var again = await (await Form.At(visitor, "/account/again?back=/account")).Set("Form.Password", ClinicHost.Password).Post();
            Assert.Equal("/account", again.Leads());
        }

        await using var scope = host.Services.CreateAsyncScope();
        Assert.Equal(2, await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Session>().CountAsync(session => session.Account == account && session.EndedAt == null, Ct));
    }

    [Fact]
    public async Task A_right_password_waits_for_one_code_and_no_second()
    {
        var (account, email) = await host.AccountAsync("umar");
        IReadOnlyList<string> codes;
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var (book, actor) = (scope.ServiceProvider.GetRequiredService<SecondStepBook>(), new Actor(account, null, false, false) { IsFresh = true });
            var key = TimeCode.FromLetters(Done(await book.BeginAsync(actor, Parcel.NewOperation(), Ct)));
            codes = Done(await book.ConfirmAsync(actor, TimeCode.Of(key, TimeCode.StepAt(TimeProvider.System.GetUtcNow())), Parcel.NewOperation(), Ct));
        }

        using var visitor = host.Visitor();
        using (await visitor.SignInAsync(email))
        {
        }

        using var inside = await (await Form.At(visitor, "/account/code")).Set("Form.Code", codes[0]).Post();
        Assert.Equal("/", inside.Leads());
        Assert.Equal("/account/sign-in", (await visitor.See("/account/code")).Location);
    }

    private static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private static async Task WrongAsync(HttpClient visitor, string email)
    {
        using var wrong = await (await Form.At(visitor, "/account/sign-in")).Set("Form.Email", email).Set("Form.Password", "not this one").Post();
        Assert.Equal(HttpStatusCode.OK, wrong.StatusCode);
    }

    // A note is put on the chain within moments: it is one or the other, and counted in one look.
    private async Task<int> ToldAsync(AuditEvent what)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        await using var _ = await db.Database.BeginTransactionAsync(Ct);
        return await db.Set<AuditNote>().CountAsync(note => note.Event == what, Ct) + await db.Set<AuditEntry>().CountAsync(entry => entry.Event == what, Ct);
    }
}
