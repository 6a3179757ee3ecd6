using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Keeps a finding where it was said: “the back is a bit long” is not of the tip, and a blade that is wider is none of the named kinds.</summary>
internal static class Misplaced
{
    private static readonly Doubt Unsure = new("kind", "unsure which finding was meant, so its words are kept");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, Slots: { Kind: not null, Relation: null } }))
        {
            var segment = course.Segments[draft.Head];
            var places = PlaceReader.Read(segment);
            if (draft.Slots.Kind is "blades-uneven" or "left-right-uneven" && IsBroad(segment) && !places.Any(mention => mention.HasPlace))
            {
                Keep(draft, draft.Slots.Zone);
            }
            else if (FindingCatalogue.Find(new FindingKindId(draft.Slots.Kind!))?.Zone is { } usual && places.Where(mention => mention.HasPlace).ToList() is [{ Usual: { } said }] && IsElsewhere(usual, said) && IsOfSize(segment))
            {
                Keep(draft, said);
            }
        }
    }

    private static bool IsBroad(Segment segment) => segment.HasWord("wider") || segment.HasWord("narrower") || segment.HasWord("broader") || segment.HasWord("wide") || segment.HasWord("narrow") || segment.HasWord("broad");

    // A length or a breadth of the one is none of the other.
    private static bool IsOfSize(Segment segment) => segment.HasWord("long") || segment.HasWord("short") || segment.HasWord("longer") || segment.HasWord("shorter") || IsBroad(segment);

    private static bool IsElsewhere(Zone usual, Zone said) => Part(usual) is { } one && Part(said) is { } other && one != other;

    private static string? Part(Zone zone) => zone switch
    {
        Zone.TipEdge or Zone.TipCorners or Zone.TipCentre or Zone.TipSides or Zone.Rooftop => "tip",
        Zone.HeartCentre or Zone.HeartSides or Zone.HeartBottom => "heart",
        Zone.Windows or Zone.WindowBase => "back",
        _ => null,
    };

    private static void Keep(Draft draft, Zone? zone)
    {
        draft.Slots = draft.Slots with { Kind = FindingKindId.SomethingElse.Value, Zone = zone };
        draft.HasAside = true;
        draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
        draft.Doubts.Add(Unsure);
    }
}
