using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Slipped and scored the cane behind the tip”: a mark that the knife left where it is said to be, by whoever works here; a score is no ragged edge and no thin back.</summary>
internal static class SlippedKnife
{
    private static readonly HashSet<string> Scores = ["scored", "score", "scores", "gouged", "scratched", "scratch", "gashed", "gash", "groove"];

    private static readonly string[] Other = ["edge", "corner", "rag", "rough", "fray", "crack", "split", "tore", "torn", "thin", "deep", "through"];

    private static readonly HashSet<string> Theirs = ["student", "she", "he", "they", "pupil", "somebody", "someone", "came", "arrived", "blades"];

    private static readonly Doubt Dug = new("kind", "unsure whether the knife did this by mistake, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null } } when !said.Asked:
                    Found(draft, said);
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null, Kind: not "realign" } } when said.IndexOfWord("slipped") is >= 0 and var slipped && said.Word(slipped + 1) is not ("the" or "a" or "it" or "in" or "some"):
                    Spoken.Unmake(draft, Dug);
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null } } when said.IndexOfWord("dug") is >= 0 and var dug && said.Word(dug + 1) is "in" or "into":
                    Spoken.Unmake(draft, Dug);
                    break;
            }
        }
    }

    private static void Found(Draft draft, Segment said)
    {
        var scored = Spoken.HasAny(said, Scores);
        if (scored && draft.Slots.Kind is "tip-edge-ragged" or "tip-cracked" or "back-thin" or "spine-scraped" or "heart-thin" or "tip-thin" && !Spoken.HasStem(said, Other))
        {
            var zone = IsBehindTheTip(said) ? Zone.Transition : draft.Slots.Zone is Zone.TipEdge ? Zone.TipSides : draft.Slots.Zone;
            draft.Slots = draft.Slots with { Kind = "something-else", Zone = zone };
            draft.HasAside = true;
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind" or "zone");
        }

        if (draft.Slots.Arose is Arose.CausedByTheWork && Spoken.HasAny(said, Theirs) && !said.HasWord("i") && said.HasWord("slipped"))
        {
            draft.Slots = draft.Slots with { Arose = null };
        }

        if (draft.Slots.Arose is null && IsMine(said) && (scored || said.Items.Any(item => item.Cat is Cat.Quality && item.Value is "cut" or "broken" or "cracked")))
        {
            draft.Slots = draft.Slots with { Arose = Arose.CausedByTheWork };
        }
    }

    private static bool IsBehindTheTip(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "behind" && (said.Word(at + 1) is "tip" || said.Word(at + 2) is "tip"));

    // “Slipped and …”, “the knife slipped, …”: nobody else’s knife.
    private static bool IsMine(Segment said)
    {
        var at = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(word => said.Word(word) is "slipped" or "skidded" or "jumped" or "skated", -1);
        return at >= 0 && !Spoken.HasAny(said, Theirs) && !said.Has(Cat.Not) && (at == said.First || said.Word(at - 1) is "knife" or "i" or "just" or "it" or "and" or "hand" or "oops" || said.Tokens[at - 1].Kind is TokenKind.Break);
    }
}
