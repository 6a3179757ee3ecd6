using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Recurrence;

/// <summary>What could be the common lesson of a batch: how much of what bothered the student it would explain.</summary>
/// <param name="Theme">What it is about.</param>
/// <param name="Kind">The kind of finding that is taught: the one that explains most within the theme.</param>
/// <param name="Reeds">On how many reeds of the batch it was found.</param>
/// <param name="Explained">How many of the student’s complaints fit it.</param>
/// <param name="Complaints">How many complaints there are, over all reeds of the batch.</param>
/// <param name="Weight">How much of the complaints it is likely to account for, in complaints.</param>
/// <param name="Recurring">Its counts.</param>
public sealed record Lesson(
    Theme Theme, FindingKindId Kind, int Reeds, int Explained, int Complaints, double Weight, Recurring Recurring)
{
    /// <summary>On how many reeds of the batch the kind that is taught was found: of a family, a letter names this and counts this.</summary>
    public Tally OfKind { get; init; }

    /// <summary>The evidence in one sentence that a fourteen-year-old can read, and of a family in a second one what a letter names of it.</summary>
    public string Sentence => $"{Theme.Says}: {Inside(Recurring.InBatch.Tally)}{Fits}.{Named}";

    private string Named => Theme.IsFamily && OfKind.Found > 0 && OfKind.Found != Reeds
        ? $" Of this the letter names “{FindingCatalogue.NameOf(Kind)}”: {Inside(OfKind)}."
        : "";

    private string Fits => (Explained, Complaints) switch
    {
        (0, _) => "",
        (1, 1) => ", and it fits what bothers you",
        (2, 2) => ", and it fits both your troubles",
        var (some, all) when some == all => $", and it fits all {EvidenceSentence.Number(all)} of your troubles",
        var (some, all) => $", and it fits {EvidenceSentence.Number(some)} of your {EvidenceSentence.Number(all)} troubles",
    };

    private static string Inside(Tally tally)
    {
        var evidence = EvidenceSentence.For(tally, default).TrimEnd('.');
        return char.ToLowerInvariant(evidence[0]) + evidence[1..];
    }
}

/// <summary>Ranks what could be taught: what explains most of the batch’s complaints, and can be taught.</summary>
public static class Lessons
{
    /// <summary>The lessons that a batch offers, the best first.</summary>
    /// <param name="batch">The batch’s sheet.</param>
    /// <param name="marks">What the student marked, reed by reed.</param>
    /// <param name="report">What comes back in the student’s reeds.</param>
    /// <param name="catalogue">Which complaints belong to which fault.</param>
    /// <returns>The lessons; none when no fault that can be taught was found. None lies within another of them.</returns>
    public static IReadOnlyList<Lesson> Of(
        FindingSheet batch, IReadOnlyDictionary<ReedId, ReedScales> marks, RecurrenceReport report, Catalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(batch);
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(catalogue);
        List<(ReedId Reed, SignId Sign)> complaints =
        [
            .. batch.Reeds.Where(marks.ContainsKey)
                .SelectMany(reed => Sightings.Of(catalogue, marks[reed]).Where(seen => seen.Present).Select(seen => (reed, seen.Sign))),
        ];
        var strengths = Strengths(catalogue);
        var ranked = report.Faults
            .Where(line => line.InBatch.Tally.Found > 0)
            .Select(line => Read(line, batch, complaints, strengths)).OfType<Lesson>()
            .OrderByDescending(lesson => lesson.Reeds > 1 || batch.Reeds.Count == 1)
            .ThenByDescending(lesson => Math.Round(lesson.Weight, 9))
            .ThenByDescending(lesson => lesson.Recurring.InBatch.Tally.Interval.Low)
            .ThenBy(lesson => lesson.Recurring.InBatch.Tally.Suspected)
            .ThenBy(lesson => lesson.Theme.Kinds.Count)
            .ThenByDescending(lesson => lesson.Recurring.Before.Tally.Found)
            .ToList();
        return WithoutRelated(ranked);
    }

    // A wider family explains at least what lies within it. It stands only where it brings in more; else the narrower one teaches better.
    private static List<Lesson> WithoutRelated(List<Lesson> ranked)
    {
        List<Lesson> kept = [];
        foreach (var lesson in ranked.Where(one => !ranked.Exists(inner =>
            inner.Theme.IsWithin(one.Theme) && inner.Reeds >= one.Reeds && inner.Weight >= 0.9 * one.Weight)))
        {
            if (!kept.Exists(better => better.Theme.IsWithin(lesson.Theme) || lesson.Theme.IsWithin(better.Theme)))
            {
                kept.Add(lesson);
            }
        }

        return kept;
    }

    private static Lesson? Read(
        Recurring line, FindingSheet batch, List<(ReedId Reed, SignId Sign)> complaints, ILookup<(FindingKindId Kind, SignId Sign), double> strengths)
    {
        double Explains(IEnumerable<FindingKindId> kinds, ReedId reed, SignId sign) => 1 - kinds
            .Where(kind => batch.Cell(kind, reed) is { Answer: SheetAnswer.Yes } cell && cell.Character == line.Theme.Character)
            .Aggregate(1.0, (rest, kind) => rest * (1 - (strengths[(kind, sign)].DefaultIfEmpty(0).Max() * (batch.Cell(kind, reed).Suspected ? 0.5 : 1))));

        var teachable = line.Theme.Kinds
            .Where(TeachingNote.HasOwn)
            .Select(kind => (
                Kind: kind,
                Weight: complaints.Sum(one => Explains([kind], one.Reed, one.Sign)),
                Found: batch.Count(kind, line.Theme.Character).Found))
            .Where(one => one.Found > 0)
            .OrderByDescending(one => Math.Round(one.Weight, 9)).ThenByDescending(one => one.Found)
            .ToList();
        if (teachable.Count == 0)
        {
            return null;
        }

        List<double> explained = [.. complaints.Select(one => Explains(line.Theme.Kinds, one.Reed, one.Sign))];
        return new Lesson(
            line.Theme, teachable[0].Kind, line.InBatch.Tally.Found, explained.Count(weight => weight > 0), complaints.Count, explained.Sum(), line)
        {
            OfKind = batch.Count(teachable[0].Kind, line.Theme.Character),
        };
    }

    // How strongly the fault that is this very finding brings a complaint about, as the catalogue has it.
    private static ILookup<(FindingKindId Kind, SignId Sign), double> Strengths(Catalogue catalogue) => (
        from cause in catalogue.Causes
        where cause.Finding is not null
        from link in catalogue.LinksOf(cause.Id)
        select (Key: (cause.Finding!.Value, link.Sign), Strength: link.Strength.Value)).ToLookup(one => one.Key, one => one.Strength);
}
