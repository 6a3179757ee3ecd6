namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Two off the tip to even it up”, “two strokes left, one right”, “it’s gone too thin”, “off the very edge”: what was done where, what it left, and what is only wished for next.</summary>
internal static class ToldOfWork
{
    private static readonly string[] Clips = ["clip", "snip", "trim", "cut", "nip", "chop", "guillotin", "length", "shorten"];

    private static readonly HashSet<string> Turned = [.. "it it's is 's has that that's gone got now a bit too thin so there and far and but left me is".Split(' ')];

    private static readonly HashSet<string> Counting = [.. "a and one two three four five six off on from the of side but stroke strokes only just in".Split(' ')];

    private static readonly HashSet<string> Well = ["cleanly", "neatly", "nicely", "beautifully", "evenly", "well", "carefully", "smoothly"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var whole = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "thin-whole-tip" or "thin-tip-sides" or "open-windows" or "thin-corners" or "take-heart-sides" or "something-else", Strokes: not null } } when ToEven(whole):
                    draft.Slots = draft.Slots with { Kind = "even-up" };
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "clip-hair" or "clip", Mm: null } } when OffTheEdge(whole):
                    draft.Slots = draft.Slots with { Kind = "thin-edge" };
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null, Words: null, Zone: { } zone } } when IsPraised(course, draft):
                    (draft.Kind, draft.Slots, draft.HasAside) = (EntryKind.Finding, new ReadSlots { Kind = "something-else", Character = FindingCharacter.Strength, Zone = zone, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides }, true);
                    draft.Doubts.Clear();
                    draft.Doubts.Add(new Doubt("kind", "taken for praise of how it is scraped, and no work"));
                    break;
                case { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.NeedsPlayingIn } when IsWanted(whole):
                    Spoken.Unmake(draft, new Doubt("kind", "what is wished for later, and no verdict, so it is kept as a note"));
                    break;
            }
        }

        for (var at = 1; at < course.Segments.Count; at++)
        {
            if (course.Segments[at] is { Asked: false } segment && course.Segments[at - 1].Sentence == segment.Sentence)
            {
                Left(course, at, segment);
                OtherSide(course, at, segment);
                Next(course, at, segment);
            }
        }
    }

    private static bool ToEven(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "to" && whole.Word(at + 1) is "even" && whole.Word(at + 2) is "it" or "them" or "things" or "that" or "up" or "out") && !whole.Has(Cat.Not);

    private static bool OffTheEdge(Segment whole) => !Spoken.HasStem(whole, Clips) && Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "off" or "from" && whole.Word(at + 1) is "the" or "its" && (whole.Word(at + 2) is "edge" || whole.Word(at + 2) is "very" or "extreme" or "front" && whole.Word(at + 3) is "edge"));

    // “Windows scraped cleanly, nice work”: somebody else’s.
    private static bool IsPraised(Course course, Draft draft)
    {
        var sentence = Spoken.Sentence(course, draft);
        var own = course.Segments[draft.Head];
        return !sentence.HasWord("i") && !sentence.HasWord("we") && PlaceReader.Read(own) is [{ HasPlace: true } place, ..] && own.Find(Cat.Verb) is { } verb && place.End <= verb.First && own.Tokens[verb.First].Text.EndsWith("ed", StringComparison.Ordinal) && Spoken.HasAny(own, Well)
            && Enumerable.Range(sentence.First, sentence.End - sentence.First).Any(at => sentence.Word(at) is "nice" or "good" or "lovely" or "neat" or "fine" or "tidy" && sentence.Word(at + 1) is "work" or "job" or "knifework" || sentence.Word(at) is "well" or "nicely" && sentence.Word(at + 1) is "done");
    }

    private static bool IsWanted(Segment whole) => (whole.HasWord("see") || whole.HasWord("hear") || whole.HasWord("try")) && whole.HasWord("again") && Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "'d" or "would" && whole.Word(at + 1) is "want" or "like" or "love");

    // “I’ve taken too much off the left corner, it’s gone too thin”.
    private static void Left(Course course, int at, Segment segment)
    {
        if (segment.HasWord("thin") && segment.HasWord("too") && segment.Word(segment.First) is "it" or "it's" or "that" or "that's" or "and" or "now" or "so" && Enumerable.Range(segment.First, segment.End - segment.First).All(word => segment.Tokens[word].Kind is TokenKind.Break || Turned.Contains(segment.Word(word)))
            && course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is var over && (over is null || over.Head < at) && course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Sentence == segment.Sentence) is { Kind: EntryKind.Adjustment, Slots: { Zone: { } zone } slots } && slots.Words is "too much"
            && FindingTable.Kind(new Mention { Zone = zone }, "thin") is { } kind && Alone.Of(course, at) is { } draft)
        {
            (draft.Kind, draft.Slots) = (EntryKind.Finding, new ReadSlots { Kind = kind, Character = FindingCharacter.Fault, Zone = zone, Blades = slots.Blades, Sides = slots.Sides, Arose = Arose.CausedByTheWork });
            draft.Doubts.Clear();
        }
    }

    // “Two strokes left, one right”.
    private static void OtherSide(Course course, int at, Segment segment)
    {
        if (course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Sentence == segment.Sentence) is not { Kind: EntryKind.Adjustment, Slots: { Strokes: not null, Sides: { } side } slots } first || PlaceReader.Read(segment) is not [{ HasPlace: false, Part: null, OneBlade: null, OneSide: { } other } part] || other == side || first.Last < at && course.Drafts.Exists(draft => draft.First <= at && at <= draft.Last && draft.Kind is not EntryKind.Note)
            || AmountReader.Read(segment, segment.First, segment.End) is not { Strokes: { } strokes } amount || !Enumerable.Range(segment.First, segment.End - segment.First).All(word => segment.Tokens[word].Kind is TokenKind.Break or TokenKind.Number || Counting.Contains(segment.Word(word)) || part.First <= word && word < part.End || amount.First <= word && word < amount.End) || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Adjustment, slots with { Strokes = strokes, Sides = other });
        draft.Doubts.Clear();
        draft.Doubts.AddRange(first.Doubts);
    }

    // “Leave the heart, work on the back next”: what comes next is a remark.
    private static void Next(Course course, int at, Segment segment)
    {
        if (segment.Word(segment.First) is "work" or "do" or "and" or "then" or "try" or "start" && segment.HasWord("next") && PlaceReader.Read(segment).Exists(place => place.HasPlace) && course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { Kind: EntryKind.LeaveAlone } over && over.Head < at)
        {
            _ = Alone.Of(course, at);
        }
    }
}
