using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What has been understood so far, from the first segment on.</summary>
internal sealed class Course(IReadOnlyList<Segment> segments, Before before)
{
    internal IReadOnlyList<Segment> Segments { get; } = segments;

    internal Before Before { get; } = before;

    internal List<Draft> Drafts { get; } = [];

    /// <summary>Segments that went into a remark begun before them.</summary>
    internal HashSet<int> Noted { get; } = [];

    /// <summary>Segments that nothing could be made of.</summary>
    internal List<int> Left { get; } = [];

    /// <summary>How likely a segment was taken for a remark, where a judge was asked.</summary>
    internal Dictionary<int, double> Remarks { get; private init; } = [];

    /// <summary>The A that is tuned to, in hertz.</summary>
    internal double A4 { get; init; } = 440;

    /// <summary>True when it was said that more work would ruin the reed.</summary>
    internal bool Spared { get; set; }

    /// <summary>The segment being read.</summary>
    internal int At { get; set; }

    internal Segment Segment => Segments[At];

    /// <summary>What the sentence's verbs take over from an earlier one: a plan, a condition, another's deed.</summary>
    internal Mood Carried { get; set; }

    /// <summary>The place last named, with its zone.</summary>
    internal Mention? Topic { get; set; }

    /// <summary>A place named ahead of what is said of it.</summary>
    internal Mention? Pending { get; set; }

    /// <summary>A hedge or a way of knowing that stood alone, for the next finding.</summary>
    internal ReadSlots Ahead { get; set; } = ReadSlots.None;

    /// <summary>The part of the reed for whose sake the next deed is done: “so that the hump stands out, …”.</summary>
    internal Zone? Sake { get; set; }

    /// <summary>The blade said for the deeds of this breath.</summary>
    internal Blades? BreathBlade { get; set; }

    /// <summary>The side said for the deeds of this breath.</summary>
    internal Sides? BreathSide { get; set; }

    /// <summary>Which reader took the segment that was read last.</summary>
    internal string Way { get; set; } = "";

    internal Draft? Last => Drafts.Count > 0 ? Drafts[^1] : null;

    internal Draft? LastInSentence => Last is { } last && last.Sentence == Segment.Sentence ? last : null;

    internal Draft? LastOf(EntryKind kind) => Drafts.LastOrDefault(draft => draft.Kind == kind);

    internal Draft Add(EntryKind kind, ReadSlots slots, string? verb = null, bool zoneSaid = false)
    {
        var draft = new Draft
        {
            Kind = kind,
            Slots = slots,
            Head = At,
            First = At,
            Last = At,
            Sentence = Segment.Sentence,
            Verb = verb,
            ZoneSaid = zoneSaid,
        };
        Drafts.Add(draft);
        return draft;
    }

    /// <summary>A remark; several in one sentence are one.</summary>
    internal void AddNote(bool unsure = false)
    {
        if (LastInSentence is { Kind: EntryKind.Note } note && note.Last == At - 1)
        {
            note.Last = At;
            Noted.Add(At);
        }
        else if (LastInSentence is { Kind: EntryKind.Note } earlier && Drafts.Count > 0 && earlier.Last == At)
        {
            return;
        }
        else
        {
            Add(EntryKind.Note, ReadSlots.None);
        }

        if (unsure && Last!.Doubts.Count == 0)
        {
            Last.Doubts.Add(new Doubt("kind", "unsure whether this was done, so it is kept as a note"));
        }
    }

    /// <summary>Takes the segment into the entry before it.</summary>
    internal bool Absorb(bool aside = true)
    {
        if (LastInSentence is not { } last)
        {
            return false;
        }

        last.Last = At;
        last.HasAside |= aside;
        return true;
    }

    /// <summary>The same, so that one of the two can be gone on with.</summary>
    internal Course Copy()
    {
        var copy = new Course(Segments, Before)
        {
            A4 = A4,
            Remarks = Remarks,
            Spared = Spared,
            At = At,
            Carried = Carried,
            Topic = Topic,
            Pending = Pending,
            Ahead = Ahead,
            Sake = Sake,
            BreathBlade = BreathBlade,
            BreathSide = BreathSide,
        };
        copy.Drafts.AddRange(Drafts.Select(draft => draft.Copy()));
        copy.Noted.UnionWith(Noted);
        copy.Left.AddRange(Left);
        return copy;
    }
}
