using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Tests.Bench;

public sealed class BreathTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task What_is_said_in_one_breath_stands_in_order_and_once_however_often_it_is_sent(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var operation = Studio.Operation();
        BenchEntry[] said = [Clip, Corners, Studio.Note("better")];

        var all = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => book.SayAsync(Studio.Ada, reed, said, operation, Ct))));

        var log = (await book.FindAsync(Studio.Ada, reed, Ct))!.Log;
        Assert.Equal([EntryKind.Adjustment, EntryKind.Adjustment, EntryKind.Note], log.History.Select(line => line.Entry.Kind));
        Assert.Equal([1, 2, 3], log.History.Select(line => line.Entry.Sequence));
        Assert.All(all, outcome => Assert.Equal(log.Facts.Select(fact => fact.Root), Studio.Value(outcome).Select(fact => fact.Root)));
    }

    [Theory, OnBothEngines]
    public async Task Each_of_them_keeps_the_words_it_came_from_and_a_better_wording_its_own(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var longest = new string('é', BenchEntry.LongestSaid);

        var facts = Studio.Value(await book.SayAsync(Studio.Ada, reed, [Clip.AsSaid("half a hair"), Corners.AsSaid(longest), Studio.Note("better")], Studio.Operation(), Ct));
        await book.CorrectAsync(Studio.Ada, reed, facts[0].Tail, Clip.AsSaid("no, a whole one"), Studio.Operation(), Ct);

        var log = (await book.FindAsync(Studio.Ada, reed, Ct))!.Log;
        Assert.Equal(["half a hair", longest, null, "no, a whole one"], log.History.Select(line => line.Entry.Said));
        Assert.Equal("no, a whole one", log.Facts[0].Now!.Said);
        Assert.Null(Clip.AsSaid(longest + "é").Said);
    }

    [Theory, OnBothEngines]
    public async Task What_was_said_in_one_breath_is_taken_back_together_once_or_not_at_all(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var facts = Studio.Value(await book.SayAsync(Studio.Ada, reed, [Clip, Corners], Studio.Operation(), Ct));
        EntryId[] seen = [facts[1].Tail, facts[0].Tail];
        var operation = Studio.Operation();

        Assert.IsType<Outcome<IReadOnlyList<BenchFact>>.Conflict>(await book.UndoTogetherAsync(Studio.Ada, reed, [facts[0].Tail, facts[1].Tail], Studio.Operation(), Ct));
        Assert.IsType<Outcome<IReadOnlyList<BenchFact>>.NotFound>(await book.UndoTogetherAsync(Studio.Ben, reed, seen, Studio.Operation(), Ct));
        var gone = Studio.Value(await book.UndoTogetherAsync(Studio.Ada, reed, seen, operation, Ct));
        var again = Studio.Value(await book.UndoTogetherAsync(Studio.Ada, reed, seen, operation, Ct));

        var log = (await book.FindAsync(Studio.Ada, reed, Ct))!.Log;
        Assert.Equal([FactState.TakenBack, FactState.TakenBack], log.Facts.Select(fact => fact.State));
        Assert.Equal(4, log.History.Count);
        Assert.Equal(gone.Select(fact => fact.Root), again.Select(fact => fact.Root));
    }

    [Theory, OnBothEngines]
    public async Task When_one_of_them_cannot_stand_none_does(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var lost = Studio.Value(FindingEnded.Of(new EntryId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow())), FindingEnding.Gone));

        var outcome = await book.SayAsync(Studio.Ada, reed, [Clip, lost], Studio.Operation(), Ct);

        Assert.IsType<Outcome<IReadOnlyList<BenchFact>>.Refused>(outcome);
        Assert.Empty((await book.FindAsync(Studio.Ada, reed, Ct))!.Log.History);
    }

    [Theory, OnBothEngines]
    public async Task Advice_that_was_shown_is_set_aside_with_what_it_was_told_for_and_only_then(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var lost = Studio.Value(FindingEnded.Of(new EntryId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow())), FindingEnding.Gone));
        AdviceId[] heeded = [new("clip-unheard/start"), new("verdict-without-work/start")];
        Assert.IsType<Outcome<IReadOnlyList<BenchFact>>.Refused>(await book.SayAsync(Studio.Ada, reed, [Clip, lost], heeded, Studio.Operation(), Ct));
        Assert.Empty((await book.FindAsync(Studio.Ada, reed, Ct))!.Log.History);

        var operation = Studio.Operation();
        for (var times = 0; times < 2; times++)
        {
            var facts = Studio.Value(await book.SayAsync(Studio.Ada, reed, [Clip, Corners], heeded, operation, Ct));
            Assert.Equal([EntryKind.Adjustment, EntryKind.Adjustment], facts.Select(fact => fact.Kind));
        }

        await book.RecordAsync(Studio.Ada, reed, Clip, heeded[..1], Studio.Operation(), Ct);
        var log = (await book.FindAsync(Studio.Ada, reed, Ct))!.Log;
        Assert.Equal(
            [EntryKind.AdviceSetAside, EntryKind.AdviceSetAside, EntryKind.Adjustment, EntryKind.Adjustment, EntryKind.Adjustment],
            log.History.Select(line => line.Entry.Kind));
        Assert.Equal(heeded, log.Live<AdviceSetAside>().Select(aside => aside.Now.AdviceId));
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() =>
            book.SayAsync(Studio.Ada, reed, [.. Enumerable.Repeat(Clip, OperationId.MostParts - 1)], heeded[..1], Studio.Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_length_that_no_reed_has_keeps_out_what_was_said_before_it_and_too_much_is_not_begun(ClinicEngine engine)
    {
        var (book, reed, db) = await BenchAsync(engine);
        await using (var rows = db.CreateDbContext())
        {
            await rows.Set<Batch>().Where(batch => batch.Reeds.Any(row => row.Id == reed)).ExecuteUpdateAsync(batch => batch.SetProperty(row => row.Instrument, Instrument.CorAnglais), Ct);
        }

        var outcome = await book.SayAsync(Studio.Ada, reed, [Clip, Studio.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: 70.5m))], Studio.Operation(), Ct);

        Assert.Equal("Millimetres", Assert.Single(Assert.IsType<Outcome<IReadOnlyList<BenchFact>>.Refused>(outcome).Problems).Field);
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() =>
            book.SayAsync(Studio.Ada, reed, [.. Enumerable.Repeat(Clip, OperationId.MostParts + 1)], Studio.Operation(), Ct));
        Assert.Empty((await book.FindAsync(Studio.Ada, reed, Ct))!.Log.History);
    }

    [Theory, OnBothEngines]
    public async Task Whoever_has_the_reed_open_is_told_once_it_is_saved_and_not_after_leaving(ClinicEngine engine)
    {
        var news = new BenchNews();
        var (book, reed, _) = await BenchAsync(engine, news);
        var told = 0;
        var listening = news.Listen(reed, () => told++);
        using var other = news.Listen(new ReedId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow())), () => Assert.Fail("This is another reed."));

        await book.SayAsync(Studio.Ada, reed, [Clip, Corners], Studio.Operation(), Ct);
        Assert.Equal(1, told);
        await book.SayAsync(Studio.Ada with { IsTeacher = false, IsOwner = false }, reed, [Clip], Studio.Operation(), Ct);
        Assert.Equal(1, told);
        listening.Dispose();
        listening.Dispose();
        await book.RecordAsync(Studio.Ada, reed, Studio.Note("alone"), Studio.Operation(), Ct);

        Assert.Equal(1, told);
    }

    private static BenchEntry Clip => Studio.Value(Adjustment.Of(new AdjustmentKindId("clip-hair"), new Place(Zone.TipEdge), new Amount(Millimetres: 0.2m)));

    private static BenchEntry Corners => Studio.Value(Adjustment.Of(new AdjustmentKindId("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));

    private async Task<(BenchBook Book, ReedId Reed, TestDatabase Db)> BenchAsync(ClinicEngine engine, BenchNews? news = null)
    {
        var db = await databases.OpenAsync(engine);
        return (new BenchBook(db, TimeProvider.System, news), (await new Studio(db).ReedAsync()).Id, db);
    }
}
