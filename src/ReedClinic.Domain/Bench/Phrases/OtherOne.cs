using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“…, sorry, the other one”, “then the other one”, “sorry, that’s right”, “no, B flat” after a low note: the other side is meant, what was said is confirmed, and no test is invented.</summary>
internal static class OtherOne
{
    private static readonly HashSet<string> Lead = ["sorry", "oops", "whoops", "no", "nope", "wait", "rather", "i", "mean", "meant", "actually", "correction", ","];

    private static readonly HashSet<string> And = ["then", "and", "the", "other", "one", "too", "as", "well", "also", "now", "did", ","];

    private static readonly HashSet<string> Confirmed = ["that", "'s", "is", "right", "it", "yes", "correct", "sorry", "no", "wait", "that's"];

    private static readonly HashSet<string> Instead = ["no", "nope", "sorry", "oops", "wait", "i", "mean", "meant", "it", "was", "the", "a", "flat", "sharp", "actually"];

    private static readonly Doubt OfWhich = new("test", "puts right which note it was, as it sounds: of which entry wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment or EntryKind.Finding, Slots: { Zone: not null, Relation: null } } when Other(said) is > 0 and var at && IsNamed(said, at, draft.Slots):
                    draft.Slots = Flipped(draft.Slots);
                    break;
                case { Kind: EntryKind.Adjustment } when course.Drafts.IndexOf(draft) is > 0 and var index && course.Drafts[index - 1] is { Kind: EntryKind.Adjustment } first && first.Slots.Zone == draft.Slots.Zone && first.Slots.Sides == draft.Slots.Sides && first.Slots.Blades == draft.Slots.Blades && first.Slots.Sides is not null != first.Slots.Blades is not null && IsAnd(said):
                    draft.Slots = Flipped(draft.Slots);
                    break;
                case { Kind: EntryKind.Test, Slots.Step: "right" } when course.Drafts.IndexOf(draft) is > 0 and var place && course.Drafts[place - 1] is var confirmed && confirmed.Last + 1 == draft.First && IsConfirmed(course, draft, said):
                    Spoken.Join(course, confirmed, draft);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Pitch: not null, Cents: null, Step: null } } when draft.First == 0 && course.Drafts.Count == 1 && course.Before.Last is Test { TestKind: TestKind.LowResponse or TestKind.HighSteadiness } && said.Word(said.First) is "no" or "nope" or "sorry" or "oops" or "wait" && IsNoteAlone(said):
                    Spoken.Unmake(draft, OfWhich);
                    break;
            }
        }
    }

    // Where “sorry, the other one” begins, at the end of the words.
    private static int Other(Segment said)
    {
        for (var at = said.First + 1; at + 1 < said.End; at++)
        {
            if (said.Tokens[at - 1].Kind is TokenKind.Break && Lead.Contains(said.Word(at)) && said.Word(at).Length > 1)
            {
                var next = at;
                while (next < said.End && (said.Tokens[next].Kind is TokenKind.Break || Lead.Contains(said.Word(next))))
                {
                    next++;
                }

                next = said.Word(next) is "the" ? next + 1 : next;
                var end = said.Word(next) is "other" ? said.Word(next + 1) is "one" ? next + 2 : next + 1 : -1;
                if (end > 0 && (end >= said.End || Enumerable.Range(end, said.End - end).All(word => said.Tokens[word].Kind is TokenKind.Break)))
                {
                    return at;
                }
            }
        }

        return -1;
    }

    // One side or one blade, and it stands as it was named first.
    private static bool IsNamed(Segment said, int end, ReadSlots slots)
    {
        var named = PlaceReader.Read(said.Part(said.First, end));
        return slots.Sides is { } side ? slots.Blades is null && named.Exists(place => place.OneSide == side) : slots.Blades is { } blade && named.Exists(place => place.OneBlade == blade);
    }

    private static bool IsAnd(Segment said) => said.HasWord("other") && Enumerable.Range(said.First, said.End - said.First).All(at => said.Tokens[at].Kind is TokenKind.Break || said.Word(at).Length == 0 || And.Contains(said.Word(at)));

    private static bool IsConfirmed(Course course, Draft draft, Segment said) => Enumerable.Range(said.First, said.End - said.First).All(at => said.Tokens[at].Kind is TokenKind.Break || said.Word(at).Length == 0 || Confirmed.Contains(said.Word(at)))
        && Enumerable.Range(Math.Max(0, said.First - 2), said.End - Math.Max(0, said.First - 2)).Any(at => course.Segments[draft.First].Tokens[at].Text is "sorry" or "yes" or "wait" or "yeah" or "yep");

    private static bool IsNoteAlone(Segment said) => PitchReader.NotesIn(said) is [var note] && Enumerable.Range(said.First, said.End - said.First).All(at => said.Tokens[at].Kind is TokenKind.Break or TokenKind.Note || said.Word(at).Length == 0 || Instead.Contains(said.Word(at)) || at == note.First);

    private static ReadSlots Flipped(ReadSlots slots) => slots.Sides is not null
        ? slots with { Sides = slots.Sides is Sides.Left ? Sides.Right : Sides.Left }
        : slots with { Blades = slots.Blades is Blades.Upper ? Blades.Lower : Blades.Upper };
}
