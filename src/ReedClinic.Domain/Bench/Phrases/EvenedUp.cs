namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Two strokes off the lower tip to even it up”, “clipped, squared and papered the edge”: work whose place or last part was lost behind “to” or “and”.</summary>
internal static class EvenedUp
{
    private static readonly HashSet<string> Took = [.. "took take taken taking i just and then have 've only another now so".Split(' ')];

    private static readonly HashSet<string> Joining = ["and", "then", "i", "just", ",", "also", "finally", "lastly"];

    private static readonly Doubt Sides = new("kind", "unsure whether the sides were rubbed or sealed, so it is kept as a note");

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            Even(course, at);
            Papered(course, at);
        }
    }

    private static void Even(Course course, int at)
    {
        var segment = course.Segments[at];
        if (at + 1 >= course.Segments.Count || course.Segments[at + 1] is not { Joint: "" or "," } next || next.Sentence != segment.Sentence || segment.Asked || !IsToEven(next)
            || !segment.Has(Cat.Off) || AmountReader.Read(segment, segment.First, segment.End) is not { Strokes: { } strokes } amount || !Enumerable.Range(segment.First, amount.First - segment.First).All(word => Took.Contains(segment.Word(word)) || segment.Word(word).Length == 0)
            || segment.Items.Concat(next.Items).Any(item => item.Cat is Cat.Not or Cat.Plan or Cat.Cond or Cat.Other or Cat.May)
            || course.Drafts.Exists(other => other.First <= at + 1 && other.Last >= at && !(other.First >= at && other.Last <= at + 1 && other.Kind is EntryKind.Adjustment or EntryKind.Note)))
        {
            return;
        }

        var mention = PlaceReader.Read(segment).Concat(PlaceReader.Read(next.Part(next.First, next.IndexOfWord("to")))).Aggregate(new Mention(), (all, one) => all with { Zone = one.Zone ?? all.Zone, Region = one.Region ?? all.Region, Blade = one.Blade ?? all.Blade, Side = one.Side ?? all.Side });
        if (!mention.HasPlace)
        {
            return;
        }

        course.Drafts.RemoveAll(other => other.First >= at && other.Last <= at + 1);
        if (Alone.Of(course, at) is { } draft)
        {
            course.Left.RemoveAll(left => left == at + 1);
            (draft.Kind, draft.Slots, draft.Last) = (EntryKind.Adjustment, new ReadSlots { Kind = "even-up", Zone = mention.Usual, Blades = mention.OneBlade, Sides = mention.OneSide, Strokes = strokes }, at + 1);
            draft.Doubts.Clear();
        }
    }

    private static bool IsToEven(Segment next) => next.IndexOfWord("to") is >= 0 and var to && to <= next.First + 2 && next.Word(to + 1) is "even" or "level" or "balance" && next.Word(to + 2) is "it" or "them" or "things" or "that" or "up" or "out";

    // “… and papered the edge”, “… and polished the tip”.
    private static void Papered(Course course, int at)
    {
        var segment = course.Segments[at];
        var verb = segment.First;
        while (Joining.Contains(segment.Word(verb)) || segment.Word(verb).Length == 0 && verb < segment.End - 1)
        {
            verb++;
        }

        if (segment.Asked || segment.Word(verb) is not ("papered" or "sanded" or "polished") || segment.Items.Any(item => item.Cat is Cat.Not or Cat.Plan or Cat.Cond or Cat.Other))
        {
            return;
        }

        var over = course.Drafts.Find(draft => draft.First <= at && at <= draft.Last);
        var places = PlaceReader.Read(segment);
        if (over is { Kind: EntryKind.Adjustment, Slots.Kind: "seal-sides" } && over.Head == at && segment.Word(verb) is "papered")
        {
            Spoken.Unmake(over, Sides);
        }
        else if ((over is null || over.Head < at && over.Kind is EntryKind.Adjustment && over.Slots.Kind is not "smooth-edge" || over.Kind is EntryKind.Note && over.Head == at)
            && places.TrueForAll(place => place.Usual is Reeds.Zone.TipEdge or Reeds.Zone.TipSides || !place.HasPlace) && places.Exists(place => place.HasPlace) && Alone.Of(course, at) is { } draft)
        {
            (draft.Kind, draft.Slots) = (EntryKind.Adjustment, new ReadSlots { Kind = "smooth-edge", Zone = Reeds.Zone.TipEdge });
            draft.Doubts.Clear();
            draft.Doubts.Add(Doubt.Done);
        }
    }
}
