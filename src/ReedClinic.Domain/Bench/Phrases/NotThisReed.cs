using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Tip is thinner now”, “the buzz has stopped”, “cut my thumb”, “took the fishskin off”, “put it down for today”: how it changed, what ended of itself, what was done to something else or undone.</summary>
internal static class NotThisReed
{
    private static readonly HashSet<string> Changed = [.. "thinner thicker shorter longer wider narrower deeper shallower steeper smaller bigger softer stiffer".Split(' ')];

    private static readonly HashSet<string> Noises = ["buzz", "buzzing", "hiss", "hissing", "rattle", "rattling", "squeak", "squeaking", "noise", "leak", "leaking", "gurgle", "gurgling", "wobble", "whistle", "bubbles", "bubbling", "crackle", "it", "that"];

    private static readonly HashSet<string> Body = ["thumb", "finger", "fingers", "nail", "hand", "hands", "lip", "lips", "head", "sleeve", "apron", "bulb", "bellows", "bottle", "box", "bag", "drawer", "lamp", "door"];

    private static readonly string[] Skins = ["fishskin", "skin", "film", "tape", "wrap", "parafilm"];

    private static readonly Doubt How = new("kind", "how it changed, and no fault by itself, so it is kept as a note");

    private static readonly Doubt Ended = new("kind", "something ended, and not the work, so it is kept as a note");

    private static readonly Doubt Elsewhere = new("done", "done to something else than this reed, so it is kept as a note");

    private static readonly Doubt Skin = new("kind", "done to what was wrapped round it, so its words are kept");

    private static readonly Doubt Which = new("test", "which test this is of wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null, Blades: null, Sides: null } } when IsChanged(said):
                    Spoken.Unmake(draft, How);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "side-leak", Character: FindingCharacter.Fault } } when Stops(said, "leak", "hiss"):
                    (draft.Kind, draft.Slots) = (EntryKind.FindingEnded, new ReadSlots { Kind = "side-leak", Ending = FindingEnding.Gone });
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Stopped } when Enumerable.Range(said.First, said.End - said.First).Any(at => Noises.Contains(said.Word(at)) && said.Word(at + 1) is "has" or "'s" or "have" && said.Word(at + 2) is "stopped"):
                    Spoken.Unmake(draft, Ended);
                    break;
                case { Kind: EntryKind.Finding, Slots.Kind: "closes-in-play" } when !Spoken.HasStem(said, "clos", "shut", "collaps", "sag", "clam", "pinch", "flat", "open", "down", "seiz"):
                    Spoken.Unmake(draft, How);
                    break;
                case { Kind: EntryKind.Test, Slots: { Step: null, Pitch: null, Cents: null, Change: null, Length: null, Lean: null, Between: null } } when said.HasWord("dropped") && said.HasWord("it") && !said.Has(Cat.Test):
                    Spoken.Unmake(draft, Which);
                    break;
                case { Kind: EntryKind.Adjustment }:
                    Done(draft, said);
                    break;
            }
        }
    }

    private static void Done(Draft draft, Segment said)
    {
        if (draft.Slots is { Strokes: null, Mm: null } && IsPutDown(said))
        {
            (draft.Kind, draft.Slots) = (EntryKind.Stopped, ReadSlots.None);
            draft.Doubts.Clear();
        }
        else if (draft.Slots.Mm is null && (IsOfElse(said) || IsOfAnother(said)))
        {
            Spoken.Unmake(draft, Elsewhere);
        }
        else if (draft.Slots.Kind is "seal-sides" or "clip" or "clip-hair" or "square-tip" && Spoken.HasStem(said, Skins) && (Spoken.HasStem(said, "trim", "cut", "clip", "snip") || IsTakenOff(said)))
        {
            draft.Slots = new ReadSlots { Kind = "something-else", Zone = Zone.SideEdges, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides };
            draft.HasAside = true;
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind" or "zone");
            draft.Doubts.Add(Skin);
        }
        else if (draft.Slots.Kind is "square-tip" && (said.HasWord("staple") || said.HasWord("tube")))
        {
            draft.Slots = draft.Slots with { Kind = "something-else" };
            draft.HasAside = true;
            draft.Doubts.Add(new Doubt("kind", "straightened on the staple, and not the tip, so its words are kept"));
        }
    }

    // “Put it down for today”, and nothing else in the same breath.
    private static readonly HashSet<string> PutDown = ["i", "i've", "i'll", "'ve", "'ll", "have", "we", "we've", "so", "and", "ok", "okay", "right", "put", "laid", "set", "the", "reed", "it", "this", "this one", "one", "them", "down", "for", "today", "now", "there"];

    // “Tip is thinner now”.
    private static bool IsChanged(Segment said) => !said.Asked && Spoken.HasAny(said, Changed) && (said.HasWord("now") || said.HasWord("already")) && !said.Has(Cat.Than) && !said.HasWord("too") && !said.HasWord("still") && !said.HasWord("i") && !said.HasWord("than");

    private static bool Stops(Segment said, params ReadOnlySpan<string> stems) => Spoken.HasStem(said, stems) && said.IndexOfWord("stopped") is > 0 and var at && said.Word(at - 1) is "has" or "'s" or "have" or "now" && !said.Has(Cat.Not);

    private static bool IsPutDown(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "put" or "laid" or "set" && said.Word(at + 1) is "it" or "this" or "them" && said.Word(at + 2) is "down") && (said.HasWord("today") || said.HasWord("now"))
        && Enumerable.Range(said.First, said.End - said.First).All(at => said.Tokens[at].Kind is TokenKind.Break || said.Word(at).Length == 0 || PutDown.Contains(said.Word(at)));

    // “Cut my thumb”, “squeezed the bulb”.
    private static bool IsOfElse(Segment said) => said.Find(Cat.Verb) is { } verb && said.Word(verb.End) is "my" or "the" or "a" or "his" or "her" && Body.Contains(said.Word(verb.End + 1)) && (verb.End + 2 >= said.End || said.Tokens[verb.End + 2].Kind is TokenKind.Break || said.Word(verb.End + 2) is "and" or "again" or "on" or "with" or "instead");

    // “Soaked the next one”.
    private static bool IsOfAnother(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "the" or "my" or "her" or "another" && (said.Word(at + 1) is "next" or "other" && said.Word(at + 2) is "reed" or "reeds" || said.Word(at + 1) is "next" && said.Word(at + 2) is "one" && said.Word(at + 3) is "" || said.Word(at) is "another" && said.Word(at + 1) is "reed"));

    private static bool IsTakenOff(Segment said) => (said.HasWord("off") || said.HasWord("away")) && Spoken.HasStem(said, "took", "take", "peel", "pull", "strip", "remov", "unwr", "unwound", "tore", "cut");
}
