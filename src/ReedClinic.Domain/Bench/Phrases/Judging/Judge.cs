namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>What was learned from labelled phrases about what a segment says.</summary>
/// <param name="weights">What each sign counts.</param>
internal sealed class Judge(Weights weights)
{
    /// <summary>The answer for a segment that says nothing new.</summary>
    internal const string Nothing = "-";

    private const double SureOfGap = 0.7;

    private const double SureWithoutMarks = 0.4;

    private static readonly Lazy<Judge> Learned = new(() => new Judge(Weights.Embedded()));

    /// <summary>The judge that was taught with every open phrase.</summary>
    internal static Judge Taught => Learned.Value;

    /// <summary>What it thinks of the segment that is read next.</summary>
    /// <param name="course">What was understood so far.</param>
    /// <param name="ruled">What was understood with it, by the rules.</param>
    internal Opinion Of(Course course, Course ruled) => new(weights, course, ruled);

    /// <summary>Whether a new thing begins to be said at a token, though no mark and no joining word says so.</summary>
    internal bool Begins(IReadOnlyList<Token> tokens, IReadOnlyList<Item> items, int first, int at) => at - first > 1
        && weights.Ask(Questions.Gap, Gaps.SignsOf(tokens, items, first, at)).FirstOrDefault(answer => answer.Answer == Gaps.New).Chance >= (HasMarks(tokens) ? SureOfGap : SureWithoutMarks);

    // Who sets marks sets them where one thing ends.
    private static bool HasMarks(IReadOnlyList<Token> tokens)
    {
        for (var at = 0; at < tokens.Count - 1; at++)
        {
            if (tokens[at].Kind is TokenKind.Break)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How likely a segment says what a test has.</summary>
    internal double Chance(Segment segment, ReadSlots test) => weights.Ask(Questions.Test, Signs.OfMatter(segment)).FirstOrDefault(answer => answer.Answer == $"{test.Test}/{test.Step}").Chance;

    /// <summary>The kind of entry that is taken, of the rules’ and the judge’s, or nothing new; and how likely the segment tells a deed, or is a remark.</summary>
    /// <param name="sight">What both say.</param>
    internal (string Kind, double Deed, double Remark) Choose(Sight sight) => Balance.Choose(weights, sight);
}
