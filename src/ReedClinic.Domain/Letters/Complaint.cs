using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>One thing that a student may complain of, and where a log tells of it.</summary>
/// <param name="Test">The test that shows it.</param>
/// <param name="Way">On which side of the test’s good word it lies: 1 above, −1 below, 0 on either.</param>
/// <param name="Findings">The kinds of finding that are this very thing.</param>
/// <remarks>The words are common ones of students, from memory. What isn’t recognised is left to the rest of the letter.</remarks>
internal sealed partial record Complaint(TestKind Test, int Way, IReadOnlyList<string> Findings)
{
    /// <summary>Tests that bear on it too, the nearest first: they answer where its own wasn’t made. A crow answers by its pitch.</summary>
    public IReadOnlyList<TestKind> Near { get; private init; } = [];

    /// <summary>The most that are answered one by one.</summary>
    private const int Most = 2;

    private static readonly (Regex Words, Complaint Means)[] Known =
    [
        (Wide(), new(TestKind.Opening, 1, ["opening-wide", "more-open-than-liked"])),
        (Narrow(), new(TestKind.Opening, -1, ["opening-narrow"])),
        (Low(), new(TestKind.LowResponse, 0, [])),
        (High(), new(TestKind.HighSteadiness, 0, [])),
        (Air(), new(TestKind.Seal, 0, ["side-leak"])),
        (Tongued(), new(TestKind.TonguedStarts, 0, []) { Near = [TestKind.SoftestStart] }),
        (Fuzzy(), new(TestKind.TonguedStarts, 0, []) { Near = [TestKind.SoftestStart] }),
        (Soft(), new(TestKind.SoftestStart, 0, []) { Near = [TestKind.TonguedStarts] }),
        (Hard(), new(TestKind.Effort, 1, [])),
        (Easy(), new(TestKind.Effort, -1, [])),
        (Flat(), new(TestKind.TuningNote, -1, []) { Near = [TestKind.Crow] }),
        (Sharp(), new(TestKind.TuningNote, 1, []) { Near = [TestKind.Crow] }),
        (Pitch(), new(TestKind.TuningNote, 0, []) { Near = [TestKind.Crow] }),
        (Bright(), new(TestKind.Edge, 1, [])),
        (Dull(), new(TestKind.Edge, -1, [])),
        (Thin(), new(TestKind.Depth, 0, [])),
    ];

    /// <summary>What a student complains of, in the order in which it is written.</summary>
    /// <param name="words">The student’s words.</param>
    public static IReadOnlyList<Complaint> In(string words) =>
    [
        .. Known.Select(one => (one.Means, one.Words.Match(words))).Where(pair => pair.Item2.Success)
            .OrderBy(pair => pair.Item2.Index).Select(pair => pair.Means).DistinctBy(one => one.Test).Take(Most),
    ];

    /// <summary>Whether a test’s word bears it out.</summary>
    /// <param name="step">The index of the word.</param>
    public bool IsMet(int step) => TestScale.Of(Test) is var scale && scale.FromGood(step) > 0
        && (scale.Shape != ScaleShape.TwoSided || Way == 0 || Math.Sign(step - scale.Good) == Way);

    [GeneratedRegex(@"(?i)\b(too|so|very|rather|a (bit|little)) (open|wide)\b|\b(gap|gapes|gaping|wide open)\b|\bopening is (too |very |rather )?(wide|big|large)\b")]
    private static partial Regex Wide();

    [GeneratedRegex(@"(?i)\b(too|so|very|rather|a (bit|little)) (closed|narrow)\b|\bcloses? (up|down)\b|\bopening is (too |very |rather )?(small|narrow)\b")]
    private static partial Regex Narrow();

    [GeneratedRegex(@"(?i)\b(low|lowest|bottom|deep) (notes?|register|[a-g]\b)")]
    private static partial Regex Low();

    [GeneratedRegex(@"(?i)\b(high|highest|top|upper) (notes?|register|[a-g]\b)")]
    private static partial Regex High();

    [GeneratedRegex(@"(?i)\b(leaks?|leaking|hear air|loses air|air (beside|comes out))\b")]
    private static partial Regex Air();

    [GeneratedRegex(@"(?i)\b(tongued?|tonguing|staccato)\b")]
    private static partial Regex Tongued();

    [GeneratedRegex(@"(?i)\b(fuzzy|fuzz|furry)\b")]
    private static partial Regex Fuzzy();

    [GeneratedRegex(@"(?i)\b(soft|softly|quiet|quietly|whisper|pianissimo|slow to (start|speak)|(won['’]t|doesn['’]t|hard to) (start|speak))\b")]
    private static partial Regex Soft();

    [GeneratedRegex(@"(?i)\b(hard (to blow|work)|too hard|heavy|stuffy|tiring|tires|resist(s|ance)?)\b")]
    private static partial Regex Hard();

    [GeneratedRegex(@"(?i)\b(too easy|too light|nothing to blow against)\b")]
    private static partial Regex Easy();

    [GeneratedRegex(@"(?i)\b(out of tune|pitch|tuning)\b")]
    private static partial Regex Pitch();

    [GeneratedRegex(@"(?i)\b(flat|flattens?)\b")]
    private static partial Regex Flat();

    [GeneratedRegex(@"(?i)\bsharp\b")]
    private static partial Regex Sharp();

    [GeneratedRegex(@"(?i)\b(bright|edgy|harsh|shrill)\b")]
    private static partial Regex Bright();

    [GeneratedRegex(@"(?i)\b(covered|dull)\b")]
    private static partial Regex Dull();

    [GeneratedRegex(@"(?i)\b(thin|hollow|small) (sound|tone)\b|\b(sounds?|tone is) (so |too |a little |a bit )?(thin|hollow)\b")]
    private static partial Regex Thin();
}
