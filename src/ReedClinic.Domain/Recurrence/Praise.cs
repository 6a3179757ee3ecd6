using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Recurrence;

/// <summary>What a student does well, and could be told first.</summary>
/// <param name="Theme">What it is about.</param>
/// <param name="Kind">The kind of finding that is named: the one on most reeds within the theme.</param>
/// <param name="Recurring">Its counts.</param>
public sealed record Praise(Theme Theme, FindingKindId Kind, Recurring Recurring)
{
    /// <summary>The evidence in one plain sentence.</summary>
    public string Sentence => $"{Theme.Says}. {Recurring.Evidence}";
}

/// <summary>Ranks what is done well, found the same way as what could be taught.</summary>
public static class Praises
{
    /// <summary>What is done well in a batch, the surest first.</summary>
    /// <param name="batch">The batch’s sheet.</param>
    /// <param name="report">What comes back in the student’s reeds.</param>
    /// <returns>The strengths; none lies within another.</returns>
    public static IReadOnlyList<Praise> Of(FindingSheet batch, RecurrenceReport report)
    {
        ArgumentNullException.ThrowIfNull(batch);
        ArgumentNullException.ThrowIfNull(report);
        var found = report.Strengths.Where(line => line.InBatch.Tally.Found > 0).ToList();

        // A wider family stands only where it is on more reeds than what lies within it.
        var standing = found.Where(line => !found.Exists(inner =>
            inner.Theme.IsWithin(line.Theme) && inner.InBatch.Tally.Found >= line.InBatch.Tally.Found)).ToList();
        return
        [
            .. standing.Where(line => !standing.Exists(wider => line.Theme.IsWithin(wider.Theme)))
                .Select(line => new Praise(
                    line.Theme,
                    line.Theme.Kinds.MaxBy(kind => batch.Count(kind, FindingCharacter.Strength).Found),
                    line)),
        ];
    }
}
