using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Tests.Faults;

/// <summary>
/// Something goes wrong at the first, second, third … statement or commit of everything that people do, until a whole way is
/// gone without. After each: what stands is as before or as done, never between; what was told to be done stands; whoever
/// presses again has it once; and no file lies about. <c>tests/faults.sh</c> takes every step, the quick suite some.
/// </summary>
public sealed class EveryStepTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string StrideGivenBy = "REEDCLINIC_STEP_STRIDE";
    private const string LogGivenBy = "REEDCLINIC_FAULT_LOG";
    private const int QuickStride = 6;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static TheoryData<string, ClinicEngine, Fault> Ways
    {
        get
        {
            var ways = new TheoryData<string, ClinicEngine, Fault>();
            foreach (var way in new[] { nameof(WayOfAParcel), nameof(WayOfPeople) })
            {
                foreach (var fault in Enum.GetValues<Fault>())
                {
                    ways.Add(way, ClinicEngine.Postgres, fault);
                    if (fault is Fault.Broken or Fault.BrokenAnswer)
                    {
                        ways.Add(way, ClinicEngine.Sqlite, fault); // its file isn't away for a moment
                    }
                }
            }

            return ways;
        }
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task A_fault_at_any_step_leaves_all_or_nothing_and_pressing_again_does_it_once(string way, ClinicEngine engine, Fault fault)
    {
        var expected = await UndisturbedAsync(way, engine);
        var stride = int.TryParse(Environment.GetEnvironmentVariable(StrideGivenBy), CultureInfo.InvariantCulture, out var given) ? given : QuickStride;
        var (step, faults) = (1, 0);
        List<string> wrong = [];
        for (var disturbed = true; disturbed; step += stride)
        {
            var at = new FaultAt();
            var db = await databases.FreshAsync(engine, at);
            var pass = new Pass(db, at, Make(way, db), expected, step, fault);
            await pass.RunAsync();
            disturbed = pass.WasReached;
            faults += pass.Faults;
            wrong.AddRange(pass.Wrong);
            await databases.DropAsync(db);
        }

        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, string.Create(CultureInfo.InvariantCulture, $"step way={way} engine={engine} fault={fault} stride={stride} most-steps={step - stride} faults={faults} wrong={wrong.Count}\n"), Ct);
        }

        Assert.True(faults > expected.Count, $"Only {faults} faults.");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {faults}:\n{string.Join('\n', wrong.Take(40))}");
    }

    private static WholeWay Make(string way, TestDatabase db) => way == nameof(WayOfAParcel) ? new WayOfAParcel(db) : new WayOfPeople(db);

    // What stands before the first thing, and after each.
    private async Task<List<IReadOnlyList<string>>> UndisturbedAsync(string way, ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var whole = Make(way, db);
        await whole.PrepareAsync();
        List<IReadOnlyList<string>> stands = [await Stored.ReadAsync(db, Ct)];
        foreach (var deed in whole.Deeds)
        {
            await deed.Look();
            Assert.True(await deed.Do(), $"“{deed.Name}” wasn't done although nothing went wrong.");
            stands.Add(await Stored.ReadAsync(db, Ct));
        }

        await databases.DropAsync(db);
        return stands;
    }

    // One way from its beginning to its end, in which everything that is done goes wrong once at the same step.
    private sealed class Pass(TestDatabase db, FaultAt at, WholeWay way, List<IReadOnlyList<string>> expected, int step, Fault fault)
    {
        public int Faults { get; private set; }

        public bool WasReached { get; private set; }

        public List<string> Wrong { get; } = [];

        public async Task RunAsync()
        {
            await way.PrepareAsync();
            for (var number = 0; number < way.Deeds.Count; number++)
            {
                await way.Deeds[number].Look();
                await DoAsync(way.Deeds[number], expected[number], expected[number + 1]);
            }

            await SweptAsync();
        }

        private async Task DoAsync(Deed deed, IReadOnlyList<string> before, IReadOnlyList<string> done)
        {
            var (told, trouble) = await TryAsync(deed);
            var stands = await Stored.ReadAsync(db, Ct);
            var isDone = stands.SequenceEqual(done);
            if (!isDone && !stands.SequenceEqual(before))
            {
                Say(deed, $"stands between: {Difference(done, stands)}");
            }

            if (told && !isDone)
            {
                Say(deed, "was told to be done and isn't");
            }

            if (!told && fault is Fault.Away or Fault.AwayWithAnswer)
            {
                Say(deed, $"didn't wait for the server: {trouble?.GetType().Name ?? "an answer in words"}");
            }

            if (!told && !await deed.Do())
            {
                Say(deed, "wasn't done when it was pressed again");
            }

            if (await Stored.ReadAsync(db, Ct) is var after && !after.SequenceEqual(done))
            {
                Say(deed, $"pressed again: {Difference(done, after)}");
            }
        }

        private async Task<(bool Told, Exception? Trouble)> TryAsync(Deed deed)
        {
            at.Arm(step, fault);
            try
            {
                return (await deed.Do(), null);
            }
            catch (Exception trouble) when (FaultAt.IsMine(trouble))
            {
                return (false, trouble);
            }
            finally
            {
                at.Disarm();
                Faults += at.WasThere ? 1 : 0;
                WasReached |= at.WasReached;
            }
        }

        // Two days later nothing lies in the folder but what a row names.
        private async Task SweptAsync()
        {
            var files = new RecordingScene(db);
            var later = new FakeTimeProvider(TimeProvider.System.GetUtcNow().AddDays(2));
            await new MediaCaretaker(db, files.Folder, later, NullLogger<MediaCaretaker>.Instance).SweepAsync(Ct);
            await using var context = db.CreateDbContext();
            var kept = await context.Set<Recording>().Select(row => row.File).ToListAsync(Ct);
            if (!files.Lying.Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal).SequenceEqual(kept.Order(StringComparer.Ordinal)))
            {
                Wrong.Add($"{fault} at {step}: {files.Lying.Count} files lie for {kept.Count} rows");
            }
        }

        private void Say(Deed deed, string what) => Wrong.Add($"{fault} at {step}: “{deed.Name}” {what}");

        private static string Difference(IReadOnlyList<string> wanted, IReadOnlyList<string> stands)
        {
            var (lacks, more) = (wanted.ToList(), stands.ToList());
            foreach (var line in stands)
            {
                _ = lacks.Remove(line) && more.Remove(line);
            }

            return $"lacks [{string.Join("; ", lacks.Take(3))}], has [{string.Join("; ", more.Take(3))}]";
        }
    }
}
