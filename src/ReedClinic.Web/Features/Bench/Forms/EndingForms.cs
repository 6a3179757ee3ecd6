using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>How a finding ended, as it is typed.</summary>
public sealed class FindingEndedForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.FindingEnded;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => Typed.Id(nameof(FindingEnded.FindingId)) is { } finding
        ? Any(FindingEnded.Of(new EntryId(finding), Typed.Choice<FindingEnding>(nameof(FindingEnded.Ending)), Text(nameof(FindingEnded.Words))))
        : new Outcome<BenchEntry>.Refused([new Problem(nameof(FindingEnded.FindingId), "Choose the finding that this is about.")]);

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var ended = (FindingEnded)entry;
        Typed[nameof(FindingEnded.FindingId)] = ended.FindingId.Value.ToString();
        Typed[nameof(FindingEnded.Ending)] = ended.Ending.ToString();
        Typed[nameof(FindingEnded.Words)] = ended.Words ?? "";
    }
}

/// <summary>What became of a risk, as it is typed.</summary>
public sealed class RiskClosedForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.RiskClosed;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => Typed.Id(nameof(RiskClosed.RiskId)) is { } risk
        ? Any(RiskClosed.Of(new EntryId(risk), Typed.Choice<RiskOutcome>(nameof(RiskClosed.Outcome)), Text(nameof(RiskClosed.Words))))
        : new Outcome<BenchEntry>.Refused([new Problem(nameof(RiskClosed.RiskId), "Choose the risk that this is about.")]);

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var closed = (RiskClosed)entry;
        Typed[nameof(RiskClosed.RiskId)] = closed.RiskId.Value.ToString();
        Typed[nameof(RiskClosed.Outcome)] = closed.Outcome.ToString();
        Typed[nameof(RiskClosed.Words)] = closed.Words ?? "";
    }
}
