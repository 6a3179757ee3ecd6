using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using Studio = ReedClinic.Data.Tests.Bench.Studio;

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
    public async Task What_the_studio_added_is_held_against_the_others_as_everything_else_is(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var studio = new Studio(db);
        var entry = Studio.Value(await new CatalogueBook(db, TimeProvider.System).AddAsync(
            new Actor(new AccountId(Studio.NewGuid()), null, IsTeacher: false, IsOwner: true),
            new StudioEntryWords(StudioEntryKind.Fault, "gapped shoulders", "Light shows there.") { Zone = Domain.Reeds.Zone.HeartSides, SeenBy = new TestCardId("look-plaque"), Steps = [new("close-press")] },
            Studio.Operation(), Ct));
        Batch? mine = null;
        foreach (var name in new[] { "Ines", "Bram", "Cato", "Dora", "Emil" })
        {
            var batch = await WorkedAsync(db, studio, name, "-", "-", "-");
            mine ??= batch;
            foreach (var reed in batch.Reeds)
            {
                BenchEntry said = name == "Ines" ? Studio.Found(entry.Key) : Studio.Missing(entry.Key);
                Studio.Value(await new BenchBook(db, TimeProvider.System).RecordAsync(Studio.Ada, reed.Id, said, Studio.Operation(), Ct));
            }
        }

        await new StudioRatesCaretaker(db, TimeProvider.System).RollUpAsync(Ct);
        var view = (await new CommonThreadBook(db, TimeProvider.System).FindAsync(Studio.Ada, mine!.Code, Ct))!;

        Assert.Equal(4, view.Sheets.Studio.Rates[entry.Key].Students);
        Assert.InRange(view.Report.Of(entry.Key)!.AboveStudio!.Value, 0.9, 1);
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
    public async Task A_studio_of_three_compares_nobody_and_a_batch_before_another_is_held_against_the_others_alone(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var studio = new Studio(db);
        var ines = await studio.StudentAsync("Ines");
        var first = await WorkedAsync(db, studio, ines, "+", "+");
        await WorkedAsync(db, studio, ines, "+", "-");
        await WorkedAsync(db, studio, "Bram", "-", "+");
        await WorkedAsync(db, studio, "Cato", "-", "-");
        var caretaker = new StudioRatesCaretaker(db, TimeProvider.System);
        var book = new CommonThreadBook(db, TimeProvider.System);

        await caretaker.RollUpAsync(Ct);
        Assert.Empty((await book.FindAsync(Studio.Ada, first.Code, Ct))!.Sheets.Studio.Rates);

        await WorkedAsync(db, studio, "Dora", "-", "-", "+");
        await WorkedAsync(db, studio, "Emil", "-", "-", "-");
        await caretaker.RollUpAsync(Ct);
        Assert.Equal(4, (await book.FindAsync(Studio.Ada, first.Code, Ct))!.Sheets.Studio.Rates["tip-thin"].Students);
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

    [Theory, OnBothEngines]
    public async Task When_somebody_is_erased_no_rate_stays_that_may_tell_of_them_and_all_are_counted_anew(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var studio = new Studio(db);
        var batch = await WorkedAsync(db, studio, "Ines", "+", "+");
        foreach (var name in new[] { "Bram", "Cato", "Dora" })
        {
            await WorkedAsync(db, studio, name, "-", "-", "-");
        }

        await new StudioRatesCaretaker(db, TimeProvider.System).RollUpAsync(Ct);
        await using var context = db.CreateDbContext();
        Assert.Contains(await context.Set<StudioRateRow>().Select(row => row.Key).ToListAsync(Ct), key => key == "tip-thin:2:2:4");
        await context.Set<Batch>().Where(row => row.Id == batch.Id).ExecuteUpdateAsync(row => row.SetProperty(one => one.Stage, Stage.Home), Ct);
        await using var scope = db.Services.CreateAsyncScope();
        var owner = new Actor(new AccountId(Studio.NewGuid()), null, IsTeacher: false, IsOwner: true) { IsFresh = true };
        Assert.IsType<Outcome<ErasureView>.Done>(await scope.ServiceProvider.GetRequiredService<PrivacyBook>().EraseAsync(owner, batch.Student, "erase", Studio.Operation(), Ct));

        Assert.Empty(await context.Set<StudioRateRow>().ToListAsync(Ct));
        Assert.NotNull(await new JobBoard(db, TimeProvider.System).ClaimAsync(JobKind.Rates, Ct));
    }

    private static Task<Batch> WorkedAsync(TestDatabase db, Studio studio, string name, params string[] reeds) => WorkedAsync(db, studio, name, sent: true, reeds);

    private static async Task<Batch> WorkedAsync(TestDatabase db, Studio studio, string name, bool sent, params string[] reeds) =>
        await WorkedAsync(db, studio, await studio.StudentAsync(name), sent, reeds);

    private static Task<Batch> WorkedAsync(TestDatabase db, Studio studio, Student student, params string[] reeds) => WorkedAsync(db, studio, student, sent: true, reeds);

    private static async Task<Batch> WorkedAsync(TestDatabase db, Studio studio, Student student, bool sent, string[] reeds)
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

    private static async Task<Student> StudentOfAsync(TestDatabase db, Batch batch)
    {
        await using var context = db.CreateDbContext();
        return await context.Set<Student>().AsNoTracking().SingleAsync(row => row.Id == batch.Student, Ct);
    }
}
