using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.People.SignInScene;

namespace ReedClinic.Data.Tests.People;

/// <summary>OWASP ASVS 5.0: 7.2.1, 7.2.4, 7.3.1, 7.3.2, 7.4.1, 7.4.2, 7.4.3, 8.3.2, 6.3.3.</summary>
public sealed class SessionTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Staff_rights_need_more_than_a_password(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example", Role.Teacher, Role.Owner);

        var weak = await scene.InAsync(account);
        Assert.True(weak is { IsTeacher: false, IsOwner: false, OwesSecondStep: true });
        foreach (var way in new[] { SignInWay.PasswordAndCode, SignInWay.PasswordAndRecoveryCode, SignInWay.Passkey })
        {
            Assert.True(await scene.InAsync(account, way) is { IsTeacher: true, IsOwner: true, OwesSecondStep: false });
        }

        Assert.False((await scene.InAsync(account, SignInWay.Link)).WorksHere);
    }

    [Theory, OnBothEngines]
    public async Task Nothing_done_for_long_ends_a_session_and_doing_something_does_not(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var session = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example"))).Session!.Value;

        for (var day = 0; day < 3; day++)
        {
            scene.Time.Advance(SessionRules.StudentIdle - TimeSpan.FromMinutes(1));
            Assert.NotNull(await scene.WhoAsync(session));
        }

        scene.Time.Advance(SessionRules.StudentIdle);
        Assert.Null(await scene.WhoAsync(session));
    }

    [Theory, OnBothEngines]
    public async Task Whoever_works_here_is_out_after_two_quiet_hours(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var session = (await scene.InAsync(await scene.AccountAsync("edda@harbour.example", Role.Teacher), SignInWay.Passkey)).Session!.Value;

        scene.Time.Advance(SessionRules.StaffIdle - TimeSpan.FromMinutes(1));
        Assert.NotNull(await scene.WhoAsync(session));
        scene.Time.Advance(SessionRules.StaffIdle);
        Assert.Null(await scene.WhoAsync(session));
    }

    [Theory, OnBothEngines]
    public async Task A_page_that_only_watches_does_not_keep_a_session_from_running_out(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var session = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example"))).Session!.Value;

        scene.Time.Advance(SessionRules.StudentIdle / 2);
        Assert.NotNull(await scene.WhoAsync(session, acting: false));
        scene.Time.Advance(SessionRules.StudentIdle / 2);
        Assert.Null(await scene.WhoAsync(session, acting: false));
    }

    [Theory, OnBothEngines]
    public async Task However_busy_a_session_ends_in_its_time_and_staff_sooner(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var student = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example"))).Session!.Value;
        var teacher = (await scene.InAsync(await scene.AccountAsync("edda@harbour.example", Role.Teacher), SignInWay.Passkey)).Session!.Value;
        var (hours, taught) = (0, 0);
        while (hours <= SessionRules.StudentLongest.TotalHours && await scene.WhoAsync(student) is not null)
        {
            taught += await scene.WhoAsync(teacher) is null ? 0 : 1;
            hours++;
            scene.Time.Advance(TimeSpan.FromHours(1));
        }

        Assert.Equal((int)SessionRules.StudentLongest.TotalHours, hours);
        Assert.Equal((int)SessionRules.StaffLongest.TotalHours, taught);
    }

    [Theory, OnBothEngines]
    public async Task A_session_can_be_ended_from_another_browser_and_all_others_at_once(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var here = await scene.InAsync(account);
        var there = await scene.InAsync(account);
        var third = await scene.InAsync(account);
        var stranger = await scene.InAsync(await scene.AccountAsync("eve@harbour.example"));

        Assert.Equal(3, (await scene.SessionBook.MineAsync(here, Ct)).Count);
        Assert.False(await scene.SessionBook.EndAsync(stranger, there.Session!.Value, Ct));
        Assert.NotNull(await scene.WhoAsync(there.Session!.Value));
        Assert.True(await scene.SessionBook.EndAsync(here, there.Session!.Value, Ct));
        Assert.Null(await scene.WhoAsync(there.Session!.Value));
        Assert.Equal(1, await scene.SessionBook.EndOthersAsync(here, Ct));
        Assert.Null(await scene.WhoAsync(third.Session!.Value));
        Assert.NotNull(await scene.WhoAsync(here.Session!.Value));
        Assert.NotNull(await scene.WhoAsync(stranger.Session!.Value));
    }

    [Theory, OnBothEngines]
    public async Task A_new_sign_in_in_the_same_browser_takes_the_old_one_s_place(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var before = (await scene.InAsync(account)).Session!.Value;

        var after = Assert.NotNull(await scene.Sessions.BeginAsync(account, SignInWay.Passkey, "Firefox", before, Ct));

        Assert.NotEqual(before, after);
        Assert.Null(await scene.WhoAsync(before));
        Assert.NotNull(await scene.WhoAsync(after));
    }

    [Theory, OnBothEngines]
    public async Task A_disabled_account_is_out_at_once_and_a_role_that_was_taken_is_gone(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new SignInScene(db);
        var account = await scene.AccountAsync("edda@harbour.example", Role.Teacher);
        var session = (await scene.InAsync(account, SignInWay.Passkey)).Session!.Value;

        await using (var context = db.CreateDbContext())
        {
            await context.UserRoles.Where(held => held.UserId == account.Value).ExecuteDeleteAsync(Ct);
        }

        Assert.True(await scene.WhoAsync(session) is { IsTeacher: false });
        await using (var context = db.CreateDbContext())
        {
            await context.Users.Where(user => user.Id == account.Value)
                .ExecuteUpdateAsync(user => user.SetProperty(row => row.DisabledAt, scene.Time.GetUtcNow()), Ct);
        }

        Assert.Null(await scene.WhoAsync(session));
        Assert.Null(await scene.Sessions.BeginAsync(account, SignInWay.Passkey, "Firefox", null, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Who_signs_in_everywhere_loses_the_browser_that_was_quiet_longest(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var account = await scene.AccountAsync("runa@harbour.example");
        var first = (await scene.InAsync(account)).Session!.Value;
        for (var i = 0; i < SessionRules.Most; i++)
        {
            scene.Time.Advance(TimeSpan.FromMinutes(2));
            await scene.InAsync(account);
        }

        Assert.Null(await scene.WhoAsync(first));
        Assert.Equal(SessionRules.Most, (await scene.SessionBook.MineAsync(new Actor(account, null, false, false), Ct)).Count);
    }

    [Theory, OnBothEngines]
    public async Task A_sign_in_is_fresh_for_ten_minutes(ClinicEngine engine)
    {
        var scene = new SignInScene(await databases.FreshAsync(engine));
        var session = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example"))).Session!.Value;

        scene.Time.Advance(SessionRules.FreshFor - TimeSpan.FromSeconds(1));
        Assert.True((await scene.WhoAsync(session))!.IsFresh);
        scene.Time.Advance(TimeSpan.FromSeconds(1));
        Assert.False((await scene.WhoAsync(session))!.IsFresh);
    }
}
