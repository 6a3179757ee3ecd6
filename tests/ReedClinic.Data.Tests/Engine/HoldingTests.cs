using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Data.Tests.Privacy;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Engine;

/// <summary>
/// What waits for others on PostgreSQL, shown by somebody who doesn’t wait long; SQLite lets one write at a time anyway. OWASP
/// ASVS 5.0: 2.3.3, 15.4.2.
/// </summary>
public sealed class HoldingTests(TestDatabases databases) : CaretakerScene, IClassFixture<TestDatabases>
{
    [Fact]
    public async Task While_somebody_changes_who_owns_the_studio_nobody_else_does()
    {
        var db = await databases.FreshAsync(ClinicEngine.Postgres);
        await using var impatient = Impatient(db);
        var owner = new Actor(new AccountId(NewId()), null, IsTeacher: false, IsOwner: true) { IsFresh = true };
        await using var scope = db.Services.CreateAsyncScope();
        var register = scope.ServiceProvider.GetRequiredService<AccountRegister>();
        foreach (var role in new[] { Role.Owner, Role.Teacher })
        {
            Done(await register.AdmitAsync(new NewAccount($"{role}", $"{role}@harbour.example", "seven boats in the harbour"), role, Operation(), Ct));
        }

        await using var holder = db.CreateDbContext();
        var teacher = new AccountId((await holder.Users.SingleAsync(user => user.DisplayName == "Teacher", Ct)).Id);
        var people = new PeopleBook(impatient, TimeProvider.System, db.Services.GetRequiredService<Outbox>());
        await using (await holder.Database.BeginTransactionAsync(Ct))
        {
            await holder.Database.ExecuteSqlRawAsync("SELECT pg_advisory_xact_lock(7302)", Ct);
            Assert.True(await WaitsAsync(() => people.SetOwnerAsync(owner, teacher, true, Operation(), Ct)));
        }

        Assert.IsType<Outcome<bool>.Done>(await people.SetOwnerAsync(owner, teacher, true, Operation(), Ct));
    }

    [Fact]
    public async Task Nobody_is_let_go_of_while_their_guardian_comes_by()
    {
        var db = await databases.FreshAsync(ClinicEngine.Postgres);
        await using var impatient = Impatient(db);
        var guardian = await WardAsync(db, "rosa@harbour.example");
        await LiveAsync(db, guardian);
        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears));
        Assert.Equal((1, 0), Told(await Caretaker(db).RoundAsync(Ct)));
        await SendAsync(db);
        Clock.Advance(RetentionRules.Notice);

        await using var holder = db.CreateDbContext();
        await using (var coming = await holder.Database.BeginTransactionAsync(Ct))
        {
            await holder.Set<Session>().ExecuteUpdateAsync(row => row.SetProperty(session => session.SeenAt, Clock.GetUtcNow()), Ct);
            Assert.Equal((0, 0), Told(await Caretaker(db, impatient).RoundAsync(Ct)));
            await coming.CommitAsync(Ct);
        }

        Assert.Equal((0, 0), Told(await Caretaker(db).RoundAsync(Ct)));
    }

    [Fact]
    public async Task A_guardian_is_erased_and_their_student_asks_anew_at_one_moment_and_neither_stops_the_other()
    {
        var db = await databases.FreshAsync(ClinicEngine.Postgres);
        var scene = new GuardianScene(db);
        var (one, sibling) = (await scene.StudentAsync(), await scene.StudentAsync("Wim Kestrel"));
        var guardian = await scene.AgreedAsync(one);
        var email = (await scene.Book<SignInBook>().ReadAsync(guardian, Ct))!.Email;
        Done(await scene.Book<GuardianBook>().AskAsync(sibling, "Rosa Kestrel", email, Operation(), Ct));
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, one.Student!.Value, Operation(), Ct));
        await using var holder = db.CreateDbContext();
        Task<Outcome<ErasureView>> erasing;
        Task<Outcome<GuardianView>> asking;

        // The erasure comes as far as the guardian's mail, past the links; the question as far as it gets.
        await using (await holder.Database.BeginTransactionAsync(Ct))
        {
            await holder.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Jobs" WHERE "About" = {guardian.Account.Value} FOR UPDATE""", Ct);
            erasing = scene.Book<PrivacyBook>().EraseAsync(guardian, null, "erase", Operation(), Ct);
            await WaitAsync(1);
            asking = scene.Book<GuardianBook>().AskAsync(sibling, "Tove", "tove@harbour.example", Operation(), Ct);
            await WaitAsync(2);
        }

        Done(await erasing);
        Done(await asking);
        Assert.Equal("tove@harbour.example", (await holder.Set<Guardianship>().AsNoTracking().SingleAsync(Ct)).Email);

        // Until so many wait for a lock in this database, as PostgreSQL itself says.
        async Task WaitAsync(int many)
        {
            await using var watcher = db.CreateDbContext();
            using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(20));
            while (await watcher.Database.SqlQuery<int>($"SELECT count(*)::int AS \"Value\" FROM pg_stat_activity WHERE datname = current_database() AND wait_event_type = 'Lock'").SingleAsync(Ct) < many)
            {
                Assert.False(erasing.IsCompleted, "The erasure didn't wait.");
                await tick.WaitForNextTickAsync(Ct);
            }
        }
    }

    private static TestDatabase Impatient(TestDatabase db) => new(ClinicEngine.Postgres, db.Connection + ";Options=-c lock_timeout=300");

    private static async Task<bool> WaitsAsync(Func<Task> work)
    {
        try
        {
            await work();
            return false;
        }
        catch (Exception late) when (late is DbException || late.InnerException is DbException)
        {
            return true;
        }
    }
}
