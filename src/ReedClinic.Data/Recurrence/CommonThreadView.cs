using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Recurrence;

/// <summary>What is common to the reeds of a batch, and to the student's reeds before it.</summary>
/// <param name="AtBench">The batch with its logs, and what was chosen.</param>
/// <param name="InBatch">The sheet of this batch.</param>
/// <param name="Before">The sheet of the student's earlier reeds.</param>
public sealed record CommonThreadView(BatchAtBenchView AtBench, FindingSheet InBatch, FindingSheet Before)
{
    /// <summary>What may be the common lesson, the likeliest first.</summary>
    public IReadOnlyList<Candidate> Lessons { get; } = Candidate.Lessons(InBatch, Before);

    /// <summary>What may be done well, the likeliest first.</summary>
    public IReadOnlyList<Candidate> Strengths { get; } = Candidate.Strengths(InBatch, Before);

    /// <summary>Faults of the student's earlier reeds that are not on these.</summary>
    public IReadOnlyList<Candidate> Gone { get; } = Candidate.Gone(InBatch, Before);

    /// <summary>What was chosen; null when nothing was yet.</summary>
    public CommonThread? Chosen => AtBench.Thread;

    /// <summary>The version that a form has to send back; empty while nothing was chosen.</summary>
    public Guid Version => Chosen?.Version ?? Guid.Empty;

    /// <summary>What was found that has no kind of its own: it is read, and never counted.</summary>
    public IEnumerable<(Reed Reed, Finding Finding)> InOwnWords =>
        from row in AtBench.Reeds
        from finding in row.Log.Findings
        where finding.Finding.FindingKind == FindingKindId.SomethingElse
        select (row.Reed, finding.Finding);
}
