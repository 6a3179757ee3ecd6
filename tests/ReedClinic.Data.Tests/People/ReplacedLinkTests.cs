using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.LinkScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>Links that take the place of others, and coming back by a new one. OWASP ASVS 5.0: 6.4.1, 6.3.8.</summary>
public sealed class ReplacedLinkTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_second_invitation_to_an_address_takes_the_place_of_the_first_whatever_each_is_for(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        var first = Done(await scene.Invitations.InviteAsync(Owner, Role.Teacher, "edgar@harbour.example", byHand: false, NewOperation(), Ct));
        var second = Done(await scene.Invitations.InviteAsync(Owner, Role.Student, "Edgar@harbour.example", byHand: false, NewOperation(), Ct));
        var third = Done(await scene.Begins.SendAsync(Owner, "edgar@harbour.example", byHand: false, NewOperation(), Ct));

        Assert.False(first.Replaced);
        Assert.True(second.Replaced);
        Assert.True(third.Replaced);
        Assert.Equal(third.Id, Assert.Single(await scene.Invitations.OpenAsync(Owner, Ct)).Id);
        Assert.Null(await scene.Accounts.ReadAsync(first.Secret, Ct));
        Assert.Null(await scene.Accounts.ReadAsync(second.Secret, Ct));
        Assert.Equal(BeginState.New, await scene.Begins.ReadAsync(third.Secret, null, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Of_two_invitations_at_the_same_moment_one_is_good(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        await Task.WhenAll(
            scene.Invitations.InviteAsync(Owner, Role.Teacher, "tilde@harbour.example", byHand: false, NewOperation(), Ct),
            scene.Invitations.InviteAsync(Owner, Role.Student, "tilde@harbour.example", byHand: false, NewOperation(), Ct));

        Assert.Single(await scene.Invitations.OpenAsync(Owner, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Whoever_began_by_a_link_gets_another_one_though_strangers_may_not_come_and_nobody_learns_who_that_is(ClinicEngine engine)
    {
        await using var scene = await SceneAsync(engine);
        await scene.OpenStudioAsync();
        var link = Done(await scene.Begins.SendAsync(Owner, "jory@harbour.example", byHand: false, NewOperation(), Ct)).Secret;
        var account = Done(await scene.Begins.StartAsync(link, new string('d', 43), "Jory", AgeAnswer.OldEnough, NewOperation(), Ct));
        await using (var db = scene.Db.CreateDbContext())
        {
            await db.Set<Studio>().ExecuteUpdateAsync(set => set.SetProperty(studio => studio.SignUpOpen, false), Ct);
        }

        var (known, jobs) = (await scene.Begins.AskAsync("jory@harbour.example", NewOperation(), Ct), await scene.MailsAsync());
        var mail = await scene.LatestMailAsync();
        var unknown = await scene.Begins.AskAsync("nobody@harbour.example", NewOperation(), Ct);

        Assert.Equal(known, unknown);
        Assert.Equal((MailKind.Begin, "jory@harbour.example"), (mail.Kind, mail.To));
        Assert.Equal(jobs + 1, await scene.MailsAsync()); // the same work
        await using (var db = scene.Db.CreateDbContext())
        {
            var aside = (await db.Set<Job>().Where(job => job.Kind == JobKind.Mail).ToListAsync(Ct)).MaxBy(job => job.Id)!;
            Assert.True(aside is { Payload: "", DoneAt: not null });
            Assert.NotNull((await db.Set<Ticket>().SingleAsync(ticket => ticket.Email == "nobody@harbour.example", Ct)).WithdrawnAt);
        }

        Assert.Equal(account, Done(await scene.Begins.StartAsync(mail.Secret, new string('e', 43), null, null, NewOperation(), Ct)));
        Assert.IsType<Outcome<bool>.NotFound>(await scene.SignUps.AskAsync("nobody@harbour.example", NewOperation(), Ct));
    }

    private async Task<LinkScene> SceneAsync(ClinicEngine engine) => new(await databases.FreshAsync(engine));
}
