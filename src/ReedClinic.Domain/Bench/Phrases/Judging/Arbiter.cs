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
        var sight = new Sight(course, ruled, (judge ?? new Judge(new Weights())).Of(course));
        watch?.Invoke(sight);
        var kind = choose?.Invoke(sight) ?? (IsPlain(course, ruled) ? sight.Said : judge?.Choose(sight)) ?? sight.Said;
        if (kind == sight.Said)
        {
            if (judge is not null && !IsPlain(course, ruled))
            {
                Refining.Refine(sight);
            }

            return ruled;
        }

        var judged = course.Copy();
        if (!Judged.Read(judged, kind, sight))
        {
            return ruled;
        }

        judged.Carried = ruled.Carried;
        return judged;
    }

    // A length with its number is what it says, and so are cents and nothing else, stuffy notes and a brighter sound: no judge makes a fault of the one, or a step of the others.
    private static bool IsPlain(Course course, Course ruled) => ruled.Drafts.LastOrDefault() is { Kind: EntryKind.Test } last && last.Head >= course.At
        && (last.Slots.Length is not null || (last.Slots is { Test: { } test, Pitch: null, Cents: not null } && TestScale.Of(test).TakesPitch && course.Segments.Count == 1) || StepReader.StuffyNotes(course.Segment) is not null || StepReader.IsBrighter(course.Segment));
}
