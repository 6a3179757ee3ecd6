using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“So is the right one”, “the other blade’s just the same”: the finding before, in another place.</summary>
internal static class SameFinding
{
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        var mentions = PlaceReader.Read(segment);
        if (!Says(segment) || segment.Asked || segment.Has(Cat.Verb) || segment.Has(Cat.Test) || segment.Has(Cat.Plan) || segment.Has(Cat.Not) || segment.Has(Cat.Off) || Base(course) is not { } slots || segment.Find(Cat.SameAs) is { } compared && mentions.Any(mention => mention.First >= compared.End))
        {
            return false;
        }

        var blade = mentions.FirstOrDefault(mention => mention.Blade is not null)?.Blade;
        var side = mentions.FirstOrDefault(mention => mention.Side is not null)?.Side;
        var place = mentions.FirstOrDefault(mention => mention.HasPlace);
        if ((blade is null or "Both" && side is null or "Both") || (place?.Usual is { } zone && zone != slots.Zone))
        {
            return place?.Usual is { } elsewhere && elsewhere != slots.Zone && segment.HasWord("so") && course.Last is { Kind: EntryKind.Finding } other && Elsewhere(course, place, course.Segments[other.First]);
        }

        var sides = DeedReader.ResolveSide(side, slots.Sides, null, slots.Sides);
        if (slots.Relation is not null && side is not null)
        {
            return false;
        }

        course.Add(EntryKind.Finding, slots with
        {
            Blades = DeedReader.Resolve(blade, slots.Blades, null, slots.Blades ?? DeedReader.LastBlade(course)),
            Sides = sides,
            Degree = null,
            Certainty = segment.Has(Cat.Hedge) ? Certainty.Suspected : null,
            Known = FindingReader.Known(segment),
            Arose = null,
        });
        return true;
    }

    /// <summary>“It isn’t the tip that’s thick, it’s the heart”: what is denied of one place is said of another.</summary>
    internal static bool Instead(Course course)
    {
        var segment = course.Segment;
        if (course.LastInSentence is not { Kind: EntryKind.LookedFor } denied || denied.Last != course.At - 1 || segment.Word(segment.First) is not "it" || segment.Word(segment.First + 1) is not ("is" or "'s") || segment.Has(Cat.Quality) || segment.Has(Cat.Not) || segment.Has(Cat.Good) || segment.Has(Cat.Verb)
            || PlaceReader.Read(segment).FirstOrDefault(mention => mention.HasPlace) is not { } place)
        {
            return false;
        }

        return Elsewhere(course, place, course.Segments[denied.First]);
    }

    // “Both rails whole, and so is the spine”.
    private static bool Elsewhere(Course course, Mention place, Segment first)
    {
        foreach (var quality in first.Items.Where(item => item.Cat is Cat.Quality or Cat.Good))
        {
            if (FindingTable.Kind(place, quality.Cat is Cat.Good ? "good" : quality.Value) is { } kind)
            {
                return FindingReader.Add(course, place, kind, FindingCatalogue.Find(new FindingKindId(kind))!.Usually, quality);
            }
        }

        return false;
    }

    private static bool Says(Segment segment)
    {
        var so = segment.IndexOfWord("so");
        return (so >= 0 && segment.Word(so + 1) is "is" or "are" or "'s" or "has" or "does" or "do") || segment.Has(Cat.SameAs, "same") || segment.Has(Cat.Same)
            || segment.Has(Cat.Quality, "alike") || segment.Items.Any(item => item.Is(Cat.Quality, "matched") && segment.Word(item.End - 1) is "same" or "identical" or "alike")
            || (segment.Has(Cat.Also) && segment.Items.All(item => item.Cat is not (Cat.Quality or Cat.Good)));
    }

    private static ReadSlots? Base(Course course) => course.Drafts.Count > 0
        ? course.Last is { Kind: EntryKind.Finding } said ? said.Slots : null
        : course.Before.Last is Finding finding ? Of(finding) : null;

    private static ReadSlots Of(Finding finding) => new()
    {
        Kind = finding.FindingKind.Value,
        Character = finding.Character,
        Zone = finding.Zone,
        Blades = finding.Blades is Blades.Both ? null : finding.Blades,
        Sides = finding.Sides is Sides.Both ? null : finding.Sides,
        Relation = finding.Relation,
        OtherZone = finding.OtherZone == finding.Zone ? null : finding.OtherZone,
        OtherSides = finding.OtherSides is Sides.Both ? null : finding.OtherSides,
    };
}
