using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Picks;

/// <summary>An adjustment as a teacher is in the habit of making it.</summary>
/// <param name="Kind">What is done; never “something else”, which says nothing without its words.</param>
/// <param name="Place">Where.</param>
/// <param name="Strokes">Strokes in each quadrant, if they are said.</param>
/// <param name="Micrometres">Thousandths of a millimetre, if they are said.</param>
public sealed record WorkPick(AdjustmentKindId Kind, Place Place, int? Strokes = null, int? Micrometres = null)
{
    /// <summary>How much.</summary>
    public Amount Amount => new(Strokes, Micrometres / 1000m);
}

/// <summary>Something that a teacher did before: what, and when.</summary>
/// <param name="Work">The adjustment, or null for a test.</param>
/// <param name="Test">The test, or null for an adjustment.</param>
/// <param name="At">When.</param>
public sealed record Habit(WorkPick? Work, TestKind? Test, DateTimeOffset At)
{
    /// <summary>What an entry says about its teacher’s habits.</summary>
    /// <param name="entry">An entry that stands.</param>
    /// <returns>The habit, or null for what is neither a test nor an adjustment with a name of its own.</returns>
    public static Habit? Of(BenchEntry entry) => entry switch
    {
        Test test => new Habit(null, test.TestKind, test.RecordedAt),
        Adjustment work when AdjustmentCatalogue.Find(work.AdjustmentKind) is not null || OwnId.Is(work.AdjustmentKind.Value) => new Habit(
            new WorkPick(work.AdjustmentKind, work.Place, work.AmountStrokes, work.AmountMicrometres), null, work.RecordedAt),
        _ => null,
    };
}

/// <summary>
/// What this teacher does most, for one key each. At the bench it stays as it was when they sat down (<see cref="AtTheBench"/>):
/// a list must not jump under the finger, and a learnt number must not mean something else on the next reed.
/// </summary>
/// <remarks>
/// Each time counts for less the longer ago it was: half after <see cref="HalfLife"/>. Counts that lie within a tenth of each
/// other keep the order that the list had before; without one, the order of the catalogue decides. What a teacher hasn’t done
/// twice isn’t a habit yet; until there are enough habits, a usual list fills up the rest.
/// </remarks>
/// <param name="Adjustments">At most nine adjustments.</param>
/// <param name="Tests">At most nine tests.</param>
public sealed record PickList(IReadOnlyList<WorkPick> Adjustments, IReadOnlyList<TestKind> Tests)
{
    /// <summary>How many there are of each: one for each key from 1 to 9.</summary>
    public const int Length = 9;

    /// <summary>How often something must have been done to be a habit.</summary>
    public const int Enough = 2;

    /// <summary>After this long a time counts for half as much. It is this program’s own default.</summary>
    public static readonly TimeSpan HalfLife = TimeSpan.FromDays(60);

    /// <summary>Entries with less time than this between them belong to one sitting at the bench. It is this program’s own default.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromHours(4);

    private const double AboutTheSame = 1.1;

    private static readonly WorkPick[] UsualWork =
    [
        Usual("thin-tip-sides"), Usual("thin-corners"), Usual("clip-hair"), Usual("blend"), Usual("take-heart-sides"),
        Usual("open-windows"), Usual("free-heart-bottom"), Usual("define-tip"), Usual("close-press"),
    ];

    private static readonly TestKind[] UsualTests =
    [
        TestKind.Crow, TestKind.Effort, TestKind.SoftestStart, TestKind.LowResponse, TestKind.Peep, TestKind.Opening,
        TestKind.HighSteadiness, TestKind.TuningNote, TestKind.Length,
    ];

    /// <summary>The list of whoever has no log yet (common practice: from the tip down, nothing that is never hurried).</summary>
    public static PickList Start { get; } = new(UsualWork, UsualTests);

    /// <summary>
    /// The list for a teacher who is at the bench: as it stood when they sat down, so that a number means the same from reed to reed.
    /// What has become a habit since takes the numbers of what has fallen out; the order settles before the next sitting.
    /// </summary>
    /// <param name="habits">What this teacher did, in any order, this sitting included.</param>
    /// <param name="now">The time that recency is counted from.</param>
    public static PickList AtTheBench(IReadOnlyCollection<Habit> habits, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(habits);
        var satDown = SatDown(habits, now);
        var (then, since) = (Of([.. habits.Where(habit => habit.At < satDown)], satDown), Of(habits, now));
        return new PickList(Keep(then.Adjustments, since.Adjustments), Keep(then.Tests, since.Tests));
    }

    /// <summary>The list out of what a teacher did.</summary>
    /// <param name="habits">What this teacher did, in any order.</param>
    /// <param name="now">The time that recency is counted from.</param>
    /// <param name="before">The list as it was last, whose order stays where counts are about the same.</param>
    public static PickList Of(IReadOnlyCollection<Habit> habits, DateTimeOffset now, PickList? before = null)
    {
        ArgumentNullException.ThrowIfNull(habits);
        return new PickList(
            Fill(habits, habit => habit.Work, now, before?.Adjustments, UsualWork, CatalogueOrder, pick => pick.Kind),
            Fill(habits, habit => habit.Test, now, before?.Tests.Select(test => (TestKind?)test).ToList(), [.. UsualTests.Select(test => (TestKind?)test)],
                test => TestScale.All.ToList().FindIndex(scale => scale.TestKind == test), test => test).Select(test => test!.Value).ToList());
    }

    private static DateTimeOffset SatDown(IEnumerable<Habit> habits, DateTimeOffset now)
    {
        var start = now;
        foreach (var at in habits.Select(habit => habit.At).OrderDescending())
        {
            if (start - at >= Pause)
            {
                break;
            }

            start = at;
        }

        return start;
    }

    private static List<T> Keep<T>(IReadOnlyList<T> then, IReadOnlyList<T> since)
    {
        var fresh = new Queue<T>(since.Except(then));
        return [.. then.Select(pick => since.Contains(pick) || fresh.Count == 0 ? pick : fresh.Dequeue())];
    }

    private static List<T> Fill<T, TKind>(
        IEnumerable<Habit> habits, Func<Habit, T?> pick, DateTimeOffset now, IReadOnlyList<T>? before, T[] usual,
        Func<T, int> catalogue, Func<T, TKind> kindOf)
    {
        var counted = habits.Select(habit => (Pick: pick(habit), habit.At)).Where(one => one.Pick is not null)
            .GroupBy(one => one.Pick!, one => Weight(now - one.At))
            .Where(group => group.Count() >= Enough)
            .Select(group => (Pick: group.Key, Count: group.Sum()))
            .OrderByDescending(one => one.Count).ThenBy(one => catalogue(one.Pick)).ThenBy(one => one.Pick!.ToString(), StringComparer.Ordinal)
            .Take(Length).ToList();
        List<T> list = [.. Settle(counted, before, catalogue)];
        list.AddRange(usual.Where(one => !list.Exists(own => Equals(kindOf(own), kindOf(one)))).Take(Length - list.Count));
        return list;
    }

    // Runs of counts that lie within a tenth of their first one are about the same, and are put in the order they had.
    private static IEnumerable<T> Settle<T>(List<(T Pick, double Count)> counted, IReadOnlyList<T>? before, Func<T, int> catalogue)
    {
        for (var from = 0; from < counted.Count;)
        {
            var run = counted.Skip(from).TakeWhile(one => one.Count * AboutTheSame >= counted[from].Count).Select(one => one.Pick).ToList();
            foreach (var pick in run.OrderBy(pick => Place(before, pick)).ThenBy(catalogue).ThenBy(pick => pick!.ToString(), StringComparer.Ordinal))
            {
                yield return pick;
            }

            from += run.Count;
        }
    }

    private static int Place<T>(IReadOnlyList<T>? before, T pick)
    {
        var index = before?.ToList().IndexOf(pick) ?? -1;
        return index < 0 ? int.MaxValue : index;
    }

    private static double Weight(TimeSpan age) => Math.Pow(0.5, Math.Max(0, age / HalfLife));

    // What the studio added comes behind what comes with the program.
    private static int CatalogueOrder(WorkPick pick) =>
        AdjustmentCatalogue.All.ToList().FindIndex(kind => kind.Id == pick.Kind) is >= 0 and var at ? at : int.MaxValue;

    private static WorkPick Usual(string kind) => new(new AdjustmentKindId(kind), new Place(AdjustmentCatalogue.Find(new AdjustmentKindId(kind))!.Zone));
}
