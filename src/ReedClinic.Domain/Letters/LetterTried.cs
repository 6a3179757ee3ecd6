using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>What the tests of a reed still say of it, after the work that was done on it.</summary>
internal static class LetterTried
{
    // A step beside the good one is “a little”: more than that isn't told as good. Where steps are kinds, only the good one is.
    private const int StillGood = 1;

    /// <summary>Whether something was done to the reed after this test, so that it says nothing of how the reed is now.</summary>
    /// <param name="log">The reed's log.</param>
    /// <param name="test">The test.</param>
    internal static bool IsBeforeWork(BenchLog log, LiveFact<Test> test) => WorkAfter(log, test).Count > 0;

    /// <summary>What was done to the reed after this test.</summary>
    /// <param name="log">The reed's log.</param>
    /// <param name="test">The test.</param>
    internal static IReadOnlyList<LiveFact<Adjustment>> WorkAfter(BenchLog log, LiveFact<Test> test) => [.. log.Work.Where(work => IsAfter(work, test))];

    /// <summary>What was done since the reed was last tried; empty when it was tried after all of it, or never.</summary>
    /// <param name="log">The reed's log.</param>
    internal static IReadOnlyList<LiveFact<Adjustment>> WorkSince(BenchLog log) => Tests(log).MaxBy(test => (test.Pass, test.Sequence)) is { } last
        ? [.. log.Work.Where(work => IsAfter(work, last))]
        : [];

    /// <summary>Whether each pass was followed by a test of how the reed plays.</summary>
    /// <param name="log">The reed's log.</param>
    internal static bool IsTriedAfterEachPass(BenchLog log) => log.Work.GroupBy(work => work.Pass).All(pass => Tests(log).Any(test => test.Pass == pass.Key && test.Sequence > pass.Min(work => work.Sequence)));

    /// <summary>Whether the reed was tried since the work, and came out well in whatever was tried last.</summary>
    /// <param name="log">The reed's log.</param>
    /// <param name="target">What its crow is compared with.</param>
    internal static bool IsGood(BenchLog log, CrowTarget target)
    {
        var latest = Tests(log).GroupBy(test => test.Now.TestKind).Select(group => group.MaxBy(test => (test.Pass, test.Sequence))!.Now).ToList();
        return latest.Exists(test => test.Step is not null || test.Pitch is not null) && WorkSince(log).Count == 0 && latest.TrueForAll(test => !LetterLog.IsBare(test) && IsGood(test, target));
    }

    /// <summary>The gap that asks the teacher to try a reed once more before it goes; null where that was done.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? Gap(Reed reed, BenchLog log) => WorkSince(log).Count == 0 || log.Verdict?.Now.VerdictKind == VerdictKind.NotToBeSaved ? null : new(
        "untried-" + Prose.Number(reed.Number),
        GapKind.NotTriedSinceTheWork,
        $"Reed {Prose.Number(reed.Number)} was not tried again after the last work on it, and the letter says so. Try it once more and write down how it plays.")
    {
        Reed = reed.Id,
    };

    /// <summary>Whether a test was off when the reed came, and wasn’t made again though it was worked on and tried since.</summary>
    /// <param name="move">The test.</param>
    /// <param name="log">The reed’s log.</param>
    internal static bool IsOffThen(TestMove move, BenchLog log) => move.Now is null && IsOff(move) && log.Work.Any() && !(WorkSince(log).Count > 0 && log.Moves.Any(one => one.Now is not null));

    /// <summary>Whether a test was off its right value when the reed came.</summary>
    /// <param name="move">The test.</param>
    internal static bool IsOff(TestMove move) => move.Arrival?.Now.Step is { } step && TestScale.Of(move.TestKind).FromGood(step) != 0;

    private static bool IsAfter(LiveFact<Adjustment> work, LiveFact<Test> test) => (work.Pass, work.Sequence).CompareTo((test.Pass, test.Sequence)) > 0;

    // A length says nothing about how a reed plays.
    private static IEnumerable<LiveFact<Test>> Tests(BenchLog log) => log.Counting.Where(test => test.Now.TestKind != TestKind.Length);

    private static bool IsGood(Test test, CrowTarget target) =>
        (test.Step is not { } step || TestScale.Of(test.TestKind) is var scale && scale.FromGood(step) <= (scale.Shape == ScaleShape.Kinds ? 0 : StillGood))
        && (test is not { TestKind: TestKind.Crow, Pitch: { } pitch } || Math.Abs(pitch.Against(target).Middle.Value) <= CrowTarget.ToleranceCents);
}
