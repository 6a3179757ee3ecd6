using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.People;

/// <summary>An account that was closed opens by nothing that was given out before. OWASP ASVS 5.0: 7.4.2.</summary>
public sealed class ClosedAccountTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Next = "nine gulls over the pier";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task It_wins_no_password_back_and_changes_nothing(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var runa = await scene.InAsync(account);
        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        var link = Assert.Single(await scene.MailAsync()).Secret;
        await CloseAsync(scene.Databases, account);

        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.SignIn.ChoosePasswordAsync(link, Next, Ct));
        await scene.SignIn.AskForPasswordAsync("runa@harbour.example", Ct);
        Assert.Single(await scene.MailAsync());
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.SignIn.ChangePasswordAsync(runa, SignInScene.Password, Next, SignInScene.Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Its_codes_are_no_second_step_any_more(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var codes = await SecondStepTests.OnAsync(scene, await scene.InAsync(account));
        await CloseAsync(scene.Databases, account);

        Assert.Null(await scene.Check.TakeAsync(account, codes[0], Ct));
    }

    [Theory, OnBothEngines]
    public async Task One_that_was_begun_by_a_link_gets_neither_a_password_nor_another_link(ClinicEngine engine)
    {
        await using var scene = new LinkScene(await databases.FreshAsync(engine));
        await scene.OpenStudioAsync();
        var (account, session) = await scene.BegunAsync("jory@harbour.example");
        var jory = (await scene.Sessions.WhoAsync(session, true, Ct))!.Actor;
        await CloseAsync(scene.Db, account);

        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Begins.ClaimAsync(jory, LinkScene.Password, LinkScene.NewOperation(), Ct));
        Assert.IsType<Outcome<bool>.Done>(await scene.Begins.AskAsync("jory@harbour.example", LinkScene.NewOperation(), Ct));
        Assert.Equal(MailKind.HaveAccount, (await scene.LatestMailAsync()).Kind);
    }

    private static async Task CloseAsync(TestDatabase db, AccountId account)
    {
        await using var context = db.CreateDbContext();
        await context.Users.Where(user => user.Id == account.Value)
            .ExecuteUpdateAsync(row => row.SetProperty(user => user.DisabledAt, TimeProvider.System.GetUtcNow()), Ct);
    }
}
