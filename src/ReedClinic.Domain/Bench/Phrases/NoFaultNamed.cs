namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Scraped down the back from the collar, four strokes a channel”, “steeper ramp on the left please”, “catch where the bark ends”: work isn’t a fault, a wish isn’t one, and a catch that is felt is no work.</summary>
internal static class NoFaultNamed
{
    private static readonly Doubt Wish = new("kind", "it is wished for, so it is kept as a note");

    private static readonly Doubt Deed = new("kind", "unsure what was done and where, so it is kept as a note");

    internal static void Keep(Course course)
    {
        for (var at = course.Drafts.Count - 1; at >= 0; at--)
        {
            var draft = course.Drafts[at];
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Relation: null, Character: FindingCharacter.Fault } } when IsDeed(said):
                    if (at + 1 < course.Drafts.Count && course.Drafts[at + 1] is { Kind: EntryKind.Adjustment } next && next.Sentence == draft.Sentence && next.First == draft.Last + 1)
                    {
                        (next.First, next.HasAside) = (draft.First, true);
                        course.Drafts.RemoveAt(at);
                    }
                    else
                    {
                        Spoken.Unmake(draft, Deed);
                    }

                    break;
                case { Kind: EntryKind.Finding } when said.HasWord("please"):
                    Spoken.Unmake(draft, Wish);
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null, Words: null } } when IsCatch(said):
                    draft.Kind = EntryKind.Finding;
                    draft.Slots = new ReadSlots { Kind = "bumps", Character = FindingCharacter.Fault, Zone = draft.Slots.Zone, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides };
                    draft.Doubts.Clear();
                    draft.Doubts.Add(new Doubt("kind", "unsure which finding was meant"));
                    break;
            }
        }
    }

    // “Scraped down the back”, “got rid of the wall”: it begins with what was done, and nothing in it says how the reed is.
    private static bool IsDeed(Segment said) => !said.Items.Any(item => item.Is(Cat.Quality) && item.First > said.First) && !said.HasWord("too") && (said.Word(said.First) is "scraped" or "shaved" or "skimmed" or "dusted" or "thinned" or "filed" or "sanded" && said.Word(said.First + 1) is not ("away" or "off" or "through" or "thin" or "out")
        || said.IndexOfWord("rid") is >= 0 and var at && said.Word(at + 1) is "of" && said.Word(at - 1) is "got" or "getting");

    // “A catch on the left”, and nobody caught anything.
    private static bool IsCatch(Segment said) => said.Word(said.First) is "catch" or "catches" || said.Word(said.First) is "a" or "slight" or "little" && said.Word(said.First + 1) is "catch";
}
