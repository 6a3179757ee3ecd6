using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

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

    /// <summary>Faults that are known to bring it about: they answer where no test does.</summary>
    public IReadOnlyList<string> Causes { get; private init; } = [];

    /// <summary>What it is about, inside a sentence: “soft starts”.</summary>
    public string Name { get; private init; } = "";

    /// <summary>The most that are answered one by one.</summary>
    private const int Most = 3;

    private static readonly (Regex Words, Complaint Means)[] Known =
    [
        (Wide(), new(TestKind.Opening, 1, ["opening-wide", "more-open-than-liked"]) { Name = "the opening" }),
        (Narrow(), new(TestKind.Opening, -1, ["opening-narrow", "closes-in-play"]) { Name = "the opening", Causes = ["spine-scraped"] }),
        (Low(), new(TestKind.LowResponse, 0, []) { Name = "the low notes", Causes = ["back-thick"] }),
        (High(), new(TestKind.HighSteadiness, 0, []) { Name = "the high notes", Causes = ["tip-centre-thin", "tip-long", "spine-scraped"] }),
        (Air(), new(TestKind.Seal, 0, ["side-leak", "thread-leak"]) { Name = "air at the sides" }),
        (Tongued(), new(TestKind.TonguedStarts, 0, []) { Name = "tongued notes", Near = [TestKind.SoftestStart], Causes = ["tip-not-separate", "step-abrupt", "tip-long"] }),
        (Fuzzy(), new(TestKind.TonguedStarts, 0, []) { Name = "the beginnings of notes", Near = [TestKind.SoftestStart], Causes = ["tip-not-separate", "step-abrupt"] }),
        (Soft(), new(TestKind.SoftestStart, 0, []) { Name = "soft starts", Near = [TestKind.TonguedStarts], Causes = ["tip-corners-thick", "tip-thick"] }),
        (Hard(), new(TestKind.Effort, 1, []) { Name = "how hard it is to blow", Causes = ["heart-sides-thick", "heart-thick", "opening-wide", "back-thick"] }),
        (Easy(), new(TestKind.Effort, -1, []) { Name = "how easy it is to blow" }),
        (Flat(), new(TestKind.TuningNote, -1, []) { Name = "its pitch", Near = [TestKind.Crow], Causes = ["heart-thin", "tip-long"] }),
        (Sharp(), new(TestKind.TuningNote, 1, []) { Name = "its pitch", Near = [TestKind.Crow], Causes = ["opening-narrow", "tip-short"] }),
        (Pitch(), new(TestKind.TuningNote, 0, []) { Name = "its pitch", Near = [TestKind.Crow] }),
        (Bright(), new(TestKind.Edge, 1, []) { Name = "the edge of the sound" }),
        (Dull(), new(TestKind.Edge, -1, []) { Name = "the edge of the sound", Causes = ["dirty-inside", "worn"] }),
        (Thin(), new(TestKind.Depth, 0, []) { Name = "the depth of the sound", Causes = ["back-thick"] }),
    ];

    /// <summary>What a student complains of, in the order in which it is written.</summary>
    /// <param name="words">The student’s words.</param>
    public static IReadOnlyList<Complaint> In(string words) =>
    [
        .. Known.Select(one => (one.Means, one.Words.Match(words))).Where(pair => pair.Item2.Success)
            .OrderBy(pair => pair.Item2.Index).Select(pair => pair.Means).DistinctBy(one => one.Test).Take(Most),
    ];

    /// <summary>What a student complains of on a reed; “the same” says once more what was said of the reed before it.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="batch">Its batch.</param>
    public static IReadOnlyList<Complaint> Of(Reed reed, Batch batch)
    {
        var before = Same().IsMatch(reed.Bothers) ? batch.Reeds.Where(other => other.Number < reed.Number).MaxBy(other => other.Number) : null;
        return [.. (before is null ? [] : Of(before, batch)).Concat(In(reed.Bothers)).DistinctBy(one => one.Test).Take(Most)];
    }

    /// <summary>Whether words say that nothing is the matter.</summary>
    /// <param name="words">The student’s words.</param>
    public static bool IsNone(string words) => Nothing().IsMatch(words);

    /// <summary>Whether a test’s word bears it out.</summary>
    /// <param name="step">The index of the word.</param>
    public bool IsMet(int step) => TestScale.Of(Test) is var scale && scale.FromGood(step) > 0
        && (scale.Shape != ScaleShape.TwoSided || Way == 0 || Math.Sign(step - scale.Good) == Way);

    [GeneratedRegex(@"(?i)\b(too|so|very|rather|a (bit|little)) (open|wide)\b|\b(gap|gapes|gaping|wide open)\b|\bopening is (too |very |rather )?(wide|big|large)\b")]
    private static partial Regex Wide();

    [GeneratedRegex(@"(?i)\b(too|so|very|rather|a (bit|little)) (closed|narrow)\b|\bcloses? (up|down)\b|\bopening is (too |very |rather )?(small|narrow)\b")]
    private static partial Regex Narrow();

    [GeneratedRegex(@"(?i)^\W*(much |just |exactly )?the same\b|^\W*(same (here|again)|ditto)\b")]
    private static partial Regex Same();

    [GeneratedRegex(@"(?i)^\W*(nothing|none|no complaints?|no trouble|it is fine|fine|all (is )?well|[-–])\b|^\W*$")]
    private static partial Regex Nothing();

    [GeneratedRegex(@"(?i)\b(low|lowest|bottom|deep) (notes?|register|[a-g]\b)")]
    private static partial Regex Low();

    [GeneratedRegex(@"(?i)\b(high|highest|top|upper) (notes?|register|[a-g]\b)")]
    private static partial Regex High();

    [GeneratedRegex(@"(?i)\b(leaks?|leaking|hear air|loses air|air (beside|comes out))\b")]
    private static partial Regex Air();

    [GeneratedRegex(@"(?i)\b(tongued?|tonguing|staccato)\b")]
    private static partial Regex Tongued();

    [GeneratedRegex(@"(?i)\b(fuzzy|fuzz|furry|vague)\b")]
    private static partial Regex Fuzzy();

    [GeneratedRegex(@"(?i)\b(soft|softly|quiet|quietly|whisper|pianissimo|slow to (start|speak)|come in with a (thump|bump|push)|starts? with a (thump|bump)|(won['’]t|doesn['’]t|hard to) (start|speak))\b")]
    private static partial Regex Soft();

    [GeneratedRegex(@"(?i)\b(hard (to blow|work)|too hard|heavy|stiff|stuffy|tiring|tires|resist(s|ance)?)\b")]
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
