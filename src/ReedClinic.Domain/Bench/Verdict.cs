using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>How the reed leaves the bench.</summary>
public sealed class Verdict : BenchEntry
{
    private Verdict()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Verdict;

    /// <summary>Which verdict.</summary>
    public VerdictKind VerdictKind { get; private init; }

    /// <summary>A remark.</summary>
    public string? Words { get; private init; }

    /// <summary>Gives a verdict.</summary>
    /// <param name="verdict">Which verdict.</param>
    /// <param name="words">A remark.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<Verdict> Of(VerdictKind verdict, string? words = null)
    {
        List<Problem> problems =
        [
            .. Checked.Known(nameof(VerdictKind), verdict, "Choose a verdict."),
            .. PlainText.Check(nameof(Words), words),
        ];
        return Checked.Give(problems, () => new Verdict { VerdictKind = verdict, Words = PlainText.Tidy(words) });
    }
}
