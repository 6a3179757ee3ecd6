using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>Whether a fault is told as what was so when the reed came: nobody knows that it is so still.</summary>
internal static class FindingPast
{
    // What says by itself whether a fault is there. Common practice.
    private static readonly Dictionary<string, TestKind> Tested = new(StringComparer.Ordinal)
    {
        ["opening-wide"] = TestKind.Opening,
        ["opening-narrow"] = TestKind.Opening,
        ["centre-closes-first"] = TestKind.ClosingOrder,
        ["side-leak"] = TestKind.Seal,
        ["thread-leak"] = TestKind.Seal,
    };

    /// <summary>Whether a test that came out so says the very thing that was found.</summary>
    /// <param name="kind">What was found.</param>
    /// <param name="test">The test.</param>
    /// <param name="step">How it came out.</param>
    internal static bool IsShownBy(FindingKindId kind, TestKind test, int step) => Tested.TryGetValue(kind.Value, out var own) && own == test && TestScale.Of(test) is var scale && scale.FromGood(step) > 0
        && kind.Value switch { "opening-wide" => step > scale.Good, "opening-narrow" => step < scale.Good, _ => true };

    /// <summary>Whether a test that was made shows what was only suspected.</summary>
    /// <param name="finding">What was suspected.</param>
    /// <param name="log">The log it stands in.</param>
    internal static bool IsShownIn(this Finding finding, BenchLog log) =>
        log.Live<Test>().Any(test => test.Now.Step is { } step && IsShownBy(finding.FindingKind, test.Now.TestKind, step));

    private static readonly HashSet<string> AtTheEnd = new(StringComparer.Ordinal) { "tip-corner-broken", "tip-edge-ragged", "tip-line-slanted", "tip-cracked" };

    private static readonly HashSet<string> Cuts = new(StringComparer.Ordinal) { "clip", "clip-hair", "square-tip" };

    /// <summary>It has gone or is better, or nobody said so but it was worked on since, or its own test has come out right since.</summary>
    /// <param name="now">The fault as it stands.</param>
    /// <param name="log">The log it stands in.</param>
    internal static bool IsPast(this FindingNow now, BenchLog log) => now.CourseIn(log) != FindingCourse.Still
        || (now.Ended is null && (now.DoneForIt.Count > 0 || IsWorkedOn(now, log) || IsRightSince(now, log)));

    /// <summary>Whether it was said to be as it was, though its own test came out right after that work: one of the two isn’t so, and neither is told against the other.</summary>
    /// <param name="now">The fault as it stands.</param>
    /// <param name="log">The log it stands in.</param>
    internal static bool IsAgainstItsTest(this FindingNow now, BenchLog log) => now.Ended?.Now.Ending is FindingEnding.Unchanged && IsRightSince(now, log);

    private static bool IsWorkedOn(FindingNow now, BenchLog log) => log.Work.Any(work => IsAfter(work, now)
        && ((work.Now.Place.Zone == now.Finding.Zone && now.Finding.Zone != Zone.WholeReed) || IsCutOff(now.Finding, work.Now)));

    /// <summary>Whether work was done once a fault was found, and before it was said how it ended.</summary>
    /// <param name="work">The work.</param>
    /// <param name="now">The fault as it stands.</param>
    internal static bool IsAfter(LiveFact<Adjustment> work, FindingNow now) => work.Sequence > now.Fact.Sequence && !(now.Ended is { } ended && work.Sequence > ended.Sequence);

    /// <summary>Whether work cuts off the end at which a fault is.</summary>
    /// <param name="finding">The fault.</param>
    /// <param name="work">The work.</param>
    internal static bool IsCutOff(Finding finding, Adjustment work) => AtTheEnd.Contains(finding.FindingKind.Value) && Cuts.Contains(work.AdjustmentKind.Value);

    private static bool IsRightSince(FindingNow now, BenchLog log) => now.Finding.FindingKind.Value is { } kind && Tested.TryGetValue(kind, out var test)
        && log.Live<Test>().Where(one => one.Now.TestKind == test && one.Now.Step is not null).MaxBy(one => one.Sequence) is { } last
        && last.Sequence > now.Fact.Sequence && TestScale.Of(test).FromGood(last.Now.Step!.Value) == 0;
}
