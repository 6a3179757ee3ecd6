using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Audit;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.LinkScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>One-time links and who may come in by them. OWASP ASVS 5.0: 6.4.1 (expire, used once), 6.3.8 (nobody learns who has an account).</summary>
public sealed class LinkTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task An_invitation_makes_one_account_with_the_address_it_went_to_and_no_second_one(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var secret = await scene.InviteAsync(Role.Teacher, "tove@harbour.example");
        var joined = NewOperation();

        var account = Done(await scene.Accounts.JoinAsync(secret, New("Tove", "somebody.else@harbour.example"), joined, Ct));
        Assert.Equal(account, Done(await scene.Accounts.JoinAsync(secret, New("Tove"), joined, Ct))); // the same form again
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Accounts.JoinAsync(secret, New("Eve"), NewOperation(), Ct));
        Assert.Null(await scene.Accounts.ReadAsync(secret, Ct));

        Assert.True(await scene.Accounts.ActorFor(account, Ct) is { IsTeacher: true, IsOwner: false, Student: null });
        await using var db = scene.Db.CreateDbContext();
        Assert.Equal("tove@harbour.example", (await db.Users.SingleAsync(user => user.Id == account.Value, Ct)).Email);
        Assert.False(await db.Users.AnyAsync(user => user.Email == "somebody.else@harbour.example", Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_link_that_is_expired_withdrawn_replaced_or_cut_short_makes_nothing(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var replaced = await scene.InviteAsync(Role.Student, "one@harbour.example");
        var good = await scene.InviteAsync(Role.Student, "one@harbour.example");
        var withdrawn = await scene.InviteAsync(Role.Student, "two@harbour.example");
        var invitation = Assert.Single(await scene.Invitations.OpenAsync(Owner, Ct), one => one.Email == "two@harbour.example");
        Assert.IsType<Outcome<bool>.Done>(await scene.Invitations.WithdrawAsync(Owner, invitation.Id, NewOperation(), Ct));

        foreach (var secret in new[] { replaced, withdrawn, good[..^1], good + "x", "", null })
        {
            Assert.Null(await scene.Accounts.ReadAsync(secret, Ct));
            Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Accounts.JoinAsync(secret, New("Eve"), NewOperation(), Ct));
        }

        scene.Clock.Advance(TimeSpan.FromDays(14));
        Assert.Null(await scene.Accounts.ReadAsync(good, Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Accounts.JoinAsync(good, New("Eve"), NewOperation(), Ct));
        await using var db = scene.Db.CreateDbContext();
        Assert.Equal(0, await db.Set<Student>().CountAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task Of_ten_who_use_one_link_at_once_one_gets_in(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var secret = await scene.InviteAsync(Role.Student, "ten@harbour.example");

        var answers = await Task.WhenAll(Enumerable.Range(0, 10).Select(n => scene.Accounts.JoinAsync(secret, New($"N{n}"), NewOperation(), Ct)));

        Assert.Single(answers, answer => answer is Outcome<AccountId>.Done);
        await using var db = scene.Db.CreateDbContext();
        Assert.Equal(1, await db.Set<Student>().CountAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task An_address_gets_three_mails_in_an_hour_and_none_while_the_studio_is_closed_to_strangers(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        Assert.IsType<Outcome<bool>.NotFound>(await scene.SignUps.AskAsync("ines@harbour.example", NewOperation(), Ct));
        await scene.OpenStudioAsync();
        for (var time = 0; time < 5; time++)
        {
            // A password that was asked for under this address, by whoever, doesn't use the links up.
            await scene.Get<SignInBook>().AskForPasswordAsync("ines@harbour.example", Ct);
        }

        var before = await scene.MailsAsync();
        for (var time = 0; time < 5; time++)
        {
            Assert.IsType<Outcome<bool>.Done>(await scene.SignUps.AskAsync("Ines@harbour.example", NewOperation(), Ct));
        }

        Assert.Equal(before + StrangerLinks.MostInAnHour, await scene.MailsAsync());
        var again = NewOperation();
        Assert.IsType<Outcome<bool>.Done>(await scene.SignUps.AskAsync("tove@harbour.example", again, Ct));
        Assert.IsType<Outcome<bool>.Done>(await scene.SignUps.AskAsync("tove@harbour.example", again, Ct));
        Assert.Equal(before + StrangerLinks.MostInAnHour + 1, await scene.MailsAsync());
    }

    [Theory, OnBothEngines]
    public async Task A_link_to_begin_is_one_browsers_expires_and_ends_with_a_password(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var (phone, laptop) = (new string('p', 43), new string('l', 43));
        var secret = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct)).Secret;
        Assert.Equal(BeginState.New, await scene.Begins.ReadAsync(secret, null, Ct));

        var account = Done(await scene.Begins.StartAsync(secret, phone, "Jory", AgeAnswer.Younger, NewOperation(), Ct));
        Assert.Equal(account, Done(await scene.Begins.StartAsync(secret, phone, null, null, NewOperation(), Ct)));
        Assert.Equal(BeginState.Elsewhere, await scene.Begins.ReadAsync(secret, laptop, Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Begins.StartAsync(secret, laptop, "Eve", AgeAnswer.OldEnough, NewOperation(), Ct));
        var actor = (await scene.Accounts.ActorFor(account, Ct))!;
        Assert.NotNull(actor.Student);
        Assert.False(actor.WorksHere);

        var second = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct)).Secret;
        Assert.Equal(BeginState.NewLink, await scene.Begins.ReadAsync(second, laptop, Ct));
        Assert.Equal(account, Done(await scene.Begins.StartAsync(second, laptop, null, null, NewOperation(), Ct)));

        scene.Clock.Advance(TimeSpan.FromDays(3));
        Assert.Equal(BeginState.Expired, await scene.Begins.ReadAsync(secret, phone, Ct));
        Assert.True(await scene.Begins.IsUnclaimedAsync(actor, Ct));
        var stale = Assert.IsType<Outcome<AccountId>.Refused>(await scene.Begins.ClaimAsync(actor with { IsFresh = false }, Password, NewOperation(), Ct));
        Assert.Equal(FreshSignIn.Field, Assert.Single(stale.Problems).Field);
        actor = actor with { IsFresh = true };
        Assert.IsType<Outcome<AccountId>.Refused>(await scene.Begins.ClaimAsync(actor, "short", NewOperation(), Ct));
        Assert.Equal(account, Done(await scene.Begins.ClaimAsync(actor, Password, NewOperation(), Ct)));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Begins.ClaimAsync(actor, Password, NewOperation(), Ct));
        Assert.False(await scene.Begins.IsUnclaimedAsync(actor, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Whoever_chooses_the_first_password_stays_in_alone_and_is_told_by_mail(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var sessions = scene.Db.Services.GetRequiredService<SessionRegister>();
        var secret = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct)).Secret;
        var account = Done(await scene.Begins.StartAsync(secret, new string('p', 43), "Jory", AgeAnswer.OldEnough, NewOperation(), Ct));
        var here = (await sessions.BeginAsync(account, SignInWay.Link, "Firefox on Android", null, Ct))!.Value;
        var there = (await sessions.BeginAsync(account, SignInWay.Link, "Safari on Mac", null, Ct))!.Value;
        var before = await scene.MailsAsync();

        Done(await scene.Begins.ClaimAsync((await sessions.WhoAsync(here, true, Ct))!.Actor, Password, NewOperation(), Ct));

        Assert.NotNull(await sessions.WhoAsync(here, true, Ct));
        Assert.Null(await sessions.WhoAsync(there, true, Ct));
        Assert.Equal(before + 1, await scene.MailsAsync());
    }

    [Theory, OnBothEngines]
    public async Task An_account_that_is_joined_after_it_was_begun_by_a_link_is_nobodys_who_came_by_that_link(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        await scene.OpenStudioAsync();
        var sessions = scene.Db.Services.GetRequiredService<SessionRegister>();
        var secret = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct)).Secret;
        var account = Done(await scene.Begins.StartAsync(secret, new string('p', 43), "Jory", AgeAnswer.OldEnough, NewOperation(), Ct));
        var there = (await sessions.BeginAsync(account, SignInWay.Link, "Safari on Mac", null, Ct))!.Value;
        Assert.IsType<Outcome<bool>.Done>(await scene.SignUps.AskAsync("jory@harbour.example", NewOperation(), Ct));
        var join = (await scene.LatestMailAsync()).Secret;

        Done(await scene.Accounts.JoinAsync(join, New("Jory"), NewOperation(), Ct));

        Assert.Null(await sessions.WhoAsync(there, true, Ct));
        Assert.Equal(nameof(AuditEvent.PasswordChanged), (await scene.LatestMailAsync()).What);
    }

    [Theory, OnBothEngines]
    public async Task Opening_the_studio_joining_and_refused_links_stand_in_the_audit(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var owner = await scene.OpenStudioAsync();
        var secret = await scene.InviteAsync(Role.Teacher, "tove@harbour.example");
        var teacher = Done(await scene.Accounts.JoinAsync(secret, New("Tove"), NewOperation(), Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Accounts.JoinAsync(secret, New("Eve"), NewOperation(), Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Accounts.JoinAsync("made up", New("Eve"), NewOperation(), Ct));

        await using var db = scene.Db.CreateDbContext();
        var notes = await db.Set<AuditNote>().ToListAsync(Ct);
        Assert.Single(notes, note => note.Event == AuditEvent.StudioOpened && note.Who == owner.Value);
        Assert.Equal([owner.Value, teacher.Value], notes.Where(note => note.Event == AuditEvent.RoleGiven).OrderBy(note => note.Whom != owner.Value).Select(note => note.Whom!.Value));
        Assert.Equal(Owner.Account.Value, notes.Single(note => note.Event == AuditEvent.RoleGiven && note.Whom == teacher.Value).Who);
        Assert.Equal(2, notes.Count(note => note.Event == AuditEvent.AccountMade));
        Assert.Equal(2, notes.Count(note => note.Event == AuditEvent.LinkRefused));
    }

    [Theory, OnBothEngines]
    public async Task An_address_counts_as_proved_where_its_link_was_mailed_and_not_where_it_was_handed_over(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var mailed = Done(await scene.Accounts.JoinAsync(await scene.InviteAsync(Role.Student, "one@harbour.example"), New("One"), NewOperation(), Ct));
        var before = await scene.MailsAsync();
        var handed = Done(await scene.Accounts.JoinAsync(await scene.InviteAsync(Role.Student, "two@harbour.example", byHand: true), New("Two"), NewOperation(), Ct));
        var begin = Done(await scene.Begins.SendAsync(Owner, "three@harbour.example", byHand: true, NewOperation(), Ct)).Secret;
        var begun = Done(await scene.Begins.StartAsync(begin, new string('p', 43), "Three", AgeAnswer.OldEnough, NewOperation(), Ct));

        Assert.Equal(before, await scene.MailsAsync());
        await using var db = scene.Db.CreateDbContext();
        var proved = await db.Users.Where(user => user.EmailConfirmed).Select(user => user.Id).ToListAsync(Ct);
        Assert.Contains(mailed.Value, proved);
        Assert.DoesNotContain(handed.Value, proved);
        Assert.DoesNotContain(begun.Value, proved);
    }

    [Theory, OnBothEngines]
    public async Task A_passkey_makes_an_account_that_was_begun_by_a_link_ones_own_too(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var sessions = scene.Db.Services.GetRequiredService<SessionRegister>();
        var secret = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct)).Secret;
        var account = Done(await scene.Begins.StartAsync(secret, new string('p', 43), "Jory", AgeAnswer.OldEnough, NewOperation(), Ct));
        var here = (await sessions.BeginAsync(account, SignInWay.Link, "Firefox on Android", null, Ct))!.Value;
        var there = (await sessions.BeginAsync(account, SignInWay.Link, "Safari on Mac", null, Ct))!.Value;
        var passkeys = scene.Db.Services.CreateScope().ServiceProvider.GetRequiredService<PasskeyBook>();

        Done(await passkeys.AddAsync((await sessions.WhoAsync(here, true, Ct))!.Actor, SecondStepTests.Passkey(1), "phone", NewOperation(), Ct));

        Assert.NotNull(await sessions.WhoAsync(here, true, Ct));
        Assert.Null(await sessions.WhoAsync(there, true, Ct));
        Assert.Equal(BeginState.Claimed, await scene.Begins.ReadAsync(secret, null, Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_last_owner_can_neither_be_closed_nor_lose_the_role_and_a_closed_account_is_signed_out(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var owner = await scene.OpenStudioAsync();
        var teacher = Done(await scene.Register.AdmitAsync(New("Tove", "tove@harbour.example"), Role.Teacher, NewOperation(), Ct));
        var session = await scene.Db.Services.GetRequiredService<SessionRegister>().BeginAsync(teacher, SignInWay.Passkey, "Firefox", null, Ct);

        Assert.IsType<Outcome<bool>.Refused>(await scene.People.DisableAsync(Owner with { IsFresh = false }, teacher, NewOperation(), Ct));
        Assert.IsType<Outcome<bool>.Refused>(await scene.People.DisableAsync(Owner, owner, NewOperation(), Ct));
        Assert.IsType<Outcome<bool>.Refused>(await scene.People.SetOwnerAsync(Owner, owner, false, NewOperation(), Ct));
        Assert.True(await scene.Accounts.ActorFor(owner, Ct) is { IsOwner: true });

        Assert.IsType<Outcome<bool>.Done>(await scene.People.DisableAsync(Owner, teacher, NewOperation(), Ct));
        Assert.Null(await scene.Accounts.ActorFor(teacher, Ct));
        await using (var db = scene.Db.CreateDbContext())
        {
            Assert.NotNull((await db.Set<Session>().SingleAsync(row => row.Id == session!.Value, Ct)).EndedAt);
        }

        // Somebody closed is no owner to leave the studio to.
        Assert.IsType<Outcome<bool>.Done>(await scene.People.SetOwnerAsync(Owner, teacher, true, NewOperation(), Ct));
        Assert.IsType<Outcome<bool>.Refused>(await scene.People.DisableAsync(Owner, owner, NewOperation(), Ct));
        Assert.IsType<Outcome<bool>.Done>(await scene.People.EnableAsync(Owner, teacher, NewOperation(), Ct));
        var both = await Task.WhenAll(
            scene.People.DisableAsync(Owner, owner, NewOperation(), Ct), scene.People.DisableAsync(Owner, teacher, NewOperation(), Ct));
        Assert.Single(both, outcome => outcome is Outcome<bool>.Done);
    }

    private async Task<LinkScene> SceneAsync(ClinicEngine engine) => new(await databases.FreshAsync(engine));
}
