namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>What was learned from labelled phrases about what a segment says.</summary>
/// <param name="weights">What each sign counts.</param>
internal sealed class Judge(Weights weights)
{
    /// <summary>The answer for a segment that says nothing new.</summary>
    internal const string Nothing = "-";

    private static readonly Lazy<Judge> Learned = new(() => new Judge(Weights.Embedded()));

    /// <summary>The judge that was taught with every open phrase.</summary>
    internal static Judge Taught => Learned.Value;

    /// <summary>What it thinks of the segment that is read next.</summary>
    /// <param name="course">What was understood so far.</param>
    internal Opinion Of(Course course) => new(weights, course);

    /// <summary>How likely a segment says what a test has.</summary>
    internal double Chance(Segment segment, ReadSlots test) => weights.Ask(Questions.Test, Signs.OfMatter(segment)).FirstOrDefault(answer => answer.Answer == $"{test.Test}/{test.Step}").Chance;

    /// <summary>The kind of entry that is taken, of the rules’ and the judge’s; or nothing new.</summary>
    /// <param name="sight">What both say.</param>
    internal string Choose(Sight sight) => Balance.Choose(weights, sight);
}
