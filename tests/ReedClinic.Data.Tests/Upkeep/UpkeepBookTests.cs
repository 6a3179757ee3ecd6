using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Backups;
using ReedClinic.Data.Upkeep;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Upkeep;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Upkeep;

/// <summary>What the owners are told of the machine is what is there.</summary>
public sealed class UpkeepBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly Actor Owner = new(new AccountId(Guid.Empty), null, IsTeacher: false, IsOwner: true);

    [Theory, OnBothEngines]
    public async Task Back_ups_room_work_and_mail_are_told_as_they_are(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(engine);
        await BackupScene.FillAsync(db, demo: false);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var book = Book(db, scene, time);
        var before = (await book.LookAsync(Owner, mailIsOn: true, [], Ct))!;
        Assert.Null(before.LastBackup);

        await scene.MakeAsync(db);
        var now = time.GetUtcNow();
        await using (var context = db.CreateDbContext())
        {
            context.AddRange(
                JobOf(JobKind.Media, now.AddHours(-3)),
                JobOf(JobKind.Media, now.AddHours(1)),
                JobOf(JobKind.Rates, now.AddHours(-9), gaveUpAt: now.AddHours(-1)),
                JobOf(JobKind.Mail, now.AddHours(-8)),
                JobOf(JobKind.Mail, now.AddHours(5), problem: "no answer"), // put off after a failure: it waits, though it isn't due
                JobOf(JobKind.Sweep, now.AddHours(6), problem: "IOException"),
                JobOf(JobKind.Mail, now.AddHours(-9), gaveUpAt: now.AddHours(-1)),
                JobOf(JobKind.Sweep, now.AddHours(-9), doneAt: now));
            await context.SaveChangesAsync(Ct);
        }

        var facts = (await book.LookAsync(Owner, mailIsOn: true, [], Ct))!;
        Assert.InRange(facts.LastBackup!.Value, now.AddMinutes(-10), now.AddMinutes(10));
        Assert.Equal((before.WorkDue + 3, 1), (facts.WorkDue, facts.MailsFailing));
        Assert.Equal((1, 1), (facts.WorkGivenUp, facts.MailsGivenUp));
        Assert.InRange(facts.OldestDue!.Value, now.AddHours(-8.01), now.AddHours(-7.99));
        Assert.InRange(facts.DiskFree!.Value, 1, facts.DiskSize!.Value);
        HasRoomForRecords(db, facts);
        Assert.True(facts.MediaBytes > 1_000);
        Assert.True(facts.RecordsBytes > 100_000);

        // Mail that is off waits for nobody.
        Assert.InRange((await book.LookAsync(Owner, mailIsOn: false, [], Ct))!.OldestDue!.Value, now.AddHours(-3.01), now.AddHours(-2.99));
    }

    private static void HasRoomForRecords(TestDatabase db, UpkeepFacts facts)
    {
        Assert.Equal(db.Engine == ClinicEngine.Postgres, facts.RecordsAreElsewhere);
        if (db.Engine == ClinicEngine.Sqlite)
        {
            var drive = new DriveInfo(Path.GetDirectoryName(new Microsoft.Data.Sqlite.SqliteConnectionStringBuilder(db.Connection).DataSource)!);
            Assert.Equal(drive.TotalSize, facts.RecordsSize);
            Assert.InRange(facts.RecordsFree!.Value, 1, drive.TotalSize);
        }
    }

    [Theory, OnBothEngines]
    public async Task Nobody_but_an_owner_is_told(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var db = await databases.OpenAsync(engine);
        Assert.Null(await Book(db, scene, TimeProvider.System).LookAsync(Owner with { IsOwner = false, IsTeacher = true }, mailIsOn: true, [], Ct));
    }

    private static UpkeepBook Book(TestDatabase db, BackupScene scene, TimeProvider time) =>
        new(new UpkeepReader(db, db.Services.GetRequiredService<MediaFolder>(), db.Services.GetRequiredService<BackupSettings>() with { Folder = scene.Folder }, time));

    private static Job JobOf(JobKind kind, DateTimeOffset due, DateTimeOffset? gaveUpAt = null, DateTimeOffset? doneAt = null, string? problem = null) =>
        new() { Id = Operation().Value, Kind = kind, MadeAt = due, DueAt = due, GaveUpAt = gaveUpAt, DoneAt = doneAt, Problem = problem };
}
