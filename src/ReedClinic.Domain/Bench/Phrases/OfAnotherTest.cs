namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Reedy, lots of edge”, “pops out on the attack”, “closes at the left corner first”, “the octave’s wide on A”, “blows free now”: what is heard or seen is told of its own test, and no best word is made of a bad one.</summary>
internal static class OfAnotherTest
{
    private static readonly string[] Edgy = ["edge", "edgy", "bright", "reedy", "buzz", "lively", "brilliant", "piercing"];

    private static readonly string[] Bad = ["pop", "explo", "heav", "dead", "thud", "bump", "spit", "splat", "burst", "lurch", "bang", "jump", "crack", "scoop"];

    private static readonly HashSet<string> OfTheStaff = ["octave", "octaves", "space", "ledger", "staff", "stave", "register", "fifth", "fifths", "fork", "forked", "trill"];

    private static readonly string[] Crows = ["crow", "croak", "cawed", "rattl", "peep", "squawk"];

    private static readonly Doubt Played = new("test", "a note that was played, and no crow: which test it was wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Depth, Pitch: null } slots } when Spoken.HasStem(said, Edgy) && !Spoken.HasStem(said, "thin", "hollow", "full", "deep", "depth", "bottom", "body"):
                    Spoken.Unscale(draft, slots with { Test = TestKind.Edge }, "how edgy is said in its own words, so they are kept");
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Edge, Step: "right" } slots } when Spoken.HasStem(said, "lots", "plenty", "loads", "edgy", "buzz", "piercing", "shrill"):
                    Spoken.Unscale(draft, slots, "how edgy is said in its own words, so they are kept");
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.TonguedStarts, Step: "clean every time" or "mostly clean" } slots } when Spoken.HasStem(said, Bad) && !said.Has(Cat.Not) && !said.HasWord("no") && !said.HasWord("gone"):
                    Spoken.Unscale(draft, slots, "no word of its scale was said, so its words are kept");
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Effort, Step: "a little too easy" or "far too easy" } slots } when Spoken.HasStem(said, "free") && !said.HasWord("too") && !said.HasWord("hardly"):
                    Spoken.Unscale(draft, slots, "how freely it blows is said in its own words, so they are kept");
                    break;
                case { Kind: EntryKind.Test, Slots.Test: TestKind.Crow } when Spoken.HasAny(said, OfTheStaff) && !Spoken.HasStem(said, Crows) && (PitchReader.NotesIn(said).Count > 0 || said.HasWord("ledger")) && !said.HasWord("two") && !said.HasWord("both"):
                    Spoken.Unmake(draft, Played);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Opening } } or { Kind: EntryKind.Finding, Slots: { Kind: "tip-line-slanted", Relation: null } } or { Kind: EntryKind.Finding, Slots: { Kind: "centre-closes-first", Sides: not null } } when ClosesFirst(said):
                    draft.Kind = EntryKind.Test;
                    Spoken.Unscale(draft, new ReadSlots { Test = TestKind.ClosingOrder }, "what closes first is said in its own words, so they are kept");
                    break;
            }
        }
    }

    // “Closes at the left corner first, right stays open”, “tip closed unevenly, left first”.
    private static bool ClosesFirst(Segment said) => Spoken.HasStem(said, "clos", "meet", "shut") && (said.HasWord("first") || said.HasWord("unevenly") || said.IndexOfWord("before") is >= 0 and var at && said.Word(at + 1) is "the" or "right" or "left");
}
