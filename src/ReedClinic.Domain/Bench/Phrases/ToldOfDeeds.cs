using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What is told of work in so many words and was not taken: “and three down the ramp”, “then left it to settle”, “to open it a touch”, “found the ridge and smoothed it”, “wet paper” inside; and a fault that is left on purpose as it was found.</summary>
internal static class ToldOfDeeds
{
    private static readonly HashSet<string> Joining = ["and", "then", "plus", ","];

    private static readonly HashSet<string> Across = ["down", "on", "off", "in", "along", "from", "at", "up", "over", "across", "into"];

    private static readonly HashSet<string> Finding = ["found", "felt", "spotted", "noticed", "saw", "find"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment))
        {
            draft.Slots = Named(draft.Slots, Spoken.Whole(course, draft));
        }

        Smooth(course);
        OnPurpose(course);
        for (var at = 1; at < course.Segments.Count; at++)
        {
            if (course.Segments[at] is { Asked: false } segment && course.Segments[at - 1].Sentence == segment.Sentence && course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is var over && (over is null || over.Head < at && over.Kind is EntryKind.Adjustment || over.Kind is EntryKind.Note && over.Head == at) && !segment.Items.Any(item => item.Cat is Cat.Not or Cat.Plan or Cat.Cond or Cat.Other or Cat.Quality or Cat.Than or Cat.Same))
            {
                Tell(course, at, segment);
            }
        }
    }

    private static ReadSlots Named(ReadSlots slots, Segment said) => slots switch
    {
        { Kind: "smooth-edge", Zone: Zone.Inside } => slots with { Kind = "clean-inside" },
        { Kind: "wait", Zone: not Zone.WholeReed } => slots with { Zone = Zone.WholeReed },
        { Kind: "thin-corners", Zone: Zone.Windows } when !Spoken.HasStem(said, "corner", "ear") => slots with { Kind = "open-windows" },
        { Kind: "open-squeeze" or "close-press", Words: null, Strokes: null, Mm: null } when Purposed(said) is { } words => slots with { Words = words },
        { Sake: { } sake, Zone: { } zone } when sake == zone => slots with { Sake = null },
        _ => slots,
    };

    // “To open it a touch”: the amount is the work’s.
    private static string? Purposed(Segment said)
    {
        var to = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(at => said.Word(at) is "to" && said.Word(at + 1) is "open" or "close" or "shut", -1);
        return to < 0 || said.Word(to + 2) is not ("it" or "them" or "things" or "up") ? null : AmountReader.Read(said, to + 2, said.End)?.Words;
    }

    // What work is done to is no finding of its own.
    private static void Smooth(Course course)
    {
        for (var at = course.Drafts.Count - 2; at >= 0; at--)
        {
            var (found, deed) = (course.Drafts[at], course.Drafts[at + 1]);
            if (found is not { Kind: EntryKind.Finding, Slots.Kind: "bumps" } || deed.Kind is not EntryKind.Adjustment || deed.First != found.Last + 1 || deed.Sentence != found.Sentence || !Spoken.HasAny(course.Segments[found.Head], Finding) || course.Segments[deed.Head] is not { Joint: "and" or "then" or "" or "," } said
                || !Spoken.HasStem(said, "smoothed", "blended", "levelled") || !(said.HasWord("it") || said.HasWord("them") || said.HasWord("that")))
            {
                continue;
            }

            var place = PlaceReader.Read(said).Find(mention => mention.HasPlace) is null ? found.Slots : deed.Slots;
            deed.Slots = deed.Slots with { Kind = "smooth-bumps", Zone = place.Zone, Blades = place.Blades, Sides = place.Sides };
            deed.First = found.First;
            course.Drafts.RemoveAt(at);
        }
    }

    // “The thread’s too far up, I’ve left that deliberately”, of what was found before: its end, and no second finding.
    private static void OnPurpose(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.FindingEnded, Slots.Ending: FindingEnding.Unchanged or FindingEnding.LeftOnPurpose }).ToList())
        {
            if (course.Drafts.Find(other => other.Kind is EntryKind.Finding && other.Slots.Kind == draft.Slots.Kind && other.Sentence == draft.Sentence && other.Last == draft.First - 1) is { } again && draft.Slots.Ending is FindingEnding.LeftOnPurpose && course.Before.Log.Findings.Any(now => now.Finding.FindingKind.Value == draft.Slots.Kind))
            {
                draft.First = again.First;
                course.Drafts.Remove(again);
            }
            else if (draft.Slots.Ending is FindingEnding.Unchanged && IsMeant(course, draft))
            {
                draft.Slots = draft.Slots with { Ending = FindingEnding.LeftOnPurpose };
            }
        }
    }

    private static bool IsMeant(Course course, Draft draft)
    {
        var said = course.Segments.Where(segment => segment.Sentence == draft.Sentence && segment.Tokens[segment.First].Start >= course.Segments[draft.First].Span.Start).FirstOrDefault(segment => segment.Has(Cat.Ended, nameof(FindingEnding.LeftOnPurpose)) && (segment.HasWord("left") || segment.HasWord("leaving") || segment.HasWord("leave")));
        return said is not null && !said.Asked && !said.Items.Any(item => item.Cat is Cat.Not or Cat.Other or Cat.Zone or Cat.Region) && !course.Drafts.Exists(other => other != draft && course.Segments[other.Head] == said);
    }

    private static void Tell(Course course, int at, Segment segment)
    {
        var slots = IsCount(segment) && !segment.Has(Cat.Again) || IsSettled(segment) ? Deed(course, at) : null;
        if (slots is null || course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Sentence == segment.Sentence) is not { Kind: EntryKind.Adjustment } before || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Adjustment, slots.Kind is "wait" ? new ReadSlots { Kind = "wait", Zone = Zone.WholeReed } : slots with { Blades = slots.Blades ?? before.Slots.Blades });
        draft.Doubts.Clear();
    }

    // “And three down the ramp”, with nothing else in it.
    private static bool IsCount(Segment segment)
    {
        var first = segment.First;
        while (Joining.Contains(segment.Word(first)))
        {
            first++;
        }

        if (Numbers.At(segment.Tokens, first, segment.End) is not { } number || PlaceReader.Read(segment) is not [{ HasPlace: true } place])
        {
            return false;
        }

        var at = segment.Word(number.End) is "strokes" or "stroke" ? number.End + 1 : number.End;
        return Across.Contains(segment.Word(at)) && Enumerable.Range(at + 1, segment.End - at - 1).All(word => segment.Tokens[word].Kind is TokenKind.Break || segment.Word(word) is "the" or "each" or "of" or "" || place.First <= word && word < place.End);
    }

    // “Then left it to settle for another day”.
    private static bool IsSettled(Segment segment) => Enumerable.Range(segment.First, Math.Min(4, segment.End - segment.First)).Any(at => segment.Word(at) is "left" && segment.Word(at + 1) is "it" or "them") && (segment.HasWord("settle") || segment.HasWord("rest")) && segment.HasWord("to");

    private static ReadSlots? Deed(Course course, int at)
    {
        var ruled = course.Copy();
        (ruled.At, ruled.Carried) = (at, Mood.None);
        if (DeedReader.TryRead(ruled) && ruled.Last is { Kind: EntryKind.Adjustment, Slots: { Kind: not ("something-else" or null) } slots } last && last.Head == at)
        {
            return slots;
        }

        return IsSettled(course.Segments[at]) ? new ReadSlots { Kind = "wait", Zone = Zone.WholeReed } : null;
    }
}
