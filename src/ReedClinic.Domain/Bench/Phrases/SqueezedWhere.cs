namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Gentle squeeze top and bottom” presses the faces together and closes, “a squeeze left and right” opens: where it was squeezed says which way it went.</summary>
internal static class SqueezedWhere
{
    private static readonly string[] Squeezes = ["squeeze", "pinch", "press", "nip"];

    private static readonly HashSet<string> Beside = [.. ("gentle light little tiny firm good quick slight small soft careful tender bare short one two three another a an the more very and then so now again just only gave it its this that "
        + "with finger thumb fingers between from on at of to opening mouth oval gap blades reed top bottom above below flats flat faces left right sides side both edges either").Split(' ')];

    private static readonly Doubt Way = new("kind", "top and bottom close it and the sides open it: which way was it squeezed?");

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            Bare(course, at);
        }

        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots.Kind: "open-squeeze" }))
        {
            var said = course.Drafts.Exists(other => other != draft && other.Sentence == draft.Sentence && other.Kind is EntryKind.Adjustment) ? Spoken.Whole(course, draft) : Spoken.Sentence(course, draft);
            if (!IsFaces(said) || said.Has(Cat.Not))
            {
                continue;
            }

            if (IsSides(said) || SaidOtherwise.IsTo(said, "open", "widen"))
            {
                draft.Doubts.Add(Way);
                continue;
            }

            draft.Slots = draft.Slots with { Kind = "close-press" };
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
        }
    }

    // “A gentle squeeze, top and bottom”: no verb, and where.
    private static void Bare(Course course, int at)
    {
        var segment = course.Segments[at];
        var noun = Enumerable.Range(segment.First, segment.End - segment.First).FirstOrDefault(word => Squeezes.Contains(segment.Word(word)), -1);
        if (noun <= segment.First || segment.Asked || !IsBare(segment, noun))
        {
            return;
        }

        var last = !IsFaces(segment) && !IsSides(segment) && at + 1 < course.Segments.Count && course.Segments[at + 1] is { Joint: "," or "and" or "" } next && next.Sentence == segment.Sentence && IsBare(next, -1) ? at + 1 : at;
        var whole = Spoken.Whole(course, at, last);
        var first = at;
        while (first > 0 && course.Segments[first - 1].Sentence == segment.Sentence && IsBare(course.Segments[first - 1], -1))
        {
            first--;
        }

        if (IsFaces(whole) == IsSides(whole) || OfTheWire(course, at) || course.Drafts.Exists(other => other.First <= last && other.Last >= first && !(other.First >= first && other.Last <= last)))
        {
            return;
        }

        course.Drafts.RemoveAll(other => other.First >= first && other.Last <= last);
        if (Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        course.Left.RemoveAll(left => left >= first && left <= last);
        draft.First = first;
        draft.Last = Math.Max(draft.Last, last);
        (draft.Kind, draft.Slots) = (EntryKind.Adjustment, new ReadSlots { Kind = IsFaces(whole) ? "close-press" : "open-squeeze", Zone = Reeds.Zone.Opening, Words = AmountReader.Read(segment, segment.First, segment.End)?.Words });
        draft.Doubts.Clear();
        draft.Doubts.Add(Doubt.Done);
    }

    // “The wire, gentle squeeze top and bottom”: a wire is bent, and the words say which way.
    private static bool OfTheWire(Course course, int at)
    {
        if (at == 0 || course.Segments[at - 1] is not { } wire || wire.Sentence != course.Segments[at].Sentence || !wire.HasWord("wire"))
        {
            return false;
        }

        if (course.Drafts.Find(draft => draft.Head == at) is { } over)
        {
            Spoken.Unmake(over, new Doubt("kind", "unsure whether the wire was squeezed or the opening, so it is kept as a note"));
        }

        return true;
    }

    private static bool IsBare(Segment segment, int noun) => Enumerable.Range(segment.First, segment.End - segment.First).All(at => at == noun || segment.Tokens[at].Kind is TokenKind.Break || Beside.Contains(segment.Word(at)) || segment.Word(at).Length == 0);

    // The flats of the blades, above and below the opening.
    private static bool IsFaces(Segment said) => said.HasWord("flats") || said.HasWord("faces") || Enumerable.Range(said.First, said.End - said.First).Any(at =>
        (said.Word(at), said.Word(at + 1), said.Word(at + 2)) is ("top", "and", "bottom") or ("bottom", "and", "top") or ("above", "and", "below") or ("flat", "sides" or "side", _));

    private static bool IsSides(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at =>
        said.Word(at) is "sides" or "side" && said.Word(at - 1) is not "flat" || said.Word(at) is "edges" or "flanks" or "corners"
        || said.Word(at) is "left" && said.Word(at + 1) is "and" && said.Word(at + 2) is "right");
}
