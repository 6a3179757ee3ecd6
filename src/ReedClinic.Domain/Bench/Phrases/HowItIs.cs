using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Rather closed at the tip”, “pressed flat in the post”, “fishskin on already”, “done for now”: how it is or came, and no work, and nothing worn out.</summary>
internal static class HowItIs
{
    private static readonly HashSet<string> Beside = [.. "still it it's is 's a bit little touch rather quite very pretty fairly somewhat slightly really far at the tip end mouth front now today and this one reed opening".Split(' ')];

    private static readonly HashSet<string> Degrees = ["rather", "quite", "very", "pretty", "fairly", "somewhat", "slightly", "really", "bit", "touch", "little"];

    private static readonly HashSet<string> Fallen = ["fall", "falls", "fell", "slope", "slopes", "taper", "tapers", "centre", "middle", "sides", "side", "light", "corners", "corner", "thins", "thinner", "away", "tip", "shape", "graded"];

    private static readonly Doubt Came = new("kind", "how it came, and no work, so it is kept as a note");

    private static readonly Doubt Made = new("kind", "praise, and of what wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment or EntryKind.Finding, Slots: { Strokes: null, Mm: null } } when Standing(Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last)) is { } step:
                    (draft.Kind, draft.Slots) = (EntryKind.Test, new ReadSlots { Test = TestKind.Opening, Step = step });
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null } } when IsFromAway(said) || IsAlready(said):
                    Spoken.Unmake(draft, Came);
                    break;
                case { Kind: EntryKind.Finding, Slots.Kind: "worn" } when said.HasWord("done") && (said.HasWord("now") || said.HasWord("today")) && !Spoken.HasStem(said, "worn", "play") && !said.Has(Cat.Verb) && PlaceReader.Read(Spoken.Sentence(course, draft)).TrueForAll(place => !place.HasPlace):
                    (draft.Kind, draft.Slots) = (EntryKind.Stopped, ReadSlots.None);
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Finding, Slots.Kind: "tip-falls-to-sides" } when !Spoken.HasAny(Spoken.Sentence(course, draft), Fallen):
                    Spoken.Unmake(draft, Made);
                    break;
                case { Kind: EntryKind.Finding, Slots.Kind: "cork-loose" } when !Spoken.HasStem(said, "cork") && (said.HasWord("tied") || said.HasWord("wrapped") || said.HasWord("wound")):
                    (draft.Slots, draft.HasAside) = (draft.Slots with { Kind = "something-else", Zone = Zone.Thread }, true);
                    draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind" or "zone");
                    break;
            }
        }
    }

    // “Rather closed”, “quite open at the tip”: nobody closed or opened it.
    private static string? Standing(Segment said)
    {
        var at = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(word => said.Word(word) is "closed" or "open", -1);
        if (at <= said.First || said.Asked || !(Degrees.Contains(said.Word(at - 1)) || said.Tokens[at - 1].Is(":")) || !Enumerable.Range(said.First, said.End - said.First).All(word => word == at || said.Tokens[word].Kind is TokenKind.Break || Beside.Contains(said.Word(word)) || said.Word(word).Length == 0))
        {
            return null;
        }

        var far = said.Word(at - 1) is "very" or "really";
        return said.Word(at) is "closed" ? far ? "closed" : "a little closed" : far ? "very open" : "a little open";
    }

    // “Pressed flat in the post”.
    private static bool IsFromAway(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "in" or "by" && said.Word(at + 1) is "the" or "its" or "her" or "his" or "my" && said.Word(at + 2) is "post" or "mail" or "parcel" or "box" or "case" or "bag" or "maker" or "envelope" or "student" or "pupil") && !said.HasWord("i") && !Spoken.HasStem(said, "put", "dry", "dri", "rest");

    // “Fishskin on already”.
    private static bool IsAlready(Segment said) => said.HasWord("already") && said.HasWord("on") && !said.HasWord("i") && !said.HasWord("we") && !said.Has(Cat.Verb);
}
