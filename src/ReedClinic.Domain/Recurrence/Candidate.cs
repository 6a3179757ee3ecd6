using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Recurrence;

/// <summary>Something that may be the common lesson, or what the student does well, with its evidence.</summary>
/// <param name="Kind">The kind of finding.</param>
/// <param name="Character">Fault for a lesson, strength for what is done well.</param>
/// <param name="InBatch">In this batch.</param>
/// <param name="Before">In this student's other batches.</param>
public sealed record Candidate(FindingKind Kind, FindingCharacter Character, Tally InBatch, Tally Before)
{
    /// <summary>In all of this student's reeds.</summary>
    public Tally Altogether => InBatch + Before;

    /// <summary>The evidence in one plain sentence: counts in words, and never a percentage.</summary>
    public string Evidence => EvidenceSentence.For(InBatch, Before);

    /// <summary>What may be the common lesson, the likeliest first.</summary>
    /// <param name="batch">The sheet of this batch.</param>
    /// <param name="before">The sheet of the student's other reeds.</param>
    /// <returns>The candidates.</returns>
    public static IReadOnlyList<Candidate> Lessons(FindingSheet batch, FindingSheet before) =>
        Rank(FindingCharacter.Fault, batch, before);

    /// <summary>What may be done well, the likeliest first.</summary>
    /// <param name="batch">The sheet of this batch.</param>
    /// <param name="before">The sheet of the student's other reeds.</param>
    /// <returns>The candidates.</returns>
    public static IReadOnlyList<Candidate> Strengths(FindingSheet batch, FindingSheet before) =>
        Rank(FindingCharacter.Strength, batch, before);

    /// <summary>Faults of the student's earlier reeds that were looked for in this batch, and found on no reed of it.</summary>
    /// <param name="batch">The sheet of this batch.</param>
    /// <param name="before">The sheet of the student's other reeds.</param>
    /// <returns>What has gone, in the order of the catalogue.</returns>
    public static IReadOnlyList<Candidate> Gone(FindingSheet batch, FindingSheet before) =>
    [
        .. Of(FindingCharacter.Fault, batch, before)
            .Where(candidate => candidate.InBatch is { Found: 0, Looked: > 0 } && candidate.Before.Found > 0),
    ];

    private static IEnumerable<Candidate> Of(FindingCharacter character, FindingSheet batch, FindingSheet before) =>
        FindingCatalogue.All.Select(kind =>
            new Candidate(kind, character, batch.Count(kind.Id, character), before.Count(kind.Id, character)));

    // Ranked by the lower end of the interval, not by the share: two of two is weaker evidence than five of six.
    // What is certain goes before what is suspected, then what was there before, then the order of the catalogue.
    private static IReadOnlyList<Candidate> Rank(FindingCharacter character, FindingSheet batch, FindingSheet before) =>
    [
        .. Of(character, batch, before)
            .Where(candidate => candidate.InBatch.Found > 0)
            .OrderByDescending(candidate => candidate.InBatch.Interval.Low)
            .ThenBy(candidate => candidate.InBatch.Suspected)
            .ThenByDescending(candidate => candidate.Before.Found == 0 ? 0 : candidate.Before.Interval.Low),
    ];
}
