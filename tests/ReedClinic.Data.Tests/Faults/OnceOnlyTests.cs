using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.People;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Data.Tests.Letters;
using ReedClinic.Data.Tests.People;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Faults;

/// <summary>What no form numbers is noted once all the same when the database went away while it was noted, wherever that was.</summary>
public sealed class OnceOnlyTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory]
    [InlineData(Fault.Away)]
    [InlineData(Fault.AwayWithAnswer)]
    public async Task A_wrong_password_is_never_counted_twice_and_once_but_where_nobody_can_know(Fault fault)
    {
        var uncounted = 0;
        var at = new FaultAt();
        var db = await databases.FreshAsync(ClinicEngine.Postgres, at);
        var scene = new SignInScene(db);
        var wrong = new WrongTries(db, scene.Time);
        for (var (step, disturbed) = (1, true); disturbed; step++)
        {
            var account = await scene.AccountAsync($"runa{step}@harbour.example");

            at.Arm(step, fault);
            var rests = await wrong.CountAsync(account, Ct);
            at.Disarm();
            disturbed = at.WasReached;

            await using var context = db.CreateDbContext();
            var counted = (await context.Users.AsNoTracking().SingleAsync(user => user.Id == account.Value, Ct)).AccessFailedCount;
            Assert.InRange(counted, 0, 1);
            uncounted += counted == 0 ? 1 : 0;
            Assert.False(rests);
            Assert.True(disturbed || step > 3, $"Only {step} steps.");
        }

        // A commit that never came can't be told from one whose answer was lost.
        Assert.Equal(fault == Fault.Away ? 1 : 0, uncounted);
    }

    [Theory]
    [InlineData(ClinicEngine.Sqlite, Fault.Broken)]
    [InlineData(ClinicEngine.Sqlite, Fault.BrokenAnswer)]
    [InlineData(ClinicEngine.Postgres, Fault.Broken)]
    [InlineData(ClinicEngine.Postgres, Fault.BrokenAnswer)]
    [InlineData(ClinicEngine.Postgres, Fault.Away)]
    [InlineData(ClinicEngine.Postgres, Fault.AwayWithAnswer)]
    public async Task The_first_opening_of_a_link_is_told_to_the_audit_once(ClinicEngine engine, Fault fault)
    {
        var at = new FaultAt();
        var db = await databases.FreshAsync(engine, at);
        var scene = new SentLetterScene(db);
        var batch = await scene.SentAsync(await scene.GrownAsync());
        for (var (step, disturbed) = (1, true); disturbed; step++)
        {
            var made = await scene.MadeAsync(batch);

            at.Arm(step, fault);
            var read = await TryAsync(() => scene.Links.ReadAsync(made.Secret, Ct));
            at.Disarm();
            disturbed = at.WasReached;

            Assert.Equal(fault is Fault.Broken or Fault.BrokenAnswer && at.WasThere, read is null);
            Assert.NotNull(await scene.Links.ReadAsync(made.Secret, Ct));
            await using var context = db.CreateDbContext();
            var told = await context.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.LetterLinkOpened && note.What == made.Id.Value, Ct);
            Assert.Equal((step, 1), (step, told));
            Done(await scene.Links.CloseAsync(Teacher, batch.Code, made.Id, Ct));
        }
    }

    [Theory]
    [InlineData(Fault.Away)]
    [InlineData(Fault.AwayWithAnswer)]
    public async Task The_secret_of_a_link_is_told_also_by_the_try_that_finds_it_made(Fault fault)
    {
        var at = new FaultAt();
        var db = await databases.FreshAsync(ClinicEngine.Postgres, at);
        var scene = new SentLetterScene(db);
        var batch = await scene.SentAsync(await scene.GrownAsync());
        var owner = Teacher with { IsOwner = true };
        for (var (step, disturbed) = (1, true); disturbed; step++)
        {
            at.Arm(step, fault);
            var made = Done(await scene.Links.MakeAsync(Teacher, batch.Code, 7, Operation(), Ct));
            disturbed = at.WasReached;
            at.Arm(step, fault);
            var invited = Done(await scene.People.Book<InvitationBook>().InviteAsync(owner, Role.Teacher, GuardianScene.NewEmail("new"), byHand: true, Operation(), Ct));
            disturbed |= at.WasReached;
            at.Disarm();

            Assert.NotNull(await scene.Links.ReadAsync(made.Secret, Ct));
            Assert.NotNull(await scene.People.Book<AccountBook>().ReadAsync(invited.Secret, Ct));
            Done(await scene.Links.CloseAsync(Teacher, batch.Code, made.Id, Ct));
        }
    }

    // Null where it was told to be broken.
    private static async Task<T?> TryAsync<T>(Func<Task<T?>> act)
        where T : class
    {
        try
        {
            return await act();
        }
        catch (Exception trouble) when (FaultAt.IsMine(trouble))
        {
            return null;
        }
    }
}
