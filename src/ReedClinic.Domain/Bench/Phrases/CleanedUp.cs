using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Cleaned up the right side”, “cleaned up the heart”: cane that was evened there, and nothing inside the tube or about where the tip begins.</summary>
internal static class CleanedUp
{
    private static readonly HashSet<string> Inside = ["inside", "tube", "bore", "eye", "staple", "swab", "cork", "thread", "wire", "tool", "line", "rooftop", "edge", "blades", "bump", "bumps", "ridge", "lump"];

    private static readonly Doubt Evened = new("kind", "“cleaned up” is taken for scraping there until it was even");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots.Kind: "clean-inside" or "define-tip" or "smooth-edge" }))
        {
            var segment = course.Segments[draft.Head];
            if (!IsUp(segment) || Spoken.HasAny(segment, Inside) || PlaceReader.Read(segment) is not { Count: > 0 } places)
            {
                continue;
            }

            var place = places.Find(mention => mention.HasPlace) ?? places[0];
            if (place.HasPlace && place.Usual is Zone.Rooftop or Zone.TipEdge or Zone.Inside or Zone.Eye or Zone.Opening)
            {
                continue;
            }

            var kind = place.HasPlace ? DeedTable.Kind("scrape", MorePlaces.Key(place)) : "even-up";
            if (kind is null || !place.HasPlace && place.OneSide is null && place.OneBlade is null)
            {
                continue;
            }

            draft.Slots = draft.Slots with { Kind = kind, Zone = place.Usual ?? Zone.WholeReed, Blades = place.OneBlade ?? draft.Slots.Blades, Sides = place.OneSide ?? draft.Slots.Sides };
            draft.HasAside = true;
            draft.Doubts.Add(Evened);
        }
    }

    private static bool IsUp(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "clean" or "cleaned" or "cleaning" or "tidied" or "tidy" or "tidying" && (segment.Word(at + 1) is "up" || segment.Tokens.Skip(at).Take(segment.End - at).Any(token => token.Is("up"))));
}
