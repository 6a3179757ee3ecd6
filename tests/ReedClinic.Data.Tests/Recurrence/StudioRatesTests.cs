using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Tests.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Data.Tests.Recurrence;

public sealed class StudioRatesTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly DateTimeOffset Spring = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    private static int _hours;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Rates_come_from_sent_letters_alone_and_a_student_is_held_against_the_others(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var studio = new Studio(db);
        var mine = await WorkedAsync(db, studio, "Ines", "+", "+", "+");
        foreach (var name in new[] { "Bram", "Cato", "Dora", "Emil" })
        {
            await WorkedAsync(db, studio, name, "-", "-", "+");
        }

        await WorkedAsync(db, studio, "Unsent", sent: false, "+", "+", "+");
        await new StudioRatesCaretaker(db, TimeProvider.System).RollUpAsync(Ct);

        var view = (await new CommonThreadBook(db, TimeProvider.System).FindAsync(Studio.Ada, mine.Code, Ct))!;

        var rate = view.Sheets.Studio.Rates["tip-thin"];
        Assert.Equal(4, rate.Students);
        Assert.InRange(rate.Mean, 0.25, 0.45);
        Assert.NotNull(view.Sheets.AsOf);
        var line = view.Report.Of("tip-thin")!;
        Assert.InRange(line.AboveStudio!.Value, 0.6, 1);
    }

    [Theory, OnBothEngines]
    public async Task A_studio_of_one_student_can_not_compare_and_says_so(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var batch = await WorkedAsync(db, new Studio(db), "Ines", "+", "-");
        await WorkedAsync(db, new Studio(db), (await StudentOfAsync(db, batch)), "+", "-");
        await new StudioRatesCaretaker(db, TimeProvider.System).RollUpAsync(Ct);
        await using var context = db.CreateDbContext();
        var last = await context.Set<Batch>().OrderByDescending(row => row.SubmittedAt).ThenByDescending(row => row.Id).FirstAsync(Ct);

        var view = (await new CommonThreadBook(db, TimeProvider.System).FindAsync(Studio.Ada, last.Code, Ct))!;

        Assert.Empty(view.Sheets.Studio.Rates);
        Assert.Equal("There are too few other students here to compare with.", view.Report.Plainly);
        Assert.All(view.Report.All, line => Assert.Null(line.AboveStudio));
    }

    [Theory, OnBothEngines]
    public async Task Counting_again_takes_the_place_of_what_was_counted_and_is_asked_for_once_a_day(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = new StudioRatesCaretaker(db, TimeProvider.System);
        foreach (var name in new[] { "Bram", "Cato", "Dora" })
        {
            await WorkedAsync(db, new Studio(db), name, "+", "-");
        }

        await caretaker.RollUpAsync(Ct);
        await caretaker.RollUpAsync(Ct);
        await caretaker.AskForRoundAsync(Ct);
        await caretaker.AskForRoundAsync(Ct);

        await using var context = db.CreateDbContext();
        Assert.Single(await context.Set<StudioRateRow>().Where(row => row.Theme == "tip-thin").ToListAsync(Ct));
        Assert.Single(await context.Set<Job>().Where(job => job.Kind == JobKind.Rates).ToListAsync(Ct));
        Assert.Equal(3, (await context.Set<StudioRateRow>().FirstAsync(row => row.Theme == "tip-thin", Ct)).Students);
    }

    private static Task<Batch> WorkedAsync(TestDatabase db, Studio studio, string name, params string[] reeds) => WorkedAsync(db, studio, name, sent: true, reeds);

    private static async Task<Batch> WorkedAsync(TestDatabase db, Studio studio, string name, bool sent, params string[] reeds) =>
        await WorkedAsync(db, studio, await studio.StudentAsync(name), sent, reeds);

    private static Task<Batch> WorkedAsync(TestDatabase db, Studio studio, Domain.People.Student student, params string[] reeds) => WorkedAsync(db, studio, student, sent: true, reeds);

    private static async Task<Batch> WorkedAsync(TestDatabase db, Studio studio, Domain.People.Student student, bool sent, string[] reeds)
    {
        var batch = await studio.BatchAsync(student, reeds.Length, Spring.AddHours(Interlocked.Increment(ref _hours)));
        var bench = new BenchBook(db, TimeProvider.System);
        foreach (var (said, reed) in reeds.Zip(batch.Reeds))
        {
            BenchEntry entry = said == "+" ? Studio.Found("tip-thin") : Studio.Missing("tip-thin");
            Studio.Value(await bench.RecordAsync(Studio.Ada, reed.Id, entry, Studio.Operation(), Ct));
        }

        if (sent)
        {
            await using var context = db.CreateDbContext();
            await context.Set<Batch>().Where(row => row.Id == batch.Id).ExecuteUpdateAsync(row => row.SetProperty(one => one.LetterSentAt, Spring.AddDays(5)), Ct);
        }

        return batch;
    }

    private static async Task<Domain.People.Student> StudentOfAsync(TestDatabase db, Batch batch)
    {
        await using var context = db.CreateDbContext();
        return await context.Set<Domain.People.Student>().AsNoTracking().SingleAsync(row => row.Id == batch.Student, Ct);
    }
}
