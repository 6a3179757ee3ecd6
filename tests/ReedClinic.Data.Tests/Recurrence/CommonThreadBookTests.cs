using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Tests.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Tests.Recurrence;

public sealed class CommonThreadBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly FindingKindId Corners = new("tip-corners-thick");
    private static readonly DateTimeOffset Spring = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task The_sheet_counts_this_batch_and_the_reeds_of_the_same_student_before_it(ClinicEngine engine)
    {
        var (book, bench, studio) = await OpenAsync(engine);
        var ines = await studio.StudentAsync("Ines");
        var first = await studio.BatchAsync(ines, reeds: 2, Spring);
        var second = await studio.BatchAsync(ines, reeds: 3, Spring.AddMonths(3));
        var third = await studio.BatchAsync(ines, reeds: 1, Spring.AddMonths(6));
        var others = await studio.BatchAsync(await studio.StudentAsync("Bram"), reeds: 1, Spring);
        await SayAsync(bench, first, 0, Studio.Found("tip-corners-thick"));
        await SayAsync(bench, first, 1, Studio.Missing("tip-corners-thick"));
        await SayAsync(bench, second, 0, Studio.Found("tip-corners-thick"));
        await SayAsync(bench, second, 1, Studio.Found("tip-corners-thick"), Studio.Found("spine-intact", FindingCharacter.Strength));
        await SayAsync(bench, second, 2, Studio.Found("tip-corners-thick", arose: Arose.CausedByTheWork));
        await SayAsync(bench, third, 0, Studio.Found("tip-corners-thick"));
        await SayAsync(bench, others, 0, Studio.Found("tip-corners-thick"));

        var view = (await book.FindAsync(Studio.Ada, second.Code, Ct))!;

        var lesson = Assert.Single(view.Lessons);
        Assert.Equal(Corners, lesson.Kind);
        Assert.Equal(new Tally(2, 2, 3), lesson.Recurring.InBatch.Tally);
        Assert.Equal(new Tally(1, 2, 2), lesson.Recurring.Before.Tally);
        Assert.Equal("In both reeds looked at for it (three in the batch), and in one of the two looked at for it before.", lesson.Recurring.Evidence);
        Assert.Equal("Tip corners too thick: in both reeds looked at for it (three in the batch).", lesson.Sentence);
        Assert.Equal("spine-intact", Assert.Single(view.Strengths).Kind.Value);
        Assert.Equal(new Tally(1, 2, 2), view.Before(Corners, FindingCharacter.Fault));
        Assert.Null(view.Sheets.AsOf);
        Assert.Null(view.Chosen);
    }

    [Theory, OnBothEngines]
    public async Task A_choice_is_kept_can_be_changed_and_a_repeated_form_changes_nothing(ClinicEngine engine)
    {
        var (book, _, studio) = await OpenAsync(engine);
        var batch = await studio.BatchAsync(await studio.StudentAsync("Ines"));
        var operation = Studio.Operation();
        var choice = new ThreadChoice(Corners, "Thin the corners first.", null, "The spine is kept.", "the knife is too flat");

        var first = Studio.Value(await book.ChooseAsync(Studio.Ada, batch.Code, choice, Guid.Empty, operation, Ct));
        var again = Studio.Value(await book.ChooseAsync(Studio.Ada, batch.Code, choice, Guid.Empty, operation, Ct));
        var changed = Studio.Value(await book.ChooseAsync(
            Studio.Ben, batch.Code, choice with { HabitWords = null }, first.Version, Studio.Operation(), Ct));

        Assert.Equal(first.Version, again.Version);
        Assert.NotEqual(first.Version, changed.Version);
        Assert.Equal("Perhaps the knife is too flat.", first.HabitSentence);
        Assert.Null(changed.HabitSentence);
        var view = (await book.FindAsync(Studio.Ada, batch.Code, Ct))!;
        Assert.Equal((Corners, "The spine is kept.", changed.Version), (view.Chosen!.LessonKind, view.Chosen.StrengthWords, view.Version));
        Assert.Equal(Studio.Ben.Account, view.Chosen.ChosenBy);
    }

    [Theory, OnBothEngines]
    public async Task A_form_opened_before_somebody_else_chose_is_a_conflict_that_shows_their_choice(ClinicEngine engine)
    {
        var (book, _, studio) = await OpenAsync(engine);
        var batch = await studio.BatchAsync(await studio.StudentAsync("Ines"));
        var theirs = Studio.Value(await book.ChooseAsync(
            Studio.Ben, batch.Code, new ThreadChoice(LessonWords: "theirs"), Guid.Empty, Studio.Operation(), Ct));

        foreach (var version in new[] { Guid.Empty, Studio.NewGuid() })
        {
            var outcome = await book.ChooseAsync(
                Studio.Ada, batch.Code, new ThreadChoice(LessonWords: "mine"), version, Studio.Operation(), Ct);
            Assert.Equal("theirs", Assert.IsType<Outcome<CommonThread>.Conflict>(outcome).Theirs.LessonWords);
        }

        Assert.Equal(theirs.Version, (await book.FindAsync(Studio.Ada, batch.Code, Ct))!.Version);
    }

    [Theory, OnBothEngines]
    public async Task Only_those_who_work_here_see_or_choose_and_nonsense_is_refused(ClinicEngine engine)
    {
        var (book, _, studio) = await OpenAsync(engine);
        var batch = await studio.BatchAsync(await studio.StudentAsync("Ines"));
        var choice = new ThreadChoice(LessonWords: "x");

        Assert.Null(await book.FindAsync(Studio.Stranger, batch.Code, Ct));
        Assert.IsType<Outcome<CommonThread>.NotFound>(
            await book.ChooseAsync(Studio.Stranger, batch.Code, choice, Guid.Empty, Studio.Operation(), Ct));
        Assert.IsType<Outcome<CommonThread>.NotFound>(
            await book.ChooseAsync(Studio.Ada, BatchCode.FromNumber(5), choice, Guid.Empty, Studio.Operation(), Ct));
        Assert.IsType<Outcome<CommonThread>.Refused>(await book.ChooseAsync(
            Studio.Ada, batch.Code, new ThreadChoice(new FindingKindId("nonsense")), Guid.Empty, Studio.Operation(), Ct));
        Assert.Null((await book.FindAsync(Studio.Ada, batch.Code, Ct))!.Chosen);
    }

    [Theory, OnBothEngines]
    public async Task The_next_batch_opens_at_the_bench_with_what_was_said_last_time(ClinicEngine engine)
    {
        var (book, bench, studio) = await OpenAsync(engine);
        var ines = await studio.StudentAsync("Ines");
        var first = await studio.BatchAsync(ines, at: Spring);
        var second = await studio.BatchAsync(ines, at: Spring.AddMonths(3));
        await book.ChooseAsync(Studio.Ada, first.Code, new ThreadChoice(LessonWords: "corners"), Guid.Empty, Studio.Operation(), Ct);

        Assert.Equal("corners", (await bench.FindAsync(Studio.Ada, second.Reeds[0].Id, Ct))!.LastTime!.LessonWords);
        Assert.Null((await bench.FindAsync(Studio.Ada, first.Reeds[0].Id, Ct))!.LastTime);
    }

    [Theory, OnBothEngines]
    public async Task A_sheet_that_was_spoiled_is_put_right_by_a_rebuild(ClinicEngine engine)
    {
        var (_, bench, studio) = await OpenAsync(engine);
        var db = await databases.OpenAsync(engine);
        var batch = await studio.BatchAsync(await studio.StudentAsync("Ines"), reeds: 2);
        await SayAsync(bench, batch, 0, Studio.Found("tip-corners-thick"), Studio.Missing("tip-long"));
        await SayAsync(bench, batch, 1, Studio.Found("tip-corners-thick"));
        var reeds = batch.Reeds.Select(reed => reed.Id).ToList();
        await using (var spoiling = db.CreateDbContext())
        {
            var rows = spoiling.Set<SheetRow>().Where(row => reeds.Contains(row.ReedId));
            await rows.Where(row => row.Found).ExecuteUpdateAsync(row => row.SetProperty(r => r.Found, false), Ct);
            await rows.Where(row => row.FindingKind == new FindingKindId("tip-long")).ExecuteDeleteAsync(Ct);
        }

        await using (var mending = db.CreateDbContext())
        {
            await FindingSheetRows.RebuildAsync(mending, Ct);
            await mending.SaveChangesAsync(Ct);
        }

        await using var looking = db.CreateDbContext();
        var mended = await looking.Set<SheetRow>().Where(row => reeds.Contains(row.ReedId)).ToListAsync(Ct);
        Assert.Equal(3, mended.Count);
        Assert.Equal(2, mended.Count(row => row.Found && row.Character == FindingCharacter.Fault));
    }

    private static async Task SayAsync(BenchBook bench, Batch batch, int reed, params BenchEntry[] entries)
    {
        foreach (var entry in entries)
        {
            Studio.Value(await bench.RecordAsync(Studio.Ada, batch.Reeds[reed].Id, entry, Studio.Operation(), Ct));
        }
    }

    private async Task<(CommonThreadBook Book, BenchBook Bench, Studio Studio)> OpenAsync(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        return (new CommonThreadBook(db, TimeProvider.System), new BenchBook(db, TimeProvider.System), new Studio(db));
    }
}
