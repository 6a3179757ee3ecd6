namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>An entry while the phrase is being read.</summary>
internal sealed class Draft
{
    internal required EntryKind Kind { get; set; }

    internal required ReadSlots Slots { get; set; }

    /// <summary>The segment that says it; those before it in its span only lead up to it.</summary>
    internal required int Head { get; init; }

    /// <summary>The first of its segments.</summary>
    internal required int First { get; set; }

    /// <summary>The last of its segments.</summary>
    internal required int Last { get; set; }

    internal int Sentence { get; init; }

    internal List<Doubt> Doubts { get; } = [];

    /// <summary>True when words were taken into its span that say nothing of their own.</summary>
    internal bool HasAside { get; set; }

    /// <summary>True for a remark that is only a reason or a lead where its sentence has an entry.</summary>
    internal bool IsLoose { get; set; }

    /// <summary>The verb of an adjustment.</summary>
    internal string? Verb { get; init; }

    /// <summary>True when its zone was named and not taken from its kind.</summary>
    internal bool ZoneSaid { get; init; }

    /// <summary>True when the blade or side came from somewhere else in the phrase.</summary>
    internal bool PlaceCarried { get; set; }

    internal Draft Copy()
    {
        var copy = new Draft { Kind = Kind, Slots = Slots, Head = Head, First = First, Last = Last, Sentence = Sentence, HasAside = HasAside, IsLoose = IsLoose, Verb = Verb, ZoneSaid = ZoneSaid, PlaceCarried = PlaceCarried };
        copy.Doubts.AddRange(Doubts);
        return copy;
    }
}
