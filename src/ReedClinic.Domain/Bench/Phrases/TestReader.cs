namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads how the reed plays.</summary>
internal static class TestReader
{
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        if (segment.Asked || segment.Items.Any(item => item.Cat == Cat.Cond && Moods.IsIf(segment, item)))
        {
            return false;
        }

        if (Measures.TryRead(course))
        {
            return true;
        }

        if (Leanings.On(course) || Leanings.By(course) || Leanings.Alone(course) || Unscaled(course))
        {
            return true;
        }

        var lowNote = NoteWithHeight(segment);
        var pitch = PitchReader.Read(segment, lowNote is not null);
        if (pitch.IsSaid && IsToCome(segment))
        {
            course.AddNote();
            return true;
        }

        if (pitch is { Note: not null, Cents: null, Change: null } && course.LastInSentence is { Kind: EntryKind.Test, Slots: { Test: TestKind.LowResponse or TestKind.HighSteadiness, Pitch: not null, Step: null } } range && range.Last == course.At - 1 && !segment.Has(Cat.Test) && lowNote is null && segment.Joint is "," or "and" or "or")
        {
            range.Slots = range.Slots with { Step = StepReader.Step(segment, range.Slots.Test.Value, course, pitch) };
            return course.Absorb(aside: false);
        }

        var test = Which(course, segment, pitch, lowNote);
        if (test is not { } kind)
        {
            return false;
        }

        return Write(course, kind, pitch);
    }

    // What is told of a test and is no word of its scale: it is kept in its words.
    private static bool Unscaled(Course course)
    {
        if ((StepReader.StuffyNotes(course.Segment) ?? (StepReader.IsBrighter(course.Segment) ? TestKind.Edge : null)) is not { } test)
        {
            return false;
        }

        course.Add(EntryKind.Test, new ReadSlots { Test = test }).HasAside = true;
        return true;
    }

    /// <summary>“After that it’ll be a C”: not heard yet.</summary>
    private static bool IsToCome(Segment segment)
    {
        for (var i = segment.First; i < segment.End; i++)
        {
            if (segment.Word(i) is "will" or "would" or "should" or "might" or "could" or "may" && segment.Word(i - 1) is not ("i" or "we") && segment.Word(i + 1) is not "not"
                && !segment.Has(Cat.Not) && segment.Word(i + 1) is "be" or "come" or "sit" or "land" or "go" or "reach" or "rise" or "drop" or "then")
            {
                return true;
            }
        }

        return false;
    }

    private static bool Write(Course course, TestKind kind, HeardPitch pitch)
    {
        var segment = course.Segment;
        var step = StepReader.Step(segment, kind, course, pitch);
        var slots = Pitched(new ReadSlots { Test = kind, Step = step, Pitch = pitch.Note?.Name }, kind, pitch);
        slots = kind is TestKind.TuningNote && pitch.Cents is null && slots.Lean is not null && step is not null ? slots with { Lean = null } : slots;
        if (Merged(course, slots))
        {
            return true;
        }

        if (slots is { Step: null, Pitch: null, Cents: null, Change: null } && TestTopic.StepBefore(course, kind) is { } told)
        {
            slots = slots with { Step = told };
        }

        if (slots is { Step: null, Pitch: null, Cents: null, Change: null } && TestTopic.NamesLast(course, kind))
        {
            return true;
        }

        var said = slots.Step is not null || slots.Pitch is not null || slots.Cents is not null || slots.Change is not null;
        if (!said && (!segment.Has(Cat.Test) || segment.Has(Cat.Quality) || segment.Has(Cat.Risk) || segment.Has(Cat.Verb) || segment.Has(Cat.Plan) || !segment.Has(Cat.Good)))
        {
            return false;
        }

        if ((course.LastInSentence ?? (course.Last is { IsLoose: true } before && before.Last == course.At - 1 ? before : null)) is { Kind: EntryKind.Note } looked && course.Segments[looked.First].Items.Any(item => item.Is(Cat.Test, kind.ToString()) && !course.Segments[looked.First].Has(Cat.Plan)))
        {
            looked.Kind = EntryKind.Test;
            looked.Slots = slots;
            looked.Last = course.At;
            return true;
        }

        course.Add(EntryKind.Test, slots);
        return true;
    }

    internal static ReadSlots Pitched(ReadSlots slots, TestKind kind, HeardPitch pitch) => TestScale.Of(kind).TakesPitch
        ? slots with
        {
            Lean = pitch.Cents is null && pitch.Change is null ? pitch.Lean : null,
            Cents = pitch.Cents,
            Octave = pitch.Note?.Octave,
            Between = pitch.Between,
            Change = pitch.Change,
        }
        : slots;

    /// <summary>What is said in a second breath of the same test.</summary>
    private static bool Merged(Course course, ReadSlots slots)
    {
        var segment = course.Segment;
        if (segment.Joint is "but" && !segment.Has(Cat.Test) && slots is { Step: not null, Pitch: null } && course.LastInSentence is { Kind: EntryKind.Test, Slots: { Step: not null, Pitch: null } } other && other.Slots.Test == slots.Test)
        {
            other.Slots = other.Slots with { Step = slots.Step };
            return course.Absorb(aside: false);
        }

        if (Qualified(course, slots))
        {
            return course.Absorb(aside: false);
        }

        if (slots is { Test: TestKind.Effort } && course.LastInSentence is { Kind: EntryKind.Test, Slots.Test: TestKind.Effort })
        {
            return course.Absorb(aside: false);
        }

        if (course.LastInSentence is { Kind: EntryKind.Test } last && last.Slots.Test == slots.Test && ((Joins(last.Slots, slots) && segment.Joint is not "then" && !(segment.HasWord("still") && slots.Pitch is not null && last.Slots.Change is not null)) || (last.Slots.Step is not null && last.Slots.Step == slots.Step && slots.Pitch is null)))
        {
            last.Slots = last.Slots with
            {
                Step = last.Slots.Step ?? slots.Step,
                Pitch = last.Slots.Pitch ?? slots.Pitch,
                Lean = (last.Slots.Cents ?? slots.Cents) is not null ? null : last.Slots.Lean ?? slots.Lean,
                Cents = last.Slots.Cents ?? slots.Cents,
                Between = last.Slots.Between ?? slots.Between,
                Change = last.Slots.Change ?? slots.Change,
            };
            last.Last = course.At;
            return true;
        }

        return false;
    }

    // “Top E holds, with some help from the lip”; “mostly fine, the odd one fluffs”.
    private static bool Qualified(Course course, ReadSlots slots)
    {
        var segment = course.Segment;
        if (course.LastInSentence is not { Kind: EntryKind.Test, Slots: { Step: not null, Test: { } test } } last || last.Last != course.At - 1 || slots.Test != test || slots.Step is null || slots.Pitch is not null || slots.Step == last.Slots.Step || segment.Has(Cat.Test) || segment.Has(Cat.Now)
            || TestScale.Of(test).Shape is not ScaleShape.OneSided)
        {
            return false;
        }

        var first = segment.Word(segment.First) is "but" or "and" or "just" ? segment.Word(segment.First + 1) : segment.Word(segment.First);
        var good = TestScale.Of(test).Steps[TestScale.Of(test).Good];
        if (last.Slots.Step == good && slots.Step != good && !segment.HasWord("odd") && !segment.HasWord("occasional"))
        {
            last.Slots = last.Slots with { Step = slots.Step };
            return true;
        }

        if (test is TestKind.Seal && segment.Joint is "and" or "then")
        {
            last.Slots = last.Slots with { Step = slots.Step };
            return true;
        }

        if (first is "with" or "if" or "only" or "provided" or "unless" or "when" or "so")
        {
            last.Slots = last.Slots with { Step = slots.Step };
            return true;
        }

        return segment.HasWord("odd") || segment.HasWord("occasional") || segment.HasWord("one") || segment.HasWord("now") || segment.HasWord("sometimes");
    }

    private static bool Joins(ReadSlots one, ReadSlots other) => !(one.Step is not null && other.Step is not null)
        && !(one.Pitch is not null && other.Pitch is not null && one.Pitch != other.Pitch) && !(one.Cents is not null && other.Cents is not null)
        && !(one.Change is not null && other.Change is not null);

    /// <summary>“Low D” and “high F”: a note of that end of the instrument; but a low C of the crow is a flat one.</summary>
    internal static TestKind? NoteWithHeight(Segment segment)
    {
        if (segment.Items.Any(item => item.Cat == Cat.Test && item.Value is "Crow" or "Peep" or "TuningNote"))
        {
            return null;
        }

        foreach (var note in PitchReader.NotesIn(segment))
        {
            var before = segment.Word(note.First - 1);
            if (before is "low" or "bottom" or "lowest")
            {
                return segment.Word(note.First - 2) is "a" or "is" or "'s" ? null : TestKind.LowResponse;
            }

            if (before is "repeated" or "tongued" or "dry" or "detached" or "staccato" or "tonguing" or "articulated" or "short" or "quick")
            {
                return TestKind.TonguedStarts;
            }

            if (before is "high" or "top" or "highest")
            {
                return TestKind.HighSteadiness;
            }
        }

        return null;
    }

    private static TestKind? Which(Course course, Segment segment, HeardPitch pitch, TestKind? lowNote)
    {
        if (lowNote is { } height)
        {
            return height;
        }

        if (pitch.Note is { Name: "A" } a && (segment.Word(a.First - 1) is "the" || (a.First == segment.First && segment.Word(a.End) is "is" or "'s" or "bang" or "spot")) && !segment.Has(Cat.Test))
        {
            return TestKind.TuningNote;
        }

        var named = segment.Joint is ":" && course.Pending?.Zone is Reeds.Zone.Opening && StepReader.Opening(segment) is not null ? TestKind.Opening : Named(segment, pitch);
        if (named is not null)
        {
            return named;
        }

        if (segment.Has(Cat.Sound) && StepReader.OfSound(segment) is { } sound)
        {
            return sound;
        }

        if (pitch is { Note: not null, Cents: null, Lean: null, Change: null } && course.LastInSentence is { Kind: EntryKind.Test, Slots.Test: TestKind.LowResponse or TestKind.HighSteadiness } range && StepReader.Step(segment, range.Slots.Test.Value, course, pitch) is not null)
        {
            return range.Slots.Test;
        }

        if (pitch.IsSaid && !segment.Has(Cat.Stroke))
        {
            return TestTopic.OfSentence(course)
                ?? course.Drafts.LastOrDefault(draft => draft.Kind == EntryKind.Test && draft.Slots.Test is { } test && TestScale.Of(test).TakesPitch)?.Slots.Test
                ?? course.Before.LastPitched?.TestKind ?? TestKind.Crow;
        }

        return StepReader.Alone(segment) ?? TestTopic.Of(course, segment);
    }

    private static TestKind? Named(Segment segment, HeardPitch pitch)
    {
        TestKind? found = null;
        foreach (var item in segment.All(Cat.Test))
        {
            var kind = Enum.Parse<TestKind>(item.Value);
            if (kind is TestKind.Effort && !StepReader.IsEffort(segment))
            {
                continue;
            }

            if (kind is TestKind.Seal or TestKind.ClosingOrder or TestKind.Opening or TestKind.TonguedStarts or TestKind.Swell or TestKind.Edge or TestKind.Depth && StepReader.Step(segment, kind, null, pitch) is null)
            {
                found ??= kind is TestKind.ClosingOrder or TestKind.Opening or TestKind.Seal ? null : kind;
                continue;
            }

            found = found is null || found is TestKind.Crow && kind is TestKind.Peep ? kind : found;
            if (kind is TestKind.Peep)
            {
                return kind;
            }
        }

        return found ?? (segment.Has(Cat.Zone, "Opening") && StepReader.Opening(segment) is not null ? TestKind.Opening : null);
    }
}
