using System.Diagnostics;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Tests.Bench;

public sealed class HabitsAndStripTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Habits_are_ones_own_tests_and_adjustments_that_stand_newest_first(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var (book, reed) = (new BenchBook(db, TimeProvider.System), (await new Studio(db).ReedAsync()).Id);
        var (mine, theirs) = (Teacher(), Teacher());
        await Say(book, mine, reed, Crow());
        await Say(book, theirs, reed, Work("blend", null));
        var wrong = await Say(book, mine, reed, Work("clip", 0.3m));
        Studio.Value(await book.CorrectAsync(mine, reed, wrong.Tail, Work("clip", 0.2m), Studio.Operation(), Ct));
        await Say(book, mine, reed, Studio.Note("no habit"));
        await Say(book, mine, reed, Work("thin-rails", null));
        Studio.Value(await book.UndoAsync(mine, reed, null, Studio.Operation(), Ct));

        var habits = (await book.HabitsAsync(mine, Ct))!.Habits;

        Assert.Equal(
            [("clip", 0.2m, (TestKind?)null), (null, null, TestKind.Crow)],
            habits.Select(habit => (habit.Work?.Kind.Value, habit.Work?.Amount.Millimetres, habit.Test)));
        Assert.Null(await book.HabitsAsync(Studio.Stranger, Ct));
        Assert.Empty((await book.HabitsAsync(Teacher(), Ct))!.Habits);
    }

    [Theory, OnBothEngines]
    public async Task The_last_500_are_read_and_no_more(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var (book, reed, teacher) = (new BenchBook(db, TimeProvider.System), (await new Studio(db).ReedAsync()).Id, Teacher());
        var start = TimeProvider.System.GetUtcNow();
        await using (var rows = db.CreateDbContext())
        {
            rows.AddRange(Enumerable.Range(1, HabitsView.Most + 5).Select(number => (number <= 5 ? (BenchEntry)Crow() : Work("blend", null)).StampedWith(
                new EntryStamp(new EntryId(Studio.NewGuid()), reed, number, Studio.Operation(), start.AddSeconds(number), teacher.Account))));
            await rows.SaveChangesAsync(Ct);
        }

        var habits = (await book.HabitsAsync(teacher, Ct))!.Habits;

        Assert.Equal(HabitsView.Most, habits.Count);
        Assert.DoesNotContain(habits, habit => habit.Test is not null);
    }

    [Theory, OnBothEngines]
    public async Task The_strip_tells_each_reeds_state_by_number_and_reads_twice_however_many_there_are(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var (book, studio) = (new BenchBook(db, TimeProvider.System), new Studio(db));
        var batch = await studio.BatchAsync(await studio.StudentAsync("Ines"), reeds: 6);
        BenchEntry[][] said =
        [
            [],
            [Crow()],
            [Work("blend", null)],
            [Work("blend", null), Studio.Value(Parked.Of())],
            [Work("blend", null), Studio.Value(Stopped.Of())],
            [Studio.Value(Verdict.Of(VerdictKind.Improved))],
        ];
        for (var index = 0; index < said.Length; index++)
        {
            foreach (var entry in said[index])
            {
                await Say(book, Studio.Ada, batch.Reeds[index].Id, entry);
            }
        }

        using var commands = new CommandCount();
        var strip = (await book.StripAsync(Studio.Ada, batch.Id, Ct))!;

        Assert.Equal(2, commands.Count);
        Assert.Equal(Enum.GetValues<ReedState>(), strip.Reeds.Select(reed => reed.State));
        Assert.Equal(batch.Reeds.Select(reed => (reed.Id, reed.Number, reed.HowToRecognise)), strip.Reeds.Select(reed => (reed.Id, reed.Number, reed.HowToRecognise)));
        Assert.Null(await book.StripAsync(Studio.Stranger, batch.Id, Ct));
        Assert.Null(await book.StripAsync(Studio.Ada, new BatchId(Studio.NewGuid()), Ct));
    }

    private static Actor Teacher() => new(new AccountId(Studio.NewGuid()), null, IsTeacher: true, IsOwner: false);

    private static Domain.Bench.Test Crow() => Studio.Value(Domain.Bench.Test.Of(TestKind.Crow, 0));

    private static Adjustment Work(string kind, decimal? mm) =>
        Studio.Value(Adjustment.Of(new AdjustmentKindId(kind), new Place(Zone.TipEdge), new Amount(Millimetres: mm)));

    private static async Task<BenchFact> Say(BenchBook book, Actor teacher, ReedId reed, BenchEntry entry) =>
        Studio.Value(await book.RecordAsync(teacher, reed, entry, Studio.Operation(), Ct));

    /// <summary>Counts what this test sends to the database, and not what others send at the same time.</summary>
    private sealed class CommandCount : IObserver<DiagnosticListener>, IObserver<KeyValuePair<string, object?>>, IDisposable
    {
        private static readonly AsyncLocal<CommandCount?> _current = new();
        private readonly List<IDisposable> _subscriptions = [];
        private int _count;

        public CommandCount()
        {
            _current.Value = this;
            _subscriptions.Add(DiagnosticListener.AllListeners.Subscribe(this));
        }

        public int Count => _count;

        public void OnNext(DiagnosticListener value)
        {
            if (value.Name == "Microsoft.EntityFrameworkCore")
            {
                _subscriptions.Add(value.Subscribe(this));
            }
        }

        public void OnNext(KeyValuePair<string, object?> value)
        {
            if (_current.Value == this && value.Key == "Microsoft.EntityFrameworkCore.Database.Command.CommandExecuted")
            {
                Interlocked.Increment(ref _count);
            }
        }

        public void OnCompleted()
        {
        }

        public void OnError(Exception error)
        {
        }

        public void Dispose()
        {
            _current.Value = null;
            _subscriptions.ForEach(subscription => subscription.Dispose());
        }
    }
}
