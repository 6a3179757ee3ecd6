using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.SignInScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>OWASP ASVS 5.0: 6.3.3, 6.4.4, 6.5.1, 6.5.2, 6.5.3, 6.5.5, 6.5.6.</summary>
public sealed class SecondStepTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Codes_are_asked_for_once_one_was_right_and_each_is_taken_once(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var runa = await scene.InAsync(account);
        var key = TimeCode.FromLetters(Done(await scene.SecondStep.BeginAsync(runa, Operation(), Ct)));
        Assert.Equal(TimeCode.KeyBytes, key.Length);
        Assert.False(await scene.Check.IsAskedOfAsync(account, Ct));

        Assert.Equal("Code", Refused(await scene.SecondStep.ConfirmAsync(runa, "000000x", Operation(), Ct)).Field);
        var first = TimeCode.Of(key, TimeCode.StepAt(scene.Time.GetUtcNow()));
        Assert.Equal(SecondStepBook.HowManyCodes, Done(await scene.SecondStep.ConfirmAsync(runa, first, Operation(), Ct)).Count);

        Assert.True(await scene.Check.IsAskedOfAsync(account, Ct));
        Assert.Null(await scene.Check.TakeAsync(account, first, Ct));
        scene.Time.Advance(TimeSpan.FromSeconds(TimeCode.StepSeconds));
        var next = TimeCode.Of(key, TimeCode.StepAt(scene.Time.GetUtcNow()));
        var takes = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => scene.Check.TakeAsync(account, next, Ct), Ct)));
        Assert.Equal(SignInWay.PasswordAndCode, Assert.Single(takes, way => way is not null));
    }

    [Theory, OnBothEngines]
    public async Task A_button_that_is_pressed_twice_shows_codes_that_are_good(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var runa = await scene.InAsync(account);
        var key = TimeCode.FromLetters(Done(await scene.SecondStep.BeginAsync(runa, Operation(), Ct)));
        var (code, pressed) = (TimeCode.Of(key, TimeCode.StepAt(scene.Time.GetUtcNow())), Operation());
        Done(await scene.SecondStep.ConfirmAsync(runa, code, pressed, Ct));

        var shown = Done(await scene.SecondStep.ConfirmAsync(runa, code, pressed, Ct));

        Assert.NotNull(await scene.Check.TakeAsync(account, shown[0], Ct));
        Assert.IsType<Outcome<IReadOnlyList<string>>.NotFound>(await scene.SecondStep.ConfirmAsync(runa, code, Operation(), Ct));
        Assert.IsType<Outcome<IReadOnlyList<string>>.NotFound>(await scene.SecondStep.ConfirmAsync(runa with { IsFresh = false }, code, pressed, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_right_code_forgets_the_wrong_ones_before_it(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var account = await scene.AccountAsync("runa@harbour.example");
        var codes = await OnAsync(scene, await scene.InAsync(account));
        var wrong = new WrongTries(db, scene.Time);
        for (var i = 1; i < WrongTries.Most; i++)
        {
            Assert.False(await wrong.CountAsync(account, Ct));
        }

        Assert.NotNull(await scene.Check.TakeAsync(account, codes[0], Ct));

        Assert.False(await wrong.CountAsync(account, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_recovery_code_is_good_once_and_only_its_hash_is_kept(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var account = await scene.AccountAsync("runa@harbour.example");
        var codes = await OnAsync(scene, await scene.InAsync(account));
        await using (var context = db.CreateDbContext())
        {
            var stored = await context.Set<RecoveryCode>().Select(code => code.Hash).ToListAsync(Ct);
            Assert.All(stored, hash => Assert.Equal(64, hash.Length));
            Assert.DoesNotContain(stored, hash => codes.Any(code => hash.Contains(code, StringComparison.Ordinal)));
        }

        Assert.Equal(SignInWay.PasswordAndRecoveryCode, await scene.Check.TakeAsync(account, $" {codes[3].ToUpperInvariant()} ", Ct));
        Assert.Null(await scene.Check.TakeAsync(account, codes[3], Ct));
        Assert.Null(await scene.Check.TakeAsync(await scene.AccountAsync("eve@harbour.example"), codes[4], Ct));
        Assert.Equal(SecondStepBook.HowManyCodes - 1, (await scene.SignIn.ReadAsync(await scene.InAsync(account), Ct))!.RecoveryCodesLeft);
    }

    [Theory, OnBothEngines]
    public async Task New_recovery_codes_make_the_old_ones_worthless(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var runa = await scene.InAsync(account);
        var old = await OnAsync(scene, runa);

        var made = Done(await scene.SecondStep.NewRecoveryCodesAsync(runa, Operation(), Ct));

        Assert.Null(await scene.Check.TakeAsync(account, old[0], Ct));
        Assert.NotNull(await scene.Check.TakeAsync(account, made[0], Ct));
        Assert.Equal(made.Count, made.Distinct().Count());
    }

    [Theory, OnBothEngines]
    public async Task The_key_of_the_app_is_stored_sealed(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var letters = Done(await scene.SecondStep.BeginAsync(await scene.InAsync(await scene.AccountAsync("runa@harbour.example")), Operation(), Ct));
        await using var context = db.CreateDbContext();

        var stored = (await context.Users.SingleAsync(Ct)).CodeKey!;

        Assert.DoesNotContain(letters, stored, StringComparison.Ordinal);
        Assert.DoesNotContain(Convert.ToBase64String(TimeCode.FromLetters(letters)).TrimEnd('='), stored, StringComparison.Ordinal);
        Assert.Equal(TimeCode.FromLetters(letters), scene.Get<CodeSeal>().Open(stored));
    }

    [Theory, OnBothEngines]
    public async Task Codes_go_only_with_the_password_and_not_from_whoever_works_here_without_a_passkey(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("edda@harbour.example", Role.Teacher);
        await OnAsync(scene, await scene.InAsync(account));
        var edda = await scene.InAsync(account, SignInWay.PasswordAndCode);

        Assert.Equal("Password", Refused(await scene.SecondStep.EndAsync(edda, "wrong wrong wrong wrong", Operation(), Ct)).Field);
        Assert.Equal("", Refused(await scene.SecondStep.EndAsync(edda, Password, Operation(), Ct)).Field);
        Done(await scene.Passkeys.AddAsync(edda, Passkey(1), "phone", Operation(), Ct));
        Done(await scene.SecondStep.EndAsync(edda, Password, Operation(), Ct));

        Assert.False(await scene.Check.IsAskedOfAsync(account, Ct));
        Assert.Equal("", Refused(await scene.Passkeys.RemoveAsync(edda, "01", Operation(), Ct)).Field);
    }

    [Theory, OnBothEngines]
    public async Task A_password_that_was_short_because_of_the_codes_is_made_longer_before_they_go(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        await OnAsync(scene, await scene.InAsync(account));
        var runa = await scene.InAsync(account, SignInWay.PasswordAndCode);
        Done(await scene.SignIn.ChangePasswordAsync(runa, Password, "gull&tide", Operation(), Ct));

        Assert.Equal("Password", Refused(await scene.SecondStep.EndAsync(runa, "gull&tide", Operation(), Ct)).Field);
    }

    [Theory, OnBothEngines]
    public async Task Passkeys_are_added_listed_and_removed_by_their_owner_alone(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));
        var eve = await scene.InAsync(await scene.AccountAsync("eve@harbour.example"));
        Done(await scene.Passkeys.AddAsync(runa, Passkey(1), "phone", Operation(), Ct));
        Done(await scene.Passkeys.AddAsync(runa, Passkey(2), "  ", Operation(), Ct));

        Assert.Equal(["phone", "Passkey"], (await scene.SignIn.ReadAsync(runa, Ct))!.Passkeys.Select(key => key.Name));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Passkeys.RemoveAsync(eve, "01", Operation(), Ct));
        Done(await scene.Passkeys.RemoveAsync(runa, "01", Operation(), Ct));

        Assert.Equal("02", Assert.Single((await scene.SignIn.ReadAsync(runa, Ct))!.Passkeys).Id);
        Assert.Equal(3, (await scene.MailAsync()).Count(mail => mail.Kind == MailKind.Notice));
    }

    [Theory, OnBothEngines]
    public async Task A_password_alone_adds_and_takes_nothing_where_a_teacher_has_a_passkey_already(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("edda@harbour.example", Role.Teacher);
        Done(await scene.Passkeys.AddAsync(await scene.InAsync(account), Passkey(1), "phone", Operation(), Ct));

        var weak = await scene.InAsync(account);

        Assert.True(weak is { IsFresh: false, OwesSecondStep: true });
        Assert.Equal(FreshSignIn.Field, Refused(await scene.Passkeys.AddAsync(weak, Passkey(2), "thief", Operation(), Ct)).Field);
        Assert.Equal(FreshSignIn.Field, Refused(await scene.Passkeys.RemoveAsync(weak, "01", Operation(), Ct)).Field);
        Assert.Equal(FreshSignIn.Field, Refused(await scene.SecondStep.BeginAsync(weak, Operation(), Ct)).Field);
        Assert.Equal(FreshSignIn.Field, Refused(await scene.SignIn.AskForEmailAsync(weak, "thief@harbour.example", Operation(), Ct)).Field);
        Assert.True((await scene.InAsync(account, SignInWay.Passkey)).IsFresh);
    }

    [Theory, OnBothEngines]
    public async Task A_key_that_was_shown_before_is_no_good_after_another_was_asked_for(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));
        var first = TimeCode.FromLetters(Done(await scene.SecondStep.BeginAsync(runa, Operation(), Ct)));
        var operation = Operation();
        var second = Done(await scene.SecondStep.BeginAsync(runa, operation, Ct));
        Assert.Equal(second, Done(await scene.SecondStep.BeginAsync(runa, operation, Ct)));
        Assert.Equal(second, await scene.SecondStep.WaitingAsync(runa, Ct));

        Assert.Equal("Code", Refused(await scene.SecondStep.ConfirmAsync(runa, TimeCode.Of(first, TimeCode.StepAt(scene.Time.GetUtcNow())), Operation(), Ct)).Field);
        Done(await scene.SecondStep.ConfirmAsync(runa, TimeCode.Of(TimeCode.FromLetters(second), TimeCode.StepAt(scene.Time.GetUtcNow())), Operation(), Ct));
        Assert.Null(await scene.SecondStep.WaitingAsync(runa, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Whoever_lost_everything_begins_anew_after_their_password_and_is_told(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("mara@harbour.example", Role.Owner);
        await OnAsync(scene, await scene.InAsync(account));
        var mara = await scene.InAsync(account, SignInWay.PasswordAndCode);
        Done(await scene.Passkeys.AddAsync(mara, Passkey(1), "phone", Operation(), Ct));
        var lost = new LostSecondStep(scene.Databases, scene.Time, scene.Get<ILookupNormalizer>(), scene.Get<Outbox>());

        Assert.False(await lost.ForgetAsync("nobody@harbour.example", Ct));
        Assert.False(await lost.ForgetAsync(null, Ct));
        Assert.True(await lost.ForgetAsync("MARA@harbour.example", Ct));

        Assert.Null(await scene.WhoAsync(mara.Session!.Value));
        var means = (await scene.SignIn.ReadAsync(mara, Ct))!;
        Assert.True(means is { HasSecondStep: false, RecoveryCodesLeft: 0, HasPassword: true });
        Assert.True(await scene.InAsync(account) is { OwesSecondStep: true, IsFresh: true });
        Assert.Contains(await scene.MailAsync(), mail => mail is { Kind: MailKind.Notice, What: "PasskeyRemoved" });
        Assert.Contains(await scene.MailAsync(), mail => mail is { Kind: MailKind.Notice, What: "CodesOff", At: { } at } && at == scene.Time.GetUtcNow());
    }

    [Theory, OnBothEngines]
    public async Task Ten_passkeys_are_enough(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));
        for (byte i = 1; i <= PasskeyBook.Most; i++)
        {
            Done(await scene.Passkeys.AddAsync(runa, Passkey(i), "phone", Operation(), Ct));
        }

        Refused(await scene.Passkeys.AddAsync(runa, Passkey(99), "phone", Operation(), Ct));
    }

    internal static UserPasskeyInfo Passkey(byte id) =>
        new([id], [1, 2, 3], new DateTimeOffset(2031, 3, 4, 9, id % 60, 0, TimeSpan.Zero), 0, ["internal"], true, true, true, [4], [5]);

    internal static async Task<IReadOnlyList<string>> OnAsync(SignInScene scene, Actor actor)
    {
        var key = TimeCode.FromLetters(Done(await scene.SecondStep.BeginAsync(actor, Operation(), Ct)));
        return Done(await scene.SecondStep.ConfirmAsync(actor, TimeCode.Of(key, TimeCode.StepAt(scene.Time.GetUtcNow())), Operation(), Ct));
    }
}
