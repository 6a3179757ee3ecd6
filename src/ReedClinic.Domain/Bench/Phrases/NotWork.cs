using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“A clean clip is half the battle”, “maybe cut it off and tie it again”, “off the mandrel, to play it”: what is named like work and is none, whoever says otherwise.</summary>
internal static class NotWork
{
    private const int Reach = 3;

    private static readonly HashSet<string> Stale = ["dried", "old", "crusted", "crusty", "hardened", "stale", "leftover", "excess", "dripped", "spilled", "spilt", "splashed", "flaking", "flaked"];

    internal static void Keep(Course course)
    {
        var end = course.At;
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment).ToList())
        {
            var segment = course.Segments[draft.Head];
            if (IsPreparing(course, draft))
            {
                course.Drafts.Remove(draft);
            }
            else if (OnlyTold.Before(course, draft) is { } before)
            {
                Spoken.Join(course, before, draft);
            }
            else if (OnlyTold.Pressed(course, draft) is { } step)
            {
                Become(draft, EntryKind.Test, new ReadSlots { Test = TestKind.ClosingOrder, Step = step });
            }
            else if (IsFound(segment, draft.Slots))
            {
                course.At = draft.Head;
                Become(draft, EntryKind.Finding, FindingReader.Details(course, new ReadSlots { Kind = "bumps", Character = FindingCharacter.Fault, Zone = draft.Slots.Zone, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides }));
            }
            else if (IsStain(segment, draft.Slots))
            {
                Become(draft, EntryKind.Finding, new ReadSlots { Kind = "something-else", Character = FindingCharacter.Fault, Zone = draft.Slots.Zone, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides });
            }
            else if (draft.Slots.Kind is "retire" && segment.HasWord("going"))
            {
                Become(draft, EntryKind.Verdict, new ReadSlots { Verdict = VerdictKind.NotToBeSaved });
            }
            else if (IsNoun(segment, draft.Slots) || IsMaybe(course, draft) || IsDisowned(course, draft) || IsHabit(course, draft) || IsOff(segment) || IsHarm(segment) || IsWhenOnly(segment, draft.Slots) || IsOfNotes(segment, draft.Slots) || OnlyTold.Is(course, draft))
            {
                Unmake(course, draft);
            }
        }

        course.At = end;
    }

    // “Wet it, drew some air through it”: how the air is drawn. “Blew through it, and there’s bubbles”: how a leak is found.
    private static bool IsPreparing(Course course, Draft draft) => course.Drafts.IndexOf(draft) + 1 is var next && next < course.Drafts.Count && course.Drafts[next] is var then && then.Sentence == draft.Sentence
        && (draft.Slots.Kind is "soak" && then is { Kind: EntryKind.Adjustment, Slots.Kind: "draw-air" } && Amountless(draft.Slots) && !course.Segments[draft.Head].HasWord("soaked")
            || draft.Slots.Kind is "clean-inside" && then is { Kind: EntryKind.Finding, Slots.Kind: "side-leak" or "thread-leak" } && !course.Segments[draft.Head].HasWord("cleaned"));

    // “Ramp got a bump on the lower”: nothing in it smooths one.
    private static bool IsFound(Segment segment, ReadSlots slots) => slots.Kind is "smooth-bumps" && Amountless(slots) && (Moods.Head(segment) is not { } verb || segment.Word(verb.First) is "got" or "has" or "have") && !segment.Has(Cat.Off) && !segment.HasWord("out") && !segment.HasWord("away") && !segment.HasWord("down") && !segment.HasWord("smooth");

    // “Dried glue smeared over the winding”, “bark all scratched up”: how it came, and nothing that was done.
    private static bool IsStain(Segment segment, ReadSlots slots) => Amountless(slots) && !segment.HasWord("i") && !segment.HasWord("we") && (slots.Kind is "seal-thread" or "seal-sides" && Spoken.HasAny(segment, Stale)
        || slots is { Kind: "something-else", Zone: Zone.Bark } && Moods.Head(segment) is { } verb && verb.First > segment.First && segment.Word(verb.First) is "scratched" or "scuffed" or "marked" or "stained");

    // “A clean clip is half the battle”, “a drawing”, “very smooth blend on this”: the verb’s word is a thing.
    private static bool IsNoun(Segment segment, ReadSlots slots)
    {
        if (Moods.Head(segment) is not { } verb || Moods.Form(verb) is not ('B' or 'G') || !Amountless(slots))
        {
            return false;
        }

        var before = segment.Word(verb.First - 1);
        var praised = segment.Items.Any(item => item.Cat is Cat.Good && item.End == verb.First);
        return Moods.Form(verb) is 'G' && before is "a" or "an" || Moods.Form(verb) is 'B' && segment.Word(verb.End) is "is" or "'s" && (before is "a" or "the" || segment.Word(verb.First - 2) is "a" or "the") || Moods.Form(verb) is 'B' && praised;
    }

    // “Maybe cut it off and tie it again”.
    private static bool IsMaybe(Course course, Draft draft) => draft.Head > 0 && course.Segments[draft.Head] is { Joint: "and" or "then" } segment && course.Segments[draft.Head - 1] is var earlier && earlier.Sentence == segment.Sentence
        && (earlier.HasWord("maybe") || earlier.HasWord("perhaps") || earlier.HasWord("possibly")) && Moods.Head(segment) is { } verb && Moods.Form(verb) is 'B' && !segment.HasWord("i");

    // “Spine: scraped, upper only, from the heart to halfway down. Not my work.”
    private static bool IsDisowned(Course course, Draft draft) => Amountless(draft.Slots) && course.Segments.Skip(draft.Head + 1).Take(Reach + 1).FirstOrDefault(segment => segment.Sentence == draft.Sentence + 1) is { } behind
        && behind.IndexOfWord("not") is >= 0 and var at && (behind.Word(at + 1) is "mine" or "me" || behind.Word(at + 1) is "my" && behind.Word(at + 2) is "work" or "doing") && behind.End - behind.First <= 5;

    // “Habit: scrape, clip, scrape, clip, never tests”.
    private static bool IsHabit(Course course, Draft draft) => Amountless(draft.Slots) && course.Segments.Any(segment => (segment.Sentence == draft.Sentence || segment.Sentence == draft.Sentence - 1) && (segment.HasWord("habit") || segment.HasWord("habits") || segment.HasWord("habitually"))) && !course.Segments[draft.Head].HasWord("i");

    // “Pulled the reed off the mandrel”.
    private static bool IsOff(Segment segment) => segment.IndexOfWord("mandrel") is >= 2 and var at && (segment.Word(at - 1) is "off" || segment.Word(at - 2) is "off");

    // “Took a nick out of the corner with my thumbnail”.
    private static bool IsHarm(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "nick" or "bite" or "chunk" or "chip" or "gouge" && segment.Word(at - 1) is "a" && segment.Word(at + 1) is "out");

    // “After the spine”: when something else happened.
    private static bool IsWhenOnly(Segment segment, ReadSlots slots) => Amountless(slots) && Moods.Head(segment) is null && Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "after" or "since" or "before" && segment.Word(at + 1) is "the" or "my");

    // “Clipped little tongued notes”, “dust on the heart”: how notes are, and what lies there.
    private static bool IsOfNotes(Segment segment, ReadSlots slots) => slots.Kind is "clip" or "clip-hair" && Enumerable.Range(segment.First, Math.Min(segment.End - segment.First + Reach, segment.Tokens.Count - segment.First)).TakeWhile(at => segment.Tokens[at].Kind is not TokenKind.Break).Any(at => segment.Tokens[at].Text is "notes") && !segment.HasWord("for")
        || Amountless(slots) && segment.Word(segment.First) is "dust" && segment.Word(segment.First + 1) is "on";

    private static bool Amountless(ReadSlots slots) => slots is { Strokes: null, Mm: null, Words: null };

    private static void Become(Draft draft, EntryKind kind, ReadSlots slots)
    {
        (draft.Kind, draft.Slots) = (kind, slots);
        draft.Doubts.Clear();
        draft.Doubts.Add(new Doubt("kind", "unsure whether this is what was meant"));
    }

    // Beside another entry of its sentence it is an aside; else a remark.
    private static void Unmake(Course course, Draft draft)
    {
        if (Amountless(draft.Slots) && course.Drafts.Any(other => !ReferenceEquals(other, draft) && other.Sentence == draft.Sentence && other.Kind is not EntryKind.Adjustment))
        {
            course.Drafts.Remove(draft);
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Note, ReadSlots.None);
        draft.Doubts.Clear();
        draft.Doubts.Add(new Doubt("kind", "unsure whether this was done, so it is kept as a note"));
    }
}
