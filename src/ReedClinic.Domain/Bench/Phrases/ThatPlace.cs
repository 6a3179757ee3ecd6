using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Two strokes on that corner”: of several such places the one that was spoken of last; where none was, it is in doubt, and not all of them.</summary>
internal static class ThatPlace
{
    // Of these a reed has several.
    private static readonly HashSet<string> Nouns = ["corner", "ear", "wing", "flank", "window", "channel", "shoulder", "rail", "side"];

    private static readonly Doubt Which = new("sides", "which one wasn’t said, so it is kept as a note: say the blade and the side");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment or EntryKind.Finding or EntryKind.LeaveAlone, Slots: { Zone: not null, Relation: null } }).ToList())
        {
            var segment = course.Segments[draft.Head];
            if (Pointer(segment) is not { } pointer)
            {
                continue;
            }

            OfWindows(draft, segment);
            if (draft.Slots is { Blades: not null, Sides: not null })
            {
                continue;
            }

            if (Spoken(course, draft) is { } place)
            {
                draft.Slots = Filled(draft.Slots, place, pointer is "other" && draft.Slots is { Blades: null, Sides: null });
            }
            else if (draft is { Kind: EntryKind.Adjustment, Slots: { Blades: null, Sides: null, Zone: Zone.TipCorners or Zone.TipSides or Zone.HeartSides or Zone.Windows or Zone.Rails } })
            {
                Unplaced(draft, pointer);
            }
        }
    }

    // “Opened the other window”: cane was taken there, and nothing was squeezed.
    private static void OfWindows(Draft draft, Segment segment)
    {
        if (draft is { Kind: EntryKind.Adjustment, Slots.Kind: "open-squeeze" } && (segment.HasWord("window") || segment.HasWord("channel")))
        {
            draft.Slots = draft.Slots with { Kind = "open-windows", Zone = Zone.Windows };
        }
    }

    // What is shown in the hand is somewhere for certain; what is only pointed back to, and was never named, isn’t.
    private static void Unplaced(Draft draft, string pointer)
    {
        if (pointer is "this")
        {
            draft.HasAside = true;
            draft.Doubts.Add(Which with { Words = "which one wasn’t said: it stands for all of them until the blade and the side are" });
        }
        else
        {
            Phrases.Spoken.Unmake(draft, Which);
        }
    }

    // “That corner”, “the same left window”, “the other side”.
    private static string? Pointer(Segment segment)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            if (segment.Word(at) is "that" or "this" or "same" or "other" && Enumerable.Range(at + 1, 3).Any(noun => Nouns.Contains(segment.Word(noun)) && Enumerable.Range(at + 1, noun - at - 1).All(between => segment.Items.Any(item => item.First <= between && between < item.End && item.Cat is Cat.Side or Cat.Blade or Cat.Zone or Cat.Region or Cat.Part or Cat.Same))))
            {
                return segment.Word(at);
            }
        }

        return null;
    }

    // The place of that kind that was spoken of last, where it was one and not all.
    private static (Blades? Blade, Sides? Side)? Spoken(Course course, Draft draft)
    {
        foreach (var slots in course.Drafts.TakeWhile(other => other != draft).Select(other => other.Slots).Reverse())
        {
            if (slots.Zone is { } zone && IsThere(zone, draft.Slots.Zone!.Value))
            {
                return Single(slots.Blades, slots.Sides);
            }
        }

        return course.Before.Places.FirstOrDefault(place => IsThere(place.Zone, draft.Slots.Zone!.Value)) is { } before
            ? Single(before.Blades is Blades.Both ? null : before.Blades, before.Sides is Sides.Both ? null : before.Sides)
            : null;
    }

    private static (Blades?, Sides?)? Single(Blades? blade, Sides? side) => blade is null && side is null ? null : (blade, side);

    private static bool IsThere(Zone one, Zone other) => one == other || PlaceReader.Of(one) is { Length: > 0 } region && region == PlaceReader.Of(other);

    private static ReadSlots Filled(ReadSlots slots, (Blades? Blade, Sides? Side) place, bool other) => !other
        ? slots with { Blades = slots.Blades ?? place.Blade, Sides = slots.Sides ?? place.Side }
        : slots with { Blades = place.Side is null ? Flip(place.Blade) : place.Blade, Sides = Flip(place.Side) };

    private static Blades? Flip(Blades? blade) => blade switch { Blades.Upper => Blades.Lower, Blades.Lower => Blades.Upper, _ => null };

    private static Sides? Flip(Sides? side) => side switch { Sides.Left => Sides.Right, Sides.Right => Sides.Left, _ => null };
}
