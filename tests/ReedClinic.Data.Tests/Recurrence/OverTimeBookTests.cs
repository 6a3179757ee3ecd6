using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using Studio = ReedClinic.Data.Tests.Bench.Studio;

namespace ReedClinic.Data.Tests.Recurrence;

public sealed class OverTimeBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly DateTimeOffset Spring = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task A_student_is_told_of_batches_whose_letter_was_sent_and_a_teacher_of_all(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var studio = new Studio(db);
        var ines = await studio.StudentAsync("Ines");
        var bram = await studio.StudentAsync("Bram");
        var first = await FoundAsync(db, await studio.BatchAsync(ines, 2, Spring), "tip-thin", sent: true);
        await FoundAsync(db, await studio.BatchAsync(ines, 1, Spring.AddMonths(2)), "worn", sent: false);
        await FoundAsync(db, await studio.BatchAsync(bram, 1, Spring), "bumps", sent: true);
        var book = new OverTimeBook(db);

        var mine = (await book.MineAsync(Student(ines), Ct))!;
        var theirs = (await book.OfAsync(Studio.Ada, ines.Id, Ct))!;
        var guardians = (await book.OfAsync(Student(bram) with { Student = null, Wards = [ines.Id] }, ines.Id, Ct))!;

        Assert.Equal([first.Code], mine.Batches.Select(batch => batch.Code));
        Assert.Equal(new Tally(1, 1, 2), Assert.Single(mine.Themes).Now);
        Assert.Equal(2, theirs.Batches.Count);
        Assert.Equal(["keeping", "tip-overdone"], theirs.Themes.Select(line => line.Theme.Id));
        Assert.Single(guardians.Batches);
        Assert.Null(await book.OfAsync(Student(bram), ines.Id, Ct));
        Assert.Null(await book.MineAsync(Studio.Ada, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_missing_reed_is_no_reed_and_a_batch_without_reeds_is_a_batch(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var studio = new Studio(db);
        var ines = await studio.StudentAsync("Ines");
        var batch = await FoundAsync(db, await studio.BatchAsync(ines, 2, Spring), "tip-thin", sent: true);
        await using (var context = db.CreateDbContext())
        {
            await context.Set<Reed>().Where(reed => reed.Batch == batch.Id).ExecuteUpdateAsync(reed => reed.SetProperty(row => row.Presence, Presence.Missing), Ct);
        }

        var mine = (await new OverTimeBook(db).MineAsync(Student(ines), Ct))!;

        Assert.Empty(Assert.Single(mine.Batches).Sheet.Reeds);
        Assert.Empty(mine.Themes);
    }

    private static Actor Student(Student student) => new(new AccountId(Studio.NewGuid()), student.Id, IsTeacher: false, IsOwner: false);

    private static async Task<Batch> FoundAsync(TestDatabase db, Batch batch, string kind, bool sent)
    {
        Studio.Value(await new BenchBook(db, TimeProvider.System).RecordAsync(Studio.Ada, batch.Reeds[0].Id, Studio.Found(kind), Studio.Operation(), Ct));
        if (sent)
        {
            await using var context = db.CreateDbContext();
            await context.Set<Batch>().Where(row => row.Id == batch.Id).ExecuteUpdateAsync(row => row.SetProperty(one => one.LetterSentAt, Spring.AddDays(5)), Ct);
        }

        return batch;
    }
}
