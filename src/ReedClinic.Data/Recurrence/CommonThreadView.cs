using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Habits;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Recurrence;

/// <summary>What is common to the reeds of a batch, and to the student's reeds before it.</summary>
/// <param name="AtBench">The batch with its logs, and what was chosen.</param>
/// <param name="Sheets">The sheets of the student's batches up to this one, which is the last, and the studio's rates.</param>
/// <param name="Catalogue">Which complaints belong to which fault.</param>
public sealed record CommonThreadView(BatchAtBenchView AtBench, StudentSheets Sheets, Catalogue Catalogue)
{
    /// <summary>The sheet of this batch.</summary>
    public FindingSheet InBatch { get; } = Sheets.History.Now!;

    /// <summary>How often a kind was found on the student's earlier reeds.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="character">Which character counts as found.</param>
    public Tally Before(FindingKindId kind, FindingCharacter character) =>
        Sheets.History.Batches.SkipLast(1).Aggregate(default(Tally), (sum, sheet) => sum + sheet.Count(kind, character));

    /// <summary>Whether anything was looked at on earlier reeds.</summary>
    public bool HasEarlier => Sheets.History.Batches.SkipLast(1).Any(sheet => sheet.Kinds.Count > 0);

    /// <summary>What comes back, what is done well first.</summary>
    public RecurrenceReport Report { get; } = Recurrences.Of(Sheets.History, Sheets.Studio, Catalogue.Own);

    /// <summary>What is done well, the surest first.</summary>
    public IReadOnlyList<Praise> Strengths => field ??= Praises.Of(InBatch, Report);

    /// <summary>What could be taught: first what explains most of what bothers the student.</summary>
    public IReadOnlyList<Lesson> Lessons => field ??= Domain.Recurrence.Lessons.Of(
        InBatch,
        AtBench.Batch.Reeds.Where(reed => InBatch.Reeds.Contains(reed.Id)).ToDictionary(reed => reed.Id, reed => reed.Scales),
        Report,
        Catalogue);

    /// <summary>What habit may be behind it, with how to check it oneself.</summary>
    public HabitGuess Habits => field ??= LikelyHabits.Of(Catalogue, Sheets.History.Tallies());

    /// <summary>Faults of the student's earlier reeds that were looked for on these and are on none of them.</summary>
    public IReadOnlyList<Recurring> Gone =>
    [
        .. Report.Faults.Where(line => !line.Theme.IsFamily && line.InBatch.Tally is { Found: 0, Looked: > 0 } && line.Before.Tally.Found > 0),
    ];

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
