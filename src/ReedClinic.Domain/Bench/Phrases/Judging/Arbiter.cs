namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>Reads one segment by the rules, and otherwise where the judge knows better.</summary>
internal static class Arbiter
{
    /// <summary>Reads the segment.</summary>
    /// <param name="course">What was understood so far.</param>
    /// <param name="judge">The judge; null for the rules alone.</param>
    /// <param name="rules">The rules.</param>
    /// <param name="watch">Is told of each segment.</param>
    /// <param name="choose">Chooses the kind in the judge’s place.</param>
    /// <returns>What was understood with it.</returns>
    internal static Course Read(Course course, Judge? judge, Action<Course> rules, Action<Sight>? watch, Func<Sight, string>? choose)
    {
        if (judge is null && watch is null)
        {
            rules(course);
            return course;
        }

        var ruled = course.Copy();
        rules(ruled);
        var sight = Sight.Of(course, ruled, judge ?? new Judge(new Weights()));
        watch?.Invoke(sight);
        if (choose is not null || judge is null || IsPlain(course, ruled))
        {
            return Taken(course, sight, choose?.Invoke(sight) ?? sight.Said, judge is not null && !IsPlain(course, ruled));
        }

        var (kind, deed, remark) = judge.Choose(sight);
        course.Remarks[course.At] = remark;
        kind = kind is "ended" && IsUnknown(course.Segment) ? sight.Said : kind;
        kind = kind is "note" && sight.Said is "finding" && IsSuspected(course.Segment, ruled) ? sight.Said : kind;
        var taken = Taken(course, sight, IsPlayedAtLarge(course, kind) ? "note" : kind, refined: true);
        return deed < Balance.BeyondDoubt ? Doubted(taken, course.At) : taken;
    }

    private static bool IsPlayedAtLarge(Course course, string kind) => (kind is "finding" or "lookedfor" or "test" or "ended" or Judge.Nothing) && AtLarge.Says(course);

    // “The heart might be a little too thick”: suspected, and no mere remark.
    private static bool IsSuspected(Segment segment, Course ruled) => ruled.Drafts.LastOrDefault() is { Kind: EntryKind.Finding, Slots: { Certainty: Certainty.Suspected, Character: FindingCharacter.Fault, Kind: not "something-else" } }
        && segment.Has(Cat.Hedge) && segment.Has(Cat.Quality) && !segment.Asked && !segment.Has(Cat.Plan) && !segment.Has(Cat.Cond) && !segment.Has(Cat.Risk) && !segment.Has(Cat.Verb);

    // Words of which none is known end nothing.
    private static bool IsUnknown(Segment segment) =>
        !segment.Items.Any(item => item.First >= segment.First && item.First < segment.End && item.Cat is not (Cat.Filler or Cat.Now));

    private static Course Taken(Course course, Sight sight, string kind, bool refined)
    {
        if (kind == sight.Said)
        {
            if (refined)
            {
                Refining.Refine(sight);
            }

            return sight.Ruled;
        }

        var judged = course.Copy();
        if (!Judged.Read(judged, kind, sight))
        {
            return sight.Ruled;
        }

        judged.Carried = sight.Ruled.Carried;
        return judged;
    }

    // Recorded though nothing was done is the worst that can be misread.
    private static Course Doubted(Course course, int at)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment && draft.Head >= at && !draft.Doubts.Contains(Doubt.Done)))
        {
            draft.Doubts.Add(Doubt.Done);
        }

        return course;
    }

    // A length with its number is what it says, and so are cents and nothing else, a leaning right after a peep, stuffy notes and a brighter sound: no judge makes a fault of the one, or a step of the others.
    private static bool IsPlain(Course course, Course ruled) => IsPlainStop(course, ruled) || ruled.Drafts.LastOrDefault() is { Kind: EntryKind.Test } last && last.Head >= course.At
        && (last.Slots.Length is not null || (last.Slots is { Test: { } test, Pitch: null } && TestScale.Of(test).TakesPitch && course.Segments.Count == 1 && (last.Slots.Cents is not null || (test is TestKind.Peep && course.Segment.Has(Cat.Lean) && !course.Segment.Has(Cat.Test)))) || StepReader.StuffyNotes(course.Segment) is not null || StepReader.IsBrighter(course.Segment));

    // “Stop here”, and nothing else in its breath, whatever stands before it or after it.
    private static bool IsPlainStop(Course course, Course ruled) => ruled.Drafts.LastOrDefault() is { Kind: EntryKind.Stopped } stopped && stopped.Head >= course.At && course.Segment is var segment
        && segment.HasWord("here") && segment.HasWord("stop") | segment.HasWord("stopping") | segment.HasWord("stopped")
        && Enumerable.Range(segment.First, segment.End - segment.First).All(at => segment.Tokens[at].Kind is TokenKind.Break || segment.Covered(at, Cat.Stop) || segment.Covered(at, Cat.Filler) || segment.Covered(at, Cat.Now) || segment.Word(at) is "and" or "so" or "i" or "");
}
