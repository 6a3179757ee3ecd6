namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Stiff as a board”, “light as a feather”, “tip thin as paper”: a comparison says how much, and of no part of the reed it says how it blows.</summary>
internal static class Similes
{
    private static readonly HashSet<string> Hard = ["stiff", "hard", "tough", "rigid", "heavy", "solid", "firm"];

    private static readonly HashSet<string> Easy = ["light", "easy", "soft", "free", "floppy", "limp"];

    private static readonly HashSet<string> Faulty = ["thick", "thin", "stiff", "soft", "hard", "rough", "ragged", "crooked", "wide", "narrow", "slack", "loose", "weak", "floppy", "limp"];

    private static readonly HashSet<string> Beside = [.. "it is 's this that one reed the plays play blows blow feels feel playing blowing still and but so as now just a bit to all on me in here goes seems".Split(' ')];

    private static readonly Doubt HowMuch = new("step", "a comparison: taken for very much so");

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            var segment = course.Segments[at];
            if (segment.Asked || segment.Has(Cat.Not) || segment.Has(Cat.Plan) || segment.Has(Cat.Cond) || At(segment) is not (var said and >= 0))
            {
                continue;
            }

            var word = segment.Word(said);
            if (course.Drafts.Find(draft => draft.Head == at) is { Kind: EntryKind.Finding, Slots: { Degree: null, Character: FindingCharacter.Fault } } found && Faulty.Contains(word) && PlaceReader.Read(segment).Exists(place => place.HasPlace))
            {
                found.Slots = found.Slots with { Degree = "strong" };
            }
            else if ((Hard.Contains(word) || Easy.Contains(word)) && IsPlain(segment, said) && !PlaceReader.Read(segment).Exists(place => place.HasPlace) && Own(course, at) is { } draft)
            {
                (draft.Kind, draft.Slots, draft.HasAside) = (EntryKind.Test, new ReadSlots { Test = TestKind.Effort, Step = Hard.Contains(word) ? "far too hard" : "far too easy" }, true);
                draft.Doubts.Clear();
                draft.Doubts.Add(HowMuch);
            }
        }
    }

    private static Draft? Own(Course course, int at) => course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) switch
    {
        { Kind: EntryKind.Finding or EntryKind.Note or EntryKind.Test } over when over.Head == at && over.Last == at => over,
        { } over when over.First == at && over.Head > at => Before(course, over, at),
        not null => null,
        _ => Alone.Of(course, at),
    };

    // It only led up to the entry behind it.
    private static Draft? Before(Course course, Draft over, int at)
    {
        over.First = at + 1;
        return Alone.Of(course, at);
    }

    // “Stiff as a board”, “hard as nails”: where the word stands; -1 where nothing is compared.
    private static int At(Segment segment)
    {
        for (var at = segment.First; at + 2 < segment.End; at++)
        {
            if (segment.Word(at + 1) is "as" && segment.Word(at + 2) is not ("it" or "i" or "the" or "before" or "ever" or "that" or "this" or "you" or "they" or "we" or "he" or "she" or "well" or "usual" or "if" or "though" or "much" or "far" or "can" or "my" or "your" or "in" or "on" or "at" or "yet" or "always" or "possible" or "there" or "was" or "is"))
            {
                return at;
            }
        }

        return -1;
    }

    private static bool IsPlain(Segment segment, int said)
    {
        var thing = segment.Word(said + 2) is "a" or "an" or "any" ? said + 3 : said + 2;
        return thing < segment.End && Enumerable.Range(segment.First, segment.End - segment.First).All(at => at == said || at == thing || at == thing + 1 || segment.Tokens[at].Kind is TokenKind.Break || segment.Word(at).Length == 0 || Beside.Contains(segment.Word(at)) || segment.Covered(at, Cat.Filler) || segment.Word(at) is "an" or "any");
    }
}
