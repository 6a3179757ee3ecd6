using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The spine hasn’t been scraped away”, “gave the cork a wiggle and it isn’t loose”: a fault that is denied was looked for, and is none; “I can feel bumps” is one.</summary>
internal static class Denied
{
    private static readonly HashSet<string> Trying = [.. "gave give giving tried try tested checked check checking felt looked look wiggled tugged twisted pulled pushed pressed shook turned examined inspected".Split(' ')];

    private static readonly HashSet<string> Small = ["been", "ever", "being", "all", "at", "really", "too", "cut", "scraped", "worn", "made", "taken", "filed", "got", "gone", "shaved"];

    private static readonly HashSet<string> Saving = ["enough", "yet", "properly", "only", "just", "until", "fully", "quite"];

    private static readonly HashSet<string> Without = ["no", "not", "hardly", "nothing", "none", "without", "any", "neither", "nor", "never", "free", "barely", "no-one"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var segment = course.Segments[draft.Head];
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Kind: { } kind } } when IsHarm(kind) && HasNotBeen(segment):
                    (draft.Kind, draft.Slots) = (EntryKind.LookedFor, new ReadSlots { Kind = kind, Known = FindingReader.Known(segment) });
                    draft.Doubts.RemoveAll(doubt => doubt.Slot is "zone" or "kind");
                    break;
                case { Kind: EntryKind.LookedFor, Slots.Kind: { } kind } when IsFelt(segment):
                    Find(course, draft, kind, segment);
                    break;
                case { Kind: EntryKind.LookedFor } when draft.Head > 0:
                    Tried(course, draft, segment);
                    break;
            }
        }
    }

    // What a knife or time may do to it; what is thick or long was left so, and not having been scraped denies nothing of it.
    private static bool IsHarm(string kind) => !kind.EndsWith("-thick", StringComparison.Ordinal) && !kind.EndsWith("-long", StringComparison.Ordinal) && kind is not ("heart-length" or "bark-island" or "bumps" or "tip-not-separate" or "no-slip" or "something-else");

    private static bool HasNotBeen(Segment segment)
    {
        for (var at = segment.First; at < segment.End && !segment.Asked; at++)
        {
            if (segment.Word(at) is "not" && segment.Word(at - 1) is "has" or "have" or "had" || segment.Word(at) is "never" && (segment.Word(at - 1) is "was" or "were" or "has" or "have" or "'s" || segment.Word(at + 1) is "been"))
            {
                return segment.HasWord("been") | segment.Word(at) is "never" && !Spoken.HasAny(segment, Saving) && segment.Items.Any(item => item.Cat is Cat.Quality && item.End > at && Enumerable.Range(at + 1, Math.Max(0, item.First - at - 1)).All(word => Small.Contains(segment.Word(word))));
            }
        }

        return false;
    }

    private static bool IsFelt(Segment segment)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            if (segment.Word(at) is "can" or "could" && segment.Word(at - 1) is "i" or "you" or "" && segment.Word(at + 1) is "feel" or "see" or "hear" or "clearly" or "still" or "definitely")
            {
                return segment.Find(Cat.Quality) is { Value: not null } felt && felt.First > at && !segment.Asked && !Spoken.HasAny(segment, Without) && !segment.Has(Cat.Not) && !segment.Has(Cat.NoMore) && !segment.Has(Cat.Cond);
            }
        }

        return false;
    }

    private static void Find(Course course, Draft draft, string kind, Segment segment)
    {
        var ruled = course.Copy();
        (ruled.At, ruled.Carried) = (draft.Head, Mood.None);
        ruled.Drafts.Clear();
        var slots = FindingReader.TryRead(ruled) && ruled.Last is { Kind: EntryKind.Finding, Slots: var read } && read.Kind == kind ? read
            : new ReadSlots { Kind = kind, Character = FindingCharacter.Fault, Zone = PlaceReader.Read(segment).Find(mention => mention.HasPlace)?.Usual ?? Faults.FindingCatalogue.Find(new Faults.FindingKindId(kind))?.Zone ?? Zone.WholeReed };
        (draft.Kind, draft.Slots) = (EntryKind.Finding, slots with { Known = FindingReader.Known(segment) ?? slots.Known });
    }

    // What was tried first names the place, and is no finding of its own.
    private static void Tried(Course course, Draft draft, Segment segment)
    {
        var at = draft.Head - 1;
        if (course.Segments[at] is not { Asked: false } before || before.Sentence != segment.Sentence || !Spoken.HasAny(before, Trying))
        {
            return;
        }

        if (course.Drafts.Find(other => other.Head == at) is { } tried && (tried.Kind is EntryKind.Finding && !before.Items.Any(item => item.Cat is Cat.Quality && !item.Guessed && before.Word(item.First - 1) is not "a") && tried.Slots.Kind == draft.Slots.Kind
            || tried is { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null } } && before.HasWord("gave") && Spoken.HasStem(before, "wiggl", "twist", "tug", "pull", "shak", "turn")))
        {
            draft.First = Math.Min(draft.First, tried.First);
            course.Drafts.Remove(tried);
        }

        if (Kind(before, segment) is { } kind && kind != draft.Slots.Kind)
        {
            draft.Slots = draft.Slots with { Kind = kind };
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
        }
    }

    private static string? Kind(Segment before, Segment said) => IsIt(said) && PlaceReader.Read(said).Count == 0 && Quality(said) is { } quality && PlaceReader.Read(before).FindAll(mention => mention.HasPlace) is [var place] && !(quality.Value is "leak" && place.Zone is not (Zone.Thread or Zone.Cork))
        ? FindingTable.Kind(place, quality.Value)
        : null;

    private static bool IsIt(Segment segment) => Enumerable.Range(segment.First, Math.Min(3, segment.End - segment.First)).Any(at => segment.Word(at) is "it" or "they" or "that");

    private static Item? Quality(Segment segment) => segment.Find(Cat.Quality) is { Value: not null } quality && !FindingTable.IsPraise(quality.Value) ? quality : null;
}
