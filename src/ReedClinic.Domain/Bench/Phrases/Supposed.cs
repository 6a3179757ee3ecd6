namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Looks as if the thread was taken too high”, “that thick tip has improved”: what was kept as a remark and says plainly what was found, or what became of it.</summary>
internal static class Supposed
{
    private static readonly Doubt Meant = new("kind", "unsure whether this is what was meant");

    internal static void Keep(Course course)
    {
        foreach (var note in course.Drafts.Where(draft => draft.Kind is EntryKind.Note).ToList())
        {
            var whole = Spoken.Whole(course, note);
            if (whole.Asked || whole.Has(Cat.Plan) || whole.Has(Cat.Other) || whole.Has(Cat.Not) || whole.HasWord("if") && !IsAsIf(whole))
            {
                continue;
            }

            if (IsAsIf(whole) && Found(course, note) is { } found)
            {
                Become(note, EntryKind.Finding, found with { Certainty = Certainty.Suspected });
            }
            else if (Spoken.HasStem(whole, "improv") && PlaceReader.Read(whole).Exists(place => place.HasPlace) && EndedReader.KindAt(course, note.Head, whole) is { } kind && EndedReader.WasFound(course, kind))
            {
                Become(note, EntryKind.FindingEnded, new ReadSlots { Kind = kind, Ending = FindingEnding.Better });
            }
        }

        foreach (var left in course.Drafts.Where(draft => draft is { Kind: EntryKind.LeaveAlone, Slots.Zone: not null }))
        {
            Meaningly(course, left);
        }
    }

    // “High thread stays as it is, deliberately”: what was found there is left.
    private static void Meaningly(Course course, Draft left)
    {
        var whole = Spoken.Sentence(course, left);
        var found = course.Before.Log.Findings.Select(now => now.Finding).LastOrDefault(finding => finding.Zone == left.Slots.Zone && finding.Character is FindingCharacter.Fault);
        if (found is not null && (whole.HasWord("deliberately") || whole.HasWord("purpose") || whole.HasWord("purposely") || whole.HasWord("intentionally") || whole.HasWord("choice")) && course.Drafts.Count(draft => draft.Sentence == left.Sentence && draft.Kind is EntryKind.LeaveAlone) is 1)
        {
            (left.Kind, left.Slots) = (EntryKind.FindingEnded, new ReadSlots { Kind = found.FindingKind.Value, Ending = FindingEnding.LeftOnPurpose });
        }
    }

    private static bool IsAsIf(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "as" && whole.Word(at + 1) is "if" or "though") && Spoken.HasStem(whole, "look", "seem", "feel", "sound");

    // What its words behind “as if” say by the rules.
    private static ReadSlots? Found(Course course, Draft note)
    {
        for (var at = note.First; at <= note.Last; at++)
        {
            var ruled = course.Copy();
            (ruled.At, ruled.Carried) = (at, Mood.None);
            if (FindingReader.TryRead(ruled) && ruled.Drafts.Count > course.Drafts.Count && ruled.Last is { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Kind: not "something-else" } slots })
            {
                return slots;
            }
        }

        return null;
    }

    private static void Become(Draft note, EntryKind kind, ReadSlots slots)
    {
        (note.Kind, note.Slots) = (kind, slots);
        note.Doubts.Clear();
        note.Doubts.Add(Meant);
    }
}
