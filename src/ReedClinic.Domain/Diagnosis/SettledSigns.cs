using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>Sightings put in order: one for each sign, and in plain sentences what was left out or doesn’t fit.</summary>
internal sealed record SettledSigns(IReadOnlyList<Sighting> Sightings, IReadOnlyList<string> Remarks)
{
    internal static SettledSigns Of(Catalogue catalogue, IEnumerable<Sighting> sightings)
    {
        List<Sighting> settled = [];
        List<string> remarks = [];
        foreach (var told in sightings.GroupBy(one => one.Sign))
        {
            if (catalogue.Find(told.Key) is not { } sign)
            {
                remarks.Add($"“{told.Key.Value}” isn’t on the list, and is left out.");
            }
            else if (sign.Retired)
            {
                remarks.Add($"“{sign.Name}” is no longer used here, and is left out.");
            }
            else if (Choose([.. told], sign, remarks) is { } chosen)
            {
                settled.Add(chosen);
            }
        }

        remarks.AddRange(
            from one in settled
            where one.Present && catalogue.Find(one.Sign)!.Opposite is { } opposite && string.CompareOrdinal(one.Sign.Value, opposite.Value) < 0
                && settled.Exists(other => other.Sign == opposite && other.Present)
            let sign = catalogue.Find(one.Sign)!
            select $"“{sign.Name}” and “{catalogue.Find(sign.Opposite!.Value)!.Name}” can’t both hold: look again. Until then both count.");
        return new SettledSigns([.. settled.OrderBy(one => one.Sign.Value, StringComparer.Ordinal)], remarks);
    }

    /// <summary>The bench before the student, the later before the earlier, the sure before the unsure; nothing where two are equal and differ.</summary>
    private static Sighting? Choose(List<Sighting> told, Sign sign, List<string> remarks)
    {
        var ranked = told.OrderByDescending(one => one.By).ThenByDescending(one => one.Order).ThenByDescending(one => one.Sure).ToList();
        var first = ranked[0];
        if (ranked.Exists(one => one.Present != first.Present && one.By == first.By && one.Order == first.Order && one.Sure == first.Sure))
        {
            remarks.Add($"“{sign.Name}” is noted both as there and as not there, and is left out: look again.");
            return null;
        }

        if (first.By == Teller.Bench && ranked.Exists(one => one.By == Teller.Student && one.Sure && one.Present != first.Present))
        {
            // What was so and was put right at the bench is no contradiction.
            var wasSo = ranked.Exists(one => one.By == Teller.Bench && (one.Present || one.WasThere));
            remarks.Add(wasSo && !first.Present ? $"The student says: {sign.Name}. At the bench it was so, and isn’t any more." : first.Present
                ? $"At the bench: {sign.Name}. The student says that it isn’t so. The bench counts."
                : $"The student says: {sign.Name}. At the bench it wasn’t so. The bench counts.");
        }

        return first;
    }
}
