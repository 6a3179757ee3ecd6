namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Dusted the tip, the heart and the sides, upper only”: each place in a row was worked on, and what stands behind them holds for all.</summary>
internal static class PlacesInARow
{
    private static readonly HashSet<string> Between = ["the", "and", "then", "also", "a", "both", "plus", "&", "+", ""];

    private static readonly HashSet<string> Behind = ["on", "only", "just", "the", "of", "at", "in", "both", "each", "every", "all", "a", "side", "blade", "blades", "too", "also", "as", "well", "evenly", "equally", "alike", "now", "and", "not", "much", "no", "more", "than", "that", "per", "place", "apiece"];

    private static readonly HashSet<string> OfOnePlace = ["clip", "clip-hair", "soak", "lengthen-tip", "square-tip", "blend", "define-tip", "something-else"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots: { Zone: not null, Kind: { } kind } } && !OfOnePlace.Contains(kind)).ToList())
        {
            var (last, more) = Reach(course, draft);
            var whole = Spoken.Whole(course, draft.First, last);
            if (whole.Asked || Listed(whole, draft) is not { Count: > 1 } places || Tail(whole, places[^1].End) is not { } tail || GoesOn(course, last, tail))
            {
                continue;
            }

            var (blade, side) = (tail.Blade ?? OnAll(whole, places), tail.Side);
            var told = places.ConvertAll(place => place with { Blade = place.Blade ?? blade, Side = place.Side ?? side });
            var kinds = told.ConvertAll(place => DeedTable.Kind(draft.Verb ?? "take", MorePlaces.Key(place)));
            if (kinds.TrueForAll(kind => kind is not null))
            {
                var amount = AmountReader.Read(whole, places[^1].End, whole.End);
                more.ForEach(note => course.Drafts.Remove(note));
                Put(course, draft, last, [.. told.Select((place, at) => (Of(draft, place, kinds[at]!, amount), place.First))]);
            }
        }
    }

    // Remarks right behind it that go on with the row.
    private static (int Last, List<Draft> More) Reach(Course course, Draft draft)
    {
        var (last, more) = (draft.Last, new List<Draft>());
        while (course.Drafts.Find(next => next.First == last + 1 && next.Sentence == draft.Sentence) is { Kind: EntryKind.Note } note && PlaceReader.Read(course.Segments[note.First]) is { Count: > 0 })
        {
            more.Add(note);
            last = note.Last;
        }

        return (last, more);
    }

    private static List<Mention> Listed(Segment whole, Draft draft)
    {
        List<Mention> listed = [];
        foreach (var read in PlaceReader.Read(whole).Where(mention => mention.HasPlace || mention is { Part: "side" } && whole.Word(mention.First) is "sides"))
        {
            var joint = listed.Count == 0 ? [] : Enumerable.Range(listed[^1].End, read.First - listed[^1].End).Select(whole.Word).ToList();
            var place = read.HasPlace ? read : listed.Count > 0 && PlaceReader.Named("side", PlaceReader.Of(listed[^1].Usual!.Value)) is { } side ? read with { Zone = side, Part = null } : null;
            if (place is null || joint.Exists(word => word is not "," && !Between.Contains(word) && whole.Tokens[whole.First].Text != word))
            {
                break;
            }

            // “The tip, the left corner”: where in it, and no place more.
            if (listed.Count > 0 && listed[^1] is { Zone: null } && PlaceReader.Of(listed[^1].Usual!.Value) == PlaceReader.Of(place.Usual!.Value) && !joint.Contains("and"))
            {
                return [];
            }

            if (listed.Exists(other => other.Usual == place.Usual) || listed.Count == 0 && PlaceReader.Of(place.Usual!.Value) != PlaceReader.Of(draft.Slots.Zone!.Value))
            {
                return [];
            }

            listed.Add(place);
        }

        return listed;
    }

    // Which blade and side, and how much: nothing else.
    private static Mention? Tail(Segment whole, int end)
    {
        var said = new Mention();
        for (var at = end; at < whole.End; at++)
        {
            if (AmountReader.Read(whole, at, whole.End) is { } amount && amount.First == at && amount.End > at)
            {
                at = amount.End - 1;
            }
            else if (whole.Tokens[at].Kind is not TokenKind.Break && !Behind.Contains(whole.Word(at)) && whole.Word(at).Length > 0 && !IsWhich(whole, at))
            {
                return null;
            }
        }

        foreach (var which in PlaceReader.Read(whole).Where(mention => mention.First >= end))
        {
            said = said with { Blade = PlaceSaidAfter.Either(said.Blade, which.Blade), Side = PlaceSaidAfter.Either(said.Side, which.Side), First = 1 };
        }

        return Enumerable.Range(end, whole.End - end).Any(at => whole.Word(at) is "not") ? whole.HasWord("more") || whole.HasWord("much") ? said : null : said;
    }

    // “The tip, the heart and the windows on the upper”: a blade that is said once, and last.
    private static string? OnAll(Segment whole, List<Mention> places) => places.Count > 2 && places.FindAll(place => place.Blade is not null) is [var one] && one == places[^1] && Enumerable.Range(one.First + 1, one.End - one.First - 1).Any(at => whole.Word(at) is "on") ? one.Blade : null;

    private static bool IsWhich(Segment whole, int at) => whole.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Side or Cat.Blade or Cat.Filler) || whole.Word(at) is "left" or "right";

    // “… and windows look fine”: of those, something else is said.
    private static bool GoesOn(Course course, int last, Mention tail) => tail.First == 0 && last + 1 < course.Segments.Count && course.Segments[last + 1] is var next && next.Sentence == course.Segments[last].Sentence
        && course.Segments[last].Tokens[course.Segments[last].End - 1].Kind is not TokenKind.Break && course.Drafts.Find(draft => draft.First == last + 1) is not { Kind: EntryKind.Adjustment } && PlaceReader.Read(next).Exists(mention => mention.First <= next.First + 2);

    private static ReadSlots Of(Draft draft, Mention place, string kind, SaidAmount? amount)
    {
        var slots = draft.Slots with { Kind = kind, Zone = place.Usual, Blades = place.Blade is null ? draft.Slots.Blades : place.OneBlade, Sides = place.OneSide, Sake = null };
        return amount is { } said && slots is { Strokes: null, Mm: null, Words: null } ? slots with { Strokes = said.Strokes, Mm = said.Mm, Words = said.Words } : slots;
    }

    private static void Put(Course course, Draft draft, int last, List<(ReadSlots Slots, int Token)> row)
    {
        var to = course.Drafts.IndexOf(draft);
        course.Drafts.RemoveAt(to);
        var starts = row.ConvertAll(one => Math.Max(draft.Head, Enumerable.Range(draft.First, last - draft.First + 1).First(segment => one.Token < course.Segments[segment].End)));
        for (var at = 0; at < row.Count; at++)
        {
            var first = at == 0 ? draft.First : starts[at];
            var one = new Draft { Kind = EntryKind.Adjustment, Slots = row[at].Slots, Head = at == 0 ? draft.Head : first, First = first, Last = Math.Max(first, at + 1 < row.Count ? starts[at + 1] - 1 : last), Sentence = draft.Sentence, Verb = draft.Verb, ZoneSaid = true, PlaceCarried = true };
            one.Doubts.Add(Doubt.Done);
            course.Drafts.Insert(to + at, one);
        }
    }
}
