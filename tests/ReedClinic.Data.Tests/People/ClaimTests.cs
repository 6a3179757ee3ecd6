using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.People;
using ReedClinic.Data.Tests.Engine;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.LinkScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>What a link opens and what it doesn’t, and the first password of an account that was begun by one. OWASP ASVS 5.0: 6.4.1, 2.3.3.</summary>
public sealed class ClaimTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Of_two_who_choose_the_first_password_at_once_one_does(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        var (_, session) = await scene.BegunAsync("jory@harbour.example");
        var jory = (await scene.Sessions.WhoAsync(session, true, Ct))!.Actor;
        Outcome<AccountId>? quicker = null;
        var hand = new QuickerHand(
            scene.Db,
            context => context.ChangeTracker.Entries<ClinicAccount>().Any(),
            _ => quicker = scene.Begins.ClaimAsync(jory, Password, NewOperation(), Ct).GetAwaiter().GetResult());

        var slower = await scene.BeginsBy(hand).ClaimAsync(jory, "nine gulls over the pier", NewOperation(), Ct);

        Done(quicker!);
        Assert.IsType<Outcome<AccountId>.NotFound>(slower);
    }

    [Theory, OnBothEngines]
    public async Task A_link_to_join_is_used_up_by_the_first_password_and_claims_no_account_that_has_one(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        await scene.OpenStudioAsync();
        await scene.BegunAsync("jory@harbour.example");
        Assert.IsType<Outcome<bool>.Done>(await scene.SignUps.AskAsync("jory@harbour.example", NewOperation(), Ct));
        var first = (await scene.LatestMailAsync()).Secret;
        Assert.IsType<Outcome<bool>.Done>(await scene.SignUps.AskAsync("jory@harbour.example", NewOperation(), Ct));
        var second = (await scene.LatestMailAsync()).Secret;
        Done(await scene.Accounts.JoinAsync(first, New("Jory"), NewOperation(), Ct));

        Assert.Null(await scene.Accounts.ReadAsync(first, Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Accounts.JoinAsync(second, New("Eve"), NewOperation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_link_to_join_that_is_over_claims_nothing(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        await scene.OpenStudioAsync();
        await scene.BegunAsync("jory@harbour.example");
        Assert.IsType<Outcome<bool>.Done>(await scene.SignUps.AskAsync("jory@harbour.example", NewOperation(), Ct));
        var link = (await scene.LatestMailAsync()).Secret;
        scene.Clock.Advance(TimeSpan.FromDays(14));

        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Accounts.JoinAsync(link, New("Jory"), NewOperation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_link_opens_what_it_was_made_for_and_nothing_else(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        var join = await scene.InviteAsync(Role.Teacher, "tove@harbour.example");
        var begin = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct)).Secret;

        Assert.Equal(BeginState.Gone, await scene.Begins.ReadAsync(join, null, Ct));
        Assert.Null(await scene.Accounts.ReadAsync(begin, Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Accounts.JoinAsync(begin, New("Eve"), NewOperation(), Ct));
        Assert.False(await scene.Get<SignInBook>().IsGoodAsync(join, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_link_to_begin_that_was_replaced_opens_nothing_sends_nothing_and_is_noted(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        var replaced = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct)).Secret;
        Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct));
        var mails = await scene.MailsAsync();

        Assert.Equal(BeginState.Gone, await scene.Begins.ReadAsync(replaced, null, Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Begins.StartAsync(replaced, new string('p', 43), "Eve", AgeAnswer.OldEnough, NewOperation(), Ct));
        Assert.IsType<Outcome<bool>.NotFound>(await scene.Begins.SendNewAsync(replaced, NewOperation(), Ct));

        Assert.Equal(mails, await scene.MailsAsync());
        await using var db = scene.Db.CreateDbContext();
        Assert.Equal(1, await db.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.LinkRefused, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Whoever_asks_for_a_known_address_leaves_no_link_that_is_good_and_nobody_is_invited_as_an_owner(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        await scene.OpenStudioAsync();

        Assert.IsType<Outcome<bool>.Done>(await scene.SignUps.AskAsync("mara@harbour.example", NewOperation(), Ct));
        Assert.IsType<Outcome<SentLink>.NotFound>(await scene.Invitations.InviteAsync(Owner, Role.Owner, "tove@harbour.example", byHand: false, NewOperation(), Ct));

        await using var db = scene.Db.CreateDbContext();
        Assert.All(await db.Set<Ticket>().ToListAsync(Ct), ticket => Assert.False(ticket.IsGood(scene.Clock.GetUtcNow())));
    }

    [Theory, OnBothEngines]
    public async Task Each_change_of_a_role_and_each_closing_is_noted(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        await scene.OpenStudioAsync();
        var teacher = Done(await scene.Register.AdmitAsync(New("Tove", "tove@harbour.example"), Role.Teacher, NewOperation(), Ct));

        Assert.IsType<Outcome<bool>.Done>(await scene.People.SetTeacherAsync(Owner, teacher, false, NewOperation(), Ct));
        Assert.IsType<Outcome<bool>.Done>(await scene.People.SetOwnerAsync(Owner, teacher, true, NewOperation(), Ct));
        Assert.IsType<Outcome<bool>.Done>(await scene.People.DisableAsync(Owner, teacher, NewOperation(), Ct));

        await using var db = scene.Db.CreateDbContext();
        var told = await db.Set<AuditNote>().Where(note => note.Whom == teacher.Value && note.Who == Owner.Account.Value).Select(note => note.Event).ToListAsync(Ct);
        Assert.Equal([AuditEvent.RoleGiven, AuditEvent.RoleTaken, AuditEvent.Disabled], told.Order());
    }

    [Theory, OnBothEngines]
    public async Task The_second_of_two_links_that_were_mailed_opens_what_the_first_began(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        await scene.OpenStudioAsync();
        var phone = new string('p', 43);
        Assert.IsType<Outcome<bool>.Done>(await scene.Begins.AskAsync("jory@harbour.example", NewOperation(), Ct));
        var first = (await scene.LatestMailAsync()).Secret;
        Assert.IsType<Outcome<bool>.Done>(await scene.Begins.AskAsync("jory@harbour.example", NewOperation(), Ct));
        var second = (await scene.LatestMailAsync()).Secret;
        var account = Done(await scene.Begins.StartAsync(first, phone, "Jory", AgeAnswer.OldEnough, NewOperation(), Ct));

        Assert.Equal(BeginState.NewLink, await scene.Begins.ReadAsync(second, phone, Ct));
        Assert.Equal(account, Done(await scene.Begins.StartAsync(second, phone, null, null, NewOperation(), Ct)));
        Assert.Equal(BeginState.Again, await scene.Begins.ReadAsync(second, phone, Ct));
        Assert.Equal(BeginState.Elsewhere, await scene.Begins.ReadAsync(second, new string('l', 43), Ct));
        Assert.Equal(account, Done(await scene.Begins.StartAsync(second, phone, null, null, NewOperation(), Ct)));
    }

    [Theory, OnBothEngines]
    public async Task A_link_that_was_handed_over_opens_no_account_that_is_made_at_the_same_moment(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        await scene.OpenStudioAsync();
        var handed = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: true, NewOperation(), Ct)).Secret;
        Assert.IsType<Outcome<bool>.Done>(await scene.Begins.AskAsync("jory@harbour.example", NewOperation(), Ct));
        var mailed = (await scene.LatestMailAsync()).Secret;
        var hand = new QuickerHand(
            scene.Db,
            context => context.ChangeTracker.Entries<ClinicAccount>().Any(),
            _ => Done(scene.Begins.StartAsync(mailed, new string('p', 43), "Jory", AgeAnswer.OldEnough, NewOperation(), Ct).GetAwaiter().GetResult()));

        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.BeginsBy(hand).StartAsync(handed, new string('e', 43), "Eve", AgeAnswer.OldEnough, NewOperation(), Ct));

        Assert.True(hand.WasThere);
        Assert.Equal(BeginState.Elsewhere, await scene.Begins.ReadAsync(handed, new string('e', 43), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_link_to_begin_that_was_not_used_opens_no_account_that_was_made_meanwhile(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        await scene.OpenStudioAsync();
        var handed = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: true, NewOperation(), Ct)).Secret;
        Assert.IsType<Outcome<bool>.Done>(await scene.Begins.AskAsync("jory@harbour.example", NewOperation(), Ct));
        var mailed = (await scene.LatestMailAsync()).Secret;
        var account = Done(await scene.Begins.StartAsync(mailed, new string('p', 43), "Jory", AgeAnswer.OldEnough, NewOperation(), Ct));

        Assert.Equal(BeginState.Elsewhere, await scene.Begins.ReadAsync(handed, new string('e', 43), Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Begins.StartAsync(handed, new string('e', 43), "Eve", AgeAnswer.OldEnough, NewOperation(), Ct));
        Done(await scene.Begins.ClaimAsync((await scene.Accounts.ActorFor(account, Ct))! with { IsFresh = true }, Password, NewOperation(), Ct));
        Assert.NotEqual(BeginState.New, await scene.Begins.ReadAsync(handed, new string('e', 43), Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Begins.StartAsync(handed, new string('e', 43), "Eve", AgeAnswer.OldEnough, NewOperation(), Ct));
    }
}
