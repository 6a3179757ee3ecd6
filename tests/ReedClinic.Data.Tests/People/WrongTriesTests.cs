using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.People;
using static ReedClinic.Data.Tests.People.SignInScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>OWASP ASVS 5.0: 6.3.1.</summary>
public sealed class WrongTriesTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Of_many_wrong_tries_at_once_each_counts(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var account = await scene.AccountAsync("runa@harbour.example");
        var wrong = new WrongTries(db, scene.Time);

        var rests = await Task.WhenAll(Enumerable.Range(0, WrongTries.Most + 2).Select(_ => Task.Run(() => wrong.CountAsync(account, Ct), Ct)));

        Assert.Contains(true, rests);
        await using var context = db.CreateDbContext();
        var stands = await context.Users.AsNoTracking().SingleAsync(user => user.Id == account.Value, Ct);
        Assert.Equal(2, stands.AccessFailedCount);
        Assert.Equal(scene.Time.GetUtcNow() + WrongTries.Rest, stands.LockoutEnd);

        // However right a password is that comes then, it isn't looked at.
        var runa = await scene.InAsync(account);
        Assert.Equal("Old", Refused(await scene.SignIn.ChangePasswordAsync(runa, Password, "nine gulls over the pier", Operation(), Ct)).Field);
    }

    [Theory, OnBothEngines]
    public async Task The_fifth_makes_an_account_rest_for_five_minutes_and_nobody_elses(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var (runa, eve) = (await scene.AccountAsync("runa@harbour.example"), await scene.AccountAsync("eve@harbour.example"));
        var wrong = new WrongTries(db, scene.Time);
        for (var i = 1; i < 5; i++)
        {
            Assert.False(await wrong.CountAsync(runa, Ct));
        }

        Assert.True(await wrong.CountAsync(runa, Ct));
        Assert.False(await wrong.CountAsync(eve, Ct));
        scene.Time.Advance(TimeSpan.FromMinutes(5));
        Assert.False(await wrong.CountAsync(runa, Ct));
        await wrong.ForgetAsync(runa, Ct);
        await using var context = db.CreateDbContext();
        Assert.Equal(0, (await context.Users.AsNoTracking().SingleAsync(user => user.Id == runa.Value, Ct)).AccessFailedCount);
    }
}
