using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Diagnosis;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;
using BenchStudio = ReedClinic.Data.Tests.Bench.Studio;

namespace ReedClinic.Data.Tests.Diagnosis;

/// <summary>What teachers said of causes is counted when there is something to count, by one at a time, and in the order in which it was said.</summary>
public sealed class CountingTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly CauseId Corners = new("tip-corners-thick");
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(60);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Only_a_word_on_a_cause_said_or_taken_back_is_worth_counting(ClinicEngine engine)
    {
        var scene = await OpenAsync(engine);
        var before = scene.Records.Opened;

        await scene.SayAsync(Clip());
        await scene.UndoAsync();
        Assert.False(await scene.Here.CatchUpAsync(Ct));
        Assert.Equal(before, scene.Records.Opened);

        await scene.SayAsync(Word(CauseAnswer.Confirmed));
        Assert.True(await scene.Here.CatchUpAsync(Ct));
        await scene.UndoAsync();
        Assert.True(await scene.Here.CatchUpAsync(Ct));
        Assert.Equal(before + 2, scene.Records.Opened);
        scene.Here.Dispose();
    }

    [Theory, OnBothEngines]
    public async Task Who_finds_somebody_counting_goes_on_and_what_is_said_meanwhile_is_counted_by_the_one_who_counts(ClinicEngine engine)
    {
        var scene = await OpenAsync(engine);
        await scene.SayAsync(Word(CauseAnswer.Confirmed));
        scene.Records.Hold();
        var first = Task.Run(() => scene.Here.CatchUpAsync(Ct), Ct);
        await scene.Records.Held.WaitAsync(Long, Ct); // it has counted one word, and hasn't put it down yet
        var opened = scene.Records.Opened;

        await scene.SayAsync(Word(CauseAnswer.Dismissed), second: true);
        foreach (var other in Enumerable.Range(0, 5).Select(_ => scene.Here.CatchUpAsync(Ct)).ToList())
        {
            Assert.True(other.IsCompleted);
            Assert.False(await other);
        }

        Assert.Equal(opened, scene.Records.Opened);
        scene.Records.GoOn();
        Assert.True(await first.WaitAsync(Long, Ct));
        Assert.Equal("1 confirmed of 2 here", scene.Said);
        scene.Here.Dispose();
    }

    [Fact]
    public async Task Counts_that_are_finished_late_never_take_the_place_of_newer_ones()
    {
        var scene = await OpenAsync(ClinicEngine.Sqlite);
        await scene.SayAsync(Word(CauseAnswer.Confirmed));
        scene.Records.Hold();
        var first = Task.Run(() => scene.Here.CatchUpAsync(Ct), Ct);
        await scene.Records.Held.WaitAsync(Long, Ct);

        await scene.SayAsync(Word(CauseAnswer.Dismissed), second: true);
        var page = new ReasoningBook(scene.Database, scene.Clock, scene.Here, new BenchNews()).FindAsync(BenchStudio.Ada, scene.First, Ct);
        scene.Records.GoOn(andStopNext: true);

        // Either the first has ended, because the page counts after it; or it wrote what it had and begins to count once more.
        await Task.WhenAny(first, scene.Records.Stopped).WaitAsync(Long, Ct);
        Assert.Equal("1 confirmed of 2 here", (await page.WaitAsync(Long, Ct))!.Learned.Counts.Find(Corners)!.Value.Words);
        Assert.Equal("1 confirmed of 2 here", scene.Said);
        scene.Here.Dispose();
    }

    private static CauseJudged Word(CauseAnswer answer) => BenchStudio.Value(CauseJudged.Of(Corners, answer));

    private static Adjustment Clip() => BenchStudio.Value(Adjustment.Of(new AdjustmentKindId("clip"), new Place(Zone.TipEdge)));

    private async Task<Scene> OpenAsync(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var studio = new BenchStudio(db);
        var (clock, news, records) = (new FakeTimeProvider(TimeProvider.System.GetUtcNow()), new BenchNews(), new Records(db));
        var scene = new Scene(db, clock, new BenchBook(db, clock, news), records, new LearnedHere(records, clock, news), (await studio.ReedAsync()).Id, (await studio.ReedAsync()).Id);
        await scene.Here.ReadAsync(Ct);
        return scene;
    }

    private sealed record Scene(TestDatabase Database, FakeTimeProvider Clock, BenchBook Bench, Records Records, LearnedHere Here, ReedId First, ReedId Second)
    {
        public string? Said => Here.AtHand!.Counts.Find(Corners)?.Words;

        public async Task SayAsync(BenchEntry entry, bool second = false) =>
            BenchStudio.Value(await Bench.RecordAsync(BenchStudio.Ada, second ? Second : First, entry, BenchStudio.Operation(), Ct));

        public async Task UndoAsync() => BenchStudio.Value(await Bench.UndoAsync(BenchStudio.Ada, First, null, BenchStudio.Operation(), Ct));
    }

    /// <summary>Counts how often records are opened, and holds whoever has counted before they read the catalogue, once, and stops whoever counts next if asked.</summary>
    private sealed class Records(TestDatabase database) : DbCommandInterceptor, IDbContextFactory<ClinicDb>
    {
        private readonly TaskCompletionSource _held = new();
        private readonly TaskCompletionSource _goOn = new();
        private readonly TaskCompletionSource _stopped = new();
        private int _opened;
        private int _holds;
        private int _stops;

        public int Opened => Volatile.Read(ref _opened);

        public Task Held => _held.Task;

        public void Hold() => Volatile.Write(ref _holds, 1);

        public Task Stopped => _stopped.Task;

        public void GoOn(bool andStopNext = false)
        {
            Volatile.Write(ref _stops, andStopNext ? 1 : 0);
            _goOn.SetResult();
        }

        public ClinicDb CreateDbContext()
        {
            Interlocked.Increment(ref _opened);
            return database.Engine == ClinicEngine.Postgres
                ? new PostgresClinicDb(new DbContextOptionsBuilder<PostgresClinicDb>().UseNpgsql(database.Connection).AddInterceptors(this).Options)
                : new SqliteClinicDb(new DbContextOptionsBuilder<SqliteClinicDb>().UseSqlite(database.Connection).AddInterceptors(this).Options);
        }

        public override async ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
            DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
        {
            if (!command.CommandText.Contains("\"StudioEntries\"", StringComparison.Ordinal))
            {
                return result;
            }

            if (Interlocked.Exchange(ref _holds, 0) == 1)
            {
                _held.SetResult();
                await _goOn.Task.WaitAsync(cancellationToken);
            }
            else if (Interlocked.Exchange(ref _stops, 0) == 1)
            {
                _stopped.SetResult();
                await Task.Delay(Timeout.Infinite, Ct);
            }

            return result;
        }
    }
}
