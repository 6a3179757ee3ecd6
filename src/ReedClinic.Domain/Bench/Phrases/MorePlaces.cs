using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Scraped the tip, the heart”: a place behind the comma in another part of the reed was worked on, too, and is an entry of its own.</summary>
internal static class MorePlaces
{
    private static readonly HashSet<string> Between = ["the", "and", "then", "also", "a", "both", "plus", ""];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots.Zone: { } zone } && PlaceReader.Of(zone).Length > 0 && draft.Slots.Kind is not ("clip" or "clip-hair" or "soak" or "lengthen-tip" or "square-tip")).ToList())
        {
            var (to, last) = (course.Drafts.IndexOf(draft), draft.Last);
            foreach (var place in Listed(course, draft))
            {
                var at = Enumerable.Range(draft.First, last - draft.First + 1).First(segment => place.First < course.Segments[segment].End);
                if (at > draft.Head && DeedTable.Kind(draft.Verb ?? "take", Key(place)) is { } kind)
                {
                    course.Drafts[to].Last = at - 1;
                    course.Drafts.Insert(++to, Another(draft, place, kind, at, last));
                }
            }

            Then(course, course.Drafts[to]);
        }
    }

    // “…, then the heart”, “…, the heart too”, kept as a remark or guessed to be a fault.
    private static void Then(Course course, Draft draft)
    {
        var at = course.Drafts.IndexOf(draft) + 1;
        if (at < course.Drafts.Count && course.Drafts[at] is { Kind: EntryKind.Note or EntryKind.Finding } note && (note.Kind is EntryKind.Note || note.Doubts.Exists(doubt => doubt.Slot is "kind")) && note.First == draft.Last + 1 && note.First == note.Last && note.Sentence == draft.Sentence && course.Segments[note.First] is { Joint: "then" or "and" or ",", Asked: false } segment
            && Enumerable.Range(segment.First, segment.End - segment.First).All(word => PlaceSaidAfter.IsOfPlace(segment, word) || Between.Contains(segment.Word(word)) || segment.Word(word) is "too" or "as" or "well") && PlaceReader.Read(segment).Where(mention => mention.HasPlace).ToList() is [var place]
            && PlaceReader.Of(place.Usual!.Value) is { Length: > 0 } region && region != PlaceReader.Of(draft.Slots.Zone!.Value) && DeedTable.Kind(draft.Verb ?? "take", Key(place)) is { } kind)
        {
            course.Drafts[at] = Another(draft, place, kind, note.First, note.Last);
        }
    }

    /// <summary>The word for a place in the table of deeds.</summary>
    internal static string Key(Mention place) => (place.Region, place.OneSide) switch
    {
        ("heart", not null) => nameof(Zone.HeartSides),
        ("tip", not null) => nameof(Zone.TipSides),
        ({ } region, _) => region,
        _ => place.Zone?.ToString() ?? "-",
    };

    private static Draft Another(Draft draft, Mention place, string kind, int at, int last)
    {
        var other = new Draft
        {
            Kind = EntryKind.Adjustment,
            Slots = draft.Slots with { Kind = kind, Zone = place.Usual, Blades = place.OneBlade ?? draft.Slots.Blades, Sides = place.OneSide, Sake = null },
            Head = at,
            First = at,
            Last = last,
            Sentence = draft.Sentence,
            Verb = draft.Verb,
            ZoneSaid = true,
            PlaceCarried = true,
        };
        other.Doubts.Add(Doubt.Done);
        return other;
    }

    // Places in a row behind the one that is the deed’s own, with nothing said of them.
    private static List<Mention> Listed(Course course, Draft draft)
    {
        var whole = Spoken.Whole(course, draft);
        var places = PlaceReader.Read(whole).Where(mention => mention.HasPlace).ToList();
        var own = places.FindIndex(mention => PlaceReader.Of(mention.Usual!.Value) == PlaceReader.Of(draft.Slots.Zone!.Value));
        if (own < 0 || places.Count == own + 1 || GoesOn(course, draft))
        {
            return [];
        }

        List<Mention> listed = [];
        var end = places[own].End;
        foreach (var place in places.Skip(own + 1))
        {
            if (!Enumerable.Range(end, place.First - end).All(at => whole.Tokens[at].Text is "," || Between.Contains(whole.Word(at)) || whole.Covered(at, Cat.Filler)))
            {
                break;
            }

            listed.Add(place);
            end = place.End;
        }

        var regions = listed.Select(place => PlaceReader.Of(place.Usual!.Value)).Prepend(PlaceReader.Of(draft.Slots.Zone!.Value)).ToList();
        return IsEnd(whole, end) && regions.All(region => region.Length > 0) && regions.Distinct().Count() == regions.Count ? listed : [];
    }

    // A mark, the end, “too”, or how much it was.
    private static bool IsEnd(Segment whole, int at) => whole.Word(at) is "too" or "also" && (at + 1 >= whole.End || whole.Tokens[at + 1].Kind is TokenKind.Break) || at >= whole.End || whole.Tokens[at].Kind is TokenKind.Break && (at + 1 >= whole.End || AmountReader.Read(whole, at + 1, whole.End) is not null) || AmountReader.Read(whole, at, whole.End) is { } said && said.First == at;

    // “Scraped the tip, the heart and windows look fine”: of those, something else is said.
    private static bool GoesOn(Course course, Draft draft) => draft.Last + 1 < course.Segments.Count && course.Segments[draft.Last + 1] is var next && next.Sentence == course.Segments[draft.Last].Sentence
        && course.Segments[draft.Last] is var last && last.Tokens[last.End - 1].Kind is not TokenKind.Break && PlaceReader.Read(next).Exists(mention => mention.First <= next.First + 2);
}
