namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Too much off the heart, and it’s too thin there now”, “bottom blade, ears again, same”: a fault that is pointed at is of the place that was just worked on, and work again is of the blade that is named.</summary>
internal static class OfThatWork
{
    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Drafts.Count; at++)
        {
            var draft = course.Drafts[at];
            if (draft is { Kind: EntryKind.Adjustment, Slots.Blades: { } blade } && Named(course, draft) is { } named && named != blade)
            {
                draft.Slots = draft.Slots with { Blades = named };
            }
            else if (at > 0 && draft is { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null, Arose: Arose.CausedByTheWork } } && course.Drafts[at - 1] is { Kind: EntryKind.Adjustment, Slots.Zone: not null } work && work.Sentence == draft.Sentence && work.Last + 1 >= draft.First)
            {
                draft.Slots = Pointed(course.Segments[draft.Head], draft.Slots, work.Slots);
            }
        }
    }

    // The only blade that is named in its words, where they lean on work before.
    private static Reeds.Blades? Named(Course course, Draft draft)
    {
        var whole = Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last);
        var blades = PlaceReader.Read(whole).Select(mention => mention.Blade).OfType<string>().Distinct().ToList();
        return whole.Has(Cat.Again) || whole.Has(Cat.Same) ? blades switch { ["Upper"] => Reeds.Blades.Upper, ["Lower"] => Reeds.Blades.Lower, _ => null } : null;
    }

    private static ReadSlots Pointed(Segment segment, ReadSlots slots, ReadSlots work)
    {
        var places = PlaceReader.Read(segment);
        if (places.Exists(mention => mention.OneSide is not null || mention.OneBlade is not null))
        {
            return slots;
        }

        // “The corner’s chipped”: the one that was worked on.
        if (places.Exists(mention => mention.HasPlace))
        {
            return slots.Zone == work.Zone ? slots with { Sides = slots.Sides ?? work.Sides, Blades = slots.Blades ?? work.Blades } : slots;
        }

        var region = PlaceReader.Of(work.Zone!.Value);
        return region.Length > 0 && region != PlaceReader.Of(slots.Zone ?? Reeds.Zone.WholeReed) && (segment.HasWord("it") || segment.HasWord("there")) && segment.Find(Cat.Quality) is { } quality && FindingTable.Kind(new Mention { Zone = work.Zone }, quality.Value) is { } kind
            ? slots with { Kind = kind, Zone = work.Zone, Sides = slots.Sides ?? work.Sides, Blades = slots.Blades ?? work.Blades }
            : slots;
    }
}
