using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.SignInScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>What an address is worth that nobody has shown to be theirs, and an address that nobody has. OWASP ASVS 5.0: 6.3.8, 6.4.3.</summary>
public sealed class UnprovedAddressTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Next = "nine gulls over the pier";

    [Theory, OnBothEngines]
    public async Task Whoever_wins_an_unproved_address_back_by_mail_keeps_nothing_that_somebody_else_came_in_with(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var other = await scene.InAsync(account);
        Done(await scene.Passkeys.AddAsync(other, SecondStepTests.Passkey(1), "phone", Operation(), Ct));
        var key = TimeCode.FromLetters(Done(await scene.SecondStep.BeginAsync(other, Operation(), Ct)));
        Done(await scene.SecondStep.ConfirmAsync(other, TimeCode.Of(key, TimeCode.StepAt(scene.Time.GetUtcNow())), Operation(), Ct));

        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        var secret = (await scene.MailAsync()).Single(mail => mail.Kind == MailKind.NewPassword).Secret;
        Assert.Equal("Password", Refused(await scene.SignIn.ChoosePasswordAsync(secret, "eight888", Ct)).Field);
        Done(await scene.SignIn.ChoosePasswordAsync(secret, Next, Ct));

        var means = (await scene.SignIn.ReadAsync(other, Ct))!;
        Assert.True(means is { HasSecondStep: false, RecoveryCodesLeft: 0, HasPassword: true, EmailProved: true });
        var told = (await scene.MailAsync()).Select(mail => mail.What).ToList();
        Assert.Contains(nameof(AuditEvent.PasskeyRemoved), told);
        Assert.Contains(nameof(AuditEvent.CodesOff), told);
    }

    [Theory, OnBothEngines]
    public async Task Whoever_has_proved_their_address_keeps_their_passkey_when_a_password_is_won_back(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));
        Done(await scene.Passkeys.AddAsync(runa, SecondStepTests.Passkey(1), "phone", Operation(), Ct));
        await ProveAsync(scene, runa, "runa@harbour.example");

        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        Done(await scene.SignIn.ChoosePasswordAsync((await scene.MailAsync()).Single(mail => mail.Kind == MailKind.NewPassword).Secret, Next, Ct));

        Assert.Single((await scene.SignIn.ReadAsync(runa, Ct))!.Passkeys);
        Assert.DoesNotContain(await scene.MailAsync(), mail => mail.What == nameof(AuditEvent.EmailChanged));
    }

    [Theory, OnBothEngines]
    public async Task Whoever_works_here_wins_no_password_back_by_an_address_that_is_unproved(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("edda@harbour.example", Role.Teacher);

        await scene.SignIn.AskForPasswordAsync("edda@harbour.example", Ct);
        Assert.Empty(await scene.MailAsync());
        scene.Time.Advance(TimeSpan.FromHours(2));
        await ProveAsync(scene, await scene.InAsync(account), "edda@harbour.example");
        await scene.SignIn.AskForPasswordAsync("edda@harbour.example", Ct);

        Assert.Single(await scene.MailAsync(), mail => mail.Kind == MailKind.NewPassword);
    }

    [Theory, OnBothEngines]
    public async Task A_password_asked_for_costs_the_same_rows_whether_or_not_the_address_has_an_account(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        await scene.AccountAsync("runa@harbour.example");

        var known = await RowsAsync(db, () => scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct));
        var unknown = await RowsAsync(db, () => scene.SignIn.AskForPasswordAsync("nobody@harbour.example", Ct));

        Assert.Equal((1, 1, 1), known);
        Assert.Equal(known, unknown);
        Assert.Equal("runa@harbour.example", Assert.Single(await scene.MailAsync()).To);
    }

    [Theory, OnBothEngines]
    public async Task A_link_to_another_address_that_is_no_good_is_noted(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var runa = await scene.InAsync(await scene.AccountAsync("runa@harbour.example"));

        Assert.IsType<Outcome<string>.NotFound>(await scene.SignIn.ConfirmEmailAsync(runa, new string('a', 43), Operation(), Ct));

        Assert.Equal(1, await scene.ToldAsync(AuditEvent.LinkRefused));
    }

    private static async Task ProveAsync(SignInScene scene, Actor actor, string email)
    {
        Done(await scene.SignIn.AskForEmailAsync(actor, email, Operation(), Ct));
        Done(await scene.SignIn.ConfirmEmailAsync(actor, (await scene.MailAsync()).Single(mail => mail.Kind == MailKind.NewEmail).Secret, Operation(), Ct));
    }

    private static async Task<(int Tickets, int Jobs, int Notes)> RowsAsync(TestDatabase db, Func<Task> work)
    {
        var before = await CountAsync(db);
        await work();
        var after = await CountAsync(db);
        return (after.Tickets - before.Tickets, after.Jobs - before.Jobs, after.Notes - before.Notes);
    }

    private static async Task<(int Tickets, int Jobs, int Notes)> CountAsync(TestDatabase db)
    {
        await using var context = db.CreateDbContext();
        return (await context.Set<Ticket>().CountAsync(Ct), await context.Set<Job>().CountAsync(Ct), await context.Set<AuditNote>().CountAsync(Ct));
    }
}
