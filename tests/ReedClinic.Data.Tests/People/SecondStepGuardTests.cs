using ReedClinic.Data.Audit;
using ReedClinic.Data.People;
using ReedClinic.Data.Tests.Engine;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.SecondStepTests;
using static ReedClinic.Data.Tests.People.SignInScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>Who may touch codes and passkeys, and when. OWASP ASVS 5.0: 6.3.3, 6.5.1, 6.5.6, 7.5.1.</summary>
public sealed class SecondStepGuardTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Ten_minutes_after_the_sign_in_no_code_is_shown_taken_on_ended_or_made_anew(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var (begun, on) = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example")), await scene.InAsync(await scene.AccountAsync("sief@harbour.example")));
        var key = TimeCode.FromLetters(Done(await scene.SecondStep.BeginAsync(begun, Operation(), Ct)));
        await OnAsync(scene, on);
        scene.Time.Advance(SessionRules.FreshFor);
        var (stale, staleOn) = ((await scene.WhoAsync(begun.Session!.Value))!, (await scene.WhoAsync(on.Session!.Value))!);

        Assert.Null(await scene.SecondStep.WaitingAsync(stale, Ct));
        Assert.Equal(FreshSignIn.Field, Refused(await scene.SecondStep.ConfirmAsync(stale, TimeCode.Of(key, TimeCode.StepAt(scene.Time.GetUtcNow())), Operation(), Ct)).Field);
        Assert.Equal(FreshSignIn.Field, Refused(await scene.SecondStep.NewRecoveryCodesAsync(staleOn, Operation(), Ct)).Field);
        Assert.Equal(FreshSignIn.Field, Refused(await scene.SecondStep.EndAsync(staleOn, Password, Operation(), Ct)).Field);
    }

    [Theory, OnBothEngines]
    public async Task A_teachers_password_alone_is_never_fresh_where_codes_are_asked_for(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("edda@harbour.example", Role.Teacher);
        await OnAsync(scene, await scene.InAsync(account));

        Assert.False((await scene.InAsync(account)).IsFresh);
        Assert.True((await scene.InAsync(account, SignInWay.PasswordAndCode)).IsFresh);
    }

    [Theory, OnBothEngines]
    public async Task While_an_account_rests_codes_are_not_ended_by_the_right_password_either(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var account = await scene.AccountAsync("runa@harbour.example");
        await OnAsync(scene, await scene.InAsync(account));
        var runa = await scene.InAsync(account, SignInWay.PasswordAndCode);
        var wrong = new WrongTries(db, scene.Time);
        for (var i = 0; i < WrongTries.Most; i++)
        {
            await wrong.CountAsync(account, Ct);
        }

        Assert.Contains("rests", Refused(await scene.SecondStep.EndAsync(runa, Password, Operation(), Ct)).Message, StringComparison.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task Of_two_who_use_one_code_at_once_one_gets_in(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var account = await scene.AccountAsync("runa@harbour.example");
        var code = await NextCodeAsync(scene, account);
        SignInWay? quicker = null;
        var hand = new QuickerHand(
            db,
            context => context.ChangeTracker.Entries<ClinicAccount>().Any(),
            _ => quicker = scene.Check.TakeAsync(account, code, Ct).GetAwaiter().GetResult());

        var slower = await new SecondStepCheck(hand, scene.Time, scene.Get<CodeSeal>()).TakeAsync(account, code, Ct);

        Assert.Equal(SignInWay.PasswordAndCode, quicker);
        Assert.Null(slower);
    }

    [Theory, OnBothEngines]
    public async Task A_recovery_code_is_its_owners_alone_and_its_use_is_noted(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var (runa, eve) = (await scene.AccountAsync("runa@harbour.example"), await scene.AccountAsync("eve@harbour.example"));
        var codes = await OnAsync(scene, await scene.InAsync(runa));
        await OnAsync(scene, await scene.InAsync(eve));

        Assert.Null(await scene.Check.TakeAsync(eve, codes[0], Ct));
        Assert.Equal(0, await scene.ToldAsync(AuditEvent.RecoveryCodeUsed));
        Assert.NotNull(await scene.Check.TakeAsync(runa, codes[0], Ct));
        Assert.Equal(1, await scene.ToldAsync(AuditEvent.RecoveryCodeUsed));
    }

    [Theory, OnBothEngines]
    public async Task The_only_way_in_is_not_taken_away(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var runa = await scene.InAsync(account, SignInWay.Passkey);
        Done(await scene.Passkeys.AddAsync(runa, Passkey(1), "phone", Operation(), Ct));
        await scene.ForgetPasswordAsync(account);

        Assert.Equal("", Refused(await scene.Passkeys.RemoveAsync(runa, "01", Operation(), Ct)).Field);
        Assert.Single((await scene.SignIn.ReadAsync(runa, Ct))!.Passkeys);
    }

    // The code of a moment whose step was never taken.
    private static async Task<string> NextCodeAsync(SignInScene scene, AccountId account)
    {
        var actor = await scene.InAsync(account);
        var key = TimeCode.FromLetters(Done(await scene.SecondStep.BeginAsync(actor, Operation(), Ct)));
        Done(await scene.SecondStep.ConfirmAsync(actor, TimeCode.Of(key, TimeCode.StepAt(scene.Time.GetUtcNow())), Operation(), Ct));
        scene.Time.Advance(TimeSpan.FromSeconds(TimeCode.StepSeconds));
        return TimeCode.Of(key, TimeCode.StepAt(scene.Time.GetUtcNow()));
    }
}
