namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Flat and sharp, said without the note they belong to.</summary>
internal static class Leanings
{
    /// <summary>“…, a little low”, after a pitch.</summary>
    internal static bool On(Course course)
    {
        var segment = course.Segment;
        if (segment.Find(Cat.Lean) is not { } lean || course.LastInSentence is not { Kind: EntryKind.Test, Slots: { Pitch: not null, Cents: null, Lean: null, Test: { } test } } last || !TestScale.Of(test).TakesPitch
            || PitchReader.Read(segment).IsSaid || segment.Has(Cat.Test) || segment.Has(Cat.Octave) || Moods.Head(segment) is not null || segment.HasWord("first") || segment.Has(Cat.Join) || segment.Has(Cat.Only))
        {
            return false;
        }

        last.Slots = last.Slots with { Lean = lean.Value };
        return course.Absorb(aside: false);
    }

    /// <summary>“Bit flat maybe, ten cents”: how far it leans.</summary>
    internal static bool By(Course course)
    {
        var segment = course.Segment;
        if (course.LastInSentence is not { Kind: EntryKind.Test, Slots: { Lean: { } lean, Cents: null } } last || last.Last != course.At - 1 || segment.Has(Cat.Lean) || segment.Has(Cat.Change) || segment.Has(Cat.Test) || PitchReader.NotesIn(segment).Count > 0 || !segment.Has(Cat.Cent)
            || Enumerable.Range(segment.First, segment.End - segment.First).Select(at => Numbers.At(segment.Tokens, at, segment.End)).FirstOrDefault(number => number is not null) is not { } cents)
        {
            return false;
        }

        last.Slots = last.Slots with { Lean = null, Cents = lean is "flat" ? -cents.Value : cents.Value };
        return course.Absorb(aside: false);
    }

    /// <summary>“Still a bit low”, of the crow or the peep that was last heard.</summary>
    internal static bool Alone(Course course)
    {
        var segment = course.Segment;
        if (segment.Find(Cat.Lean) is not { } lean || course.Last is not null || course.Before.LastPitched is not { TestKind: TestKind.Crow or TestKind.Peep } heard || course.Before.Last is not Test
            || Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Tokens[at].Kind is TokenKind.Number or TokenKind.Note
                || (segment.Tokens[at].Kind is TokenKind.Word && !segment.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Lean or Cat.Degree or Cat.Filler or Cat.Now) && segment.Word(at) is not ("still" or "it" or "is" or "'s" or "a" or "now" or "but" or "and" or "just" or "on" or "the" or "side" or "too" or "though"))))
        {
            return false;
        }

        course.Add(EntryKind.Test, new ReadSlots { Test = heard.TestKind, Lean = lean.Value });
        return true;
    }
}
