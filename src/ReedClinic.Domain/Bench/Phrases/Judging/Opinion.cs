namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>What the judge thinks of one segment.</summary>
internal sealed class Opinion
{
    private readonly Weights weights;
    private readonly Dictionary<string, (string Answer, double Chance)[]> answers = [];
    private readonly Lazy<IReadOnlyList<Weights.Count[][]>> ofMatter;

    internal Opinion(Weights weights, Course course, Course ruled)
    {
        this.weights = weights;
        Matter = Signs.OfMatter(course.Segment);
        ofMatter = new(() => weights.Known(Matter));
        Seen = [.. Signs.Of(course, Matter), .. Signs.OfRules(course, ruled)];
    }

    /// <summary>The signs of what the segment is about.</summary>
    internal IReadOnlyList<string> Matter { get; }

    /// <summary>All that was seen.</summary>
    internal IReadOnlyList<string> Seen { get; }

    /// <summary>The likeliest answer to a question.</summary>
    internal string Best(string question) => All(question).MaxBy(answer => answer.Chance).Answer;

    /// <summary>How likely an answer is.</summary>
    internal double Chance(string question, string answer) => All(question).FirstOrDefault(other => other.Answer == answer).Chance;

    private (string Answer, double Chance)[] All(string question)
    {
        if (!answers.TryGetValue(question, out var known))
        {
            answers[question] = known = question is Questions.Kind ? weights.Ask(question, Seen) : weights.Ask(question, ofMatter.Value);
        }

        return known;
    }
}

/// <summary>What the judge is asked.</summary>
internal static class Questions
{
    /// <summary>Which kind of entry, or nothing new.</summary>
    internal const string Kind = "kind";

    /// <summary>Which finding, found or looked for.</summary>
    internal const string Finding = "finding";

    /// <summary>Which adjustment.</summary>
    internal const string Adjustment = "adjustment";

    /// <summary>Which test and which word of its scale.</summary>
    internal const string Test = "test";

    /// <summary>How a finding ended.</summary>
    internal const string Ended = "ended";

    /// <summary>What became of a risk.</summary>
    internal const string RiskClosed = "riskclosed";

    /// <summary>Which verdict.</summary>
    internal const string Verdict = "verdict";

    /// <summary>Whether a new thing begins to be said.</summary>
    internal const string Gap = "gap";

    /// <summary>Whom to believe.</summary>
    internal const string Balance = "balance";

    /// <summary>The question about what an entry of this kind says; null where it has none.</summary>
    internal static string? Of(string kind) => kind switch
    {
        "finding" or "lookedfor" => Finding,
        "adjustment" => Adjustment,
        "test" => Test,
        "ended" => Ended,
        "riskclosed" => RiskClosed,
        "verdict" => Verdict,
        _ => null,
    };
}
