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

    /// <summary>“Bit flat maybe, ten cents”, “flat, about B flat and 20 cents”: how far it leans; which way may stay unsaid.</summary>
    internal static bool By(Course course)
    {
        var segment = course.Segment;
        if (course.LastInSentence is not { Kind: EntryKind.Test, Slots: { Cents: null, Change: null, Between: null, Test: { } test } } last || last.Last != course.At - 1 || (last.Slots.Lean is null && (last.Slots.Pitch is null || !TestScale.Of(test).TakesPitch))
            || segment.Has(Cat.Lean) || segment.Has(Cat.Change) || segment.Has(Cat.Test) || segment.Has(Cat.Verb) || PitchReader.NotesIn(segment).Count > 0 || !segment.Has(Cat.Cent)
            || Enumerable.Range(segment.First, segment.End - segment.First).Select(at => Numbers.At(segment.Tokens, at, segment.End)).FirstOrDefault(number => number is not null) is not { } cents)
        {
            return false;
        }

        if ((last.Slots.Lean ?? Said(course, last)) is not { } lean)
        {
            last.Doubts.Add(new Doubt("cents", "whether above or below wasn’t said"));
            return course.Absorb();
        }

        last.Slots = last.Slots with { Lean = null, Cents = lean is "flat" ? -cents.Value : cents.Value };
        return course.Absorb(aside: false);
    }

    // Flat or sharp, said of the pitch and no part of a note’s name.
    private static string? Said(Course course, Draft draft) => course.Segments.Skip(draft.First).Take(course.At - draft.First)
        .SelectMany(segment => segment.All(Cat.Lean).Where(lean => !PitchReader.NotesIn(segment).Any(note => note.First <= lean.First && lean.End <= note.End)))
        .Select(lean => lean.Value).LastOrDefault();

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
