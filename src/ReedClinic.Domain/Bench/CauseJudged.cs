using System.Text.RegularExpressions;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>What a teacher says of a cause that may be behind a reed’s trouble.</summary>
public enum CauseAnswer
{
    /// <summary>It was this.</summary>
    Confirmed,

    /// <summary>It wasn’t this.</summary>
    Dismissed,

    /// <summary>It is open again: what was said before counts no more.</summary>
    Open,
}

/// <summary>
/// A teacher’s word on a likely cause of this reed’s trouble. It counts in how often the cause is met at this bench, and stands in no letter.
/// </summary>
public sealed partial class CauseJudged : BenchEntry
{
    /// <summary>The longest name of a cause, in characters.</summary>
    public const int LongestCause = 60;

    private CauseJudged()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.CauseJudged;

    /// <summary>Which cause.</summary>
    public CauseId Cause { get; private init; }

    /// <summary>What is said of it.</summary>
    public CauseAnswer Answer { get; private init; }

    /// <summary>Says it.</summary>
    /// <param name="cause">Which cause.</param>
    /// <param name="answer">What is said of it.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<CauseJudged> Of(CauseId cause, CauseAnswer answer)
    {
        List<Problem> problems =
        [
            .. cause.Value is { Length: > 0 and <= LongestCause } && Form().IsMatch(cause.Value) ? Array.Empty<Problem>() : [new Problem(nameof(Cause), "Choose the cause that this is about.")],
            .. Checked.Known(nameof(Answer), answer, "Say whether it was this or not."),
        ];
        return Checked.Give(problems, () => new CauseJudged { Cause = cause, Answer = answer });
    }

    /// <summary>The last word on each cause of one reed; those that are open again aren’t among them.</summary>
    /// <param name="log">The reed’s log.</param>
    public static IReadOnlyDictionary<CauseId, CauseJudged> Last(BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return log.Live<CauseJudged>().GroupBy(fact => fact.Now.Cause).Select(said => said.MaxBy(fact => fact.Now.Sequence)!.Now)
            .Where(word => word.Answer != CauseAnswer.Open).ToDictionary(word => word.Cause);
    }

    [GeneratedRegex("^[a-z0-9-]+\\z", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
