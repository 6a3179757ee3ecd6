namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Low D no longer late”, “heart is thicker now than before”, “hardly scraped at all”, “opened the window, it’s hot”: what is denied, only compared with before, or done to something else is no fault and no work.</summary>
internal static class OfBefore
{
    private static readonly HashSet<string> Bad = [.. "late slow stuffy sluggish reluctant hesitant heavy hard tight wild unstable dull flat sharp thin hollow closed choked weak resistant bright edgy covered unsure".Split(' ')];

    private static readonly HashSet<string> Past = ["before", "yesterday", "earlier", "was", "were"];

    private static readonly HashSet<string> Changed = [.. "thinner thicker shorter longer wider narrower deeper shallower steeper smaller bigger softer stiffer heavier lighter".Split(' ')];

    private static readonly HashSet<string> Room = ["hot", "warm", "stuffy", "cold", "draught", "draughty", "smell", "smoke", "room", "outside", "breeze", "air", "noisy", "noise", "street", "rain", "sun", "here"];

    private static readonly Doubt Denied = new("step", "denied: which word of the scale it is now wasn’t said, so its words are kept");

    private static readonly Doubt Compared = new("kind", "compared with before, and no fault by itself, so it is kept as a note");

    private static readonly Doubt Scarcely = new("kind", "hardly worked on, and no fault, so it is kept as a note");

    private static readonly Doubt Room2 = new("done", "a window of the room, as it sounds, so it is kept as a note");

    private static readonly Doubt Air = new("kind", "how much air it takes, and no leak, so it is kept as a note");

    private static readonly Doubt Whole = new("kind", "thin, and whole all the same: taken for whole");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Test, Slots: { Test: { } test, Step: { } step } } when TestScale.Of(test) is { } scale && scale.Steps[scale.Good] != step && IsOver(said):
                    Spoken.Unscale(draft, draft.Slots, Denied.Words);
                    break;
                case { Kind: EntryKind.Test, Slots.Test: TestKind.Crow } when Missing(said) is { } only:
                    draft.Slots = draft.Slots with { Step = only, Lean = null };
                    draft.Doubts.RemoveAll(doubt => doubt.Slot is "step");
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null } } when IsCompared(said):
                    Spoken.Unmake(draft, Compared);
                    break;
                case { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Fault } or { Kind: EntryKind.Verdict, Slots.Verdict: not VerdictKind.AsGoodAsThisCaneGets } when IsScarcely(said):
                    Spoken.Unmake(draft, Scarcely);
                    break;
                case { Kind: EntryKind.Finding, Slots.Kind: "thread-leak" or "side-leak" } when Spoken.HasAny(said, ["needs", "takes", "wants", "need", "take"]) && Spoken.HasAny(said, ["air", "breath"]) && !Spoken.HasStem(said, "leak", "seal", "escap", "hiss", "los"):
                    Spoken.Unmake(draft, Air);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Kind: "spine-scraped" or "rails-cut" } slots } when IsWhole(said):
                    draft.Slots = slots with { Kind = slots.Kind is "rails-cut" ? "rails-intact" : "spine-intact", Character = FindingCharacter.Strength, Degree = null };
                    draft.HasAside = true;
                    draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
                    draft.Doubts.Add(Whole);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "tied-straight", Character: FindingCharacter.Strength } slots } when Denying.OfBest(said) || said.IndexOfWord("not") is >= 0 and var not && said.Word(not + 1) is "straight" or "true" or "centred" or "quite" or "tied" or "at" or "really" or "on":
                    draft.Slots = slots with { Kind = "crooked-on-staple", Character = FindingCharacter.Fault };
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "open-windows", Strokes: null, Mm: null, Blades: null, Sides: null } } when IsOfRoom(course, draft, said):
                    Spoken.Unmake(draft, Room2);
                    course.Drafts.RemoveAll(other => other.Kind is EntryKind.Test && other.Sentence == draft.Sentence && other.First == draft.Last + 1 && Spoken.HasAny(Spoken.Whole(course, other), Room) && Take(draft, other));
                    break;
            }
        }
    }

    private static bool Take(Draft note, Draft other)
    {
        note.Last = other.Last;
        return true;
    }

    // “No longer late”, “late no more”.
    private static bool IsOver(Segment said) => !said.Asked && Enumerable.Range(said.First, said.End - said.First).Any(at => Bad.Contains(said.Word(at)) && (said.Word(at - 1) is "longer" && said.Word(at - 2) is "no" || said.Word(at - 1) is "so" or "as" or "too" && said.Word(at - 2) is "longer" && said.Word(at - 3) is "no" || said.Word(at + 1) is "no" && said.Word(at + 2) is "more" or "longer"));

    // “Low octave’s missing” leaves the high one.
    private static string? Missing(Segment said)
    {
        var octave = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(at => said.Word(at) is "octave" or "octave's" or "sound" or "half", -1);
        var behind = octave < 0 ? [] : Enumerable.Range(octave + 1, Math.Max(0, said.End - octave - 1)).Select(said.Word).ToList();
        return said.Asked || said.HasWord("both") || said.HasWord("not") || said.HasWord("no") || !behind.Exists(word => word is "missing" or "gone" or "absent" or "lacking") ? null
            : said.Word(octave - 1) switch { "low" or "lower" or "bottom" => "high only", "high" or "upper" or "higher" or "top" => "low only", _ => null };
    }

    // “Thicker now than before”, “thicker than it was”; not “thicker than the back”.
    private static bool IsCompared(Segment said)
    {
        var than = said.IndexOfWord("than");
        return than > said.First && !said.Asked && !Spoken.HasStem(said, "chip", "crack", "broke", "split", "leak") && Enumerable.Range(said.First, than - said.First).Any(at => Changed.Contains(said.Word(at))) && Enumerable.Range(than + 1, Math.Min(3, said.End - than - 1)).Any(at => Past.Contains(said.Word(at)));
    }

    private static bool IsScarcely(Segment said) => !said.Asked && !said.Items.Any(item => item.Is(Cat.Quality) && said.Word(item.First) is not ("scraped" or "touched" or "worked" or "dusted" or "barely" or "hardly" or "scarcely")) && !said.HasWord("too") && Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "hardly" or "barely" or "scarcely" && (said.Word(at + 1) is "scraped" or "touched" or "worked" or "dusted" || said.Word(at + 1) is "been" && said.Word(at + 2) is "scraped" or "touched" or "worked"));

    // “Thin but whole”, “thin but not scraped through”; what was scraped isn’t.
    private static bool IsWhole(Segment said) => Denying.IsWholeAfterAll(said) && !said.HasWord("scraped") || said.HasWord("but") && said.HasWord("thin") && !said.Asked && said.IndexOfWord("but") is var but && (said.Word(but + 1) is "not" && said.Word(but + 2) is "scraped" or "cut" or "through" or "gone" or "broken" || said.Word(but + 1) is "there" or "still" && (said.Word(but + 1) is "there" || said.Word(but + 2) is "there"));

    private static bool IsOfRoom(Course course, Draft draft, Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "window" && said.Word(at - 1) is "the" or "a") && Spoken.HasAny(said, ["opened", "open", "opening", "shut", "closed"])
        && Spoken.Sentence(course, draft) is var sentence && Enumerable.Range(said.First, Math.Max(0, sentence.End - said.First)).Any(at => Room.Contains(sentence.Word(at))) && !sentence.HasWord("blade") && !sentence.HasWord("corner");
}
