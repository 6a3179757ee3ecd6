using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>What became of a risk.</summary>
public sealed class RiskClosed : BenchEntry
{
    private RiskClosed()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.RiskClosed;

    /// <summary>The risk, by its first entry.</summary>
    public EntryId RiskId { get; private init; }

    /// <summary>Happened, did not happen, or still open.</summary>
    public RiskOutcome Outcome { get; private init; }

    /// <summary>A remark.</summary>
    public string? Words { get; private init; }

    /// <summary>Says what became of a risk.</summary>
    /// <param name="risk">The risk, by its first entry.</param>
    /// <param name="outcome">Happened, did not happen, or still open.</param>
    /// <param name="words">A remark.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<RiskClosed> Of(EntryId risk, RiskOutcome outcome, string? words = null)
    {
        List<Problem> problems =
        [
            .. Checked.Known(nameof(Outcome), outcome, "Say what became of it."),
            .. PlainText.Check(nameof(Words), words),
        ];
        return Checked.Give(
            problems,
            () => new RiskClosed { RiskId = risk, Outcome = outcome, Words = PlainText.Tidy(words) });
    }
}
