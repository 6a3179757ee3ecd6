namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Which test is meant where none is named.</summary>
internal static class TestTopic
{
    /// <summary>“The tuning note sits, what, five cents high”: the test with a pitch that this sentence named.</summary>
    internal static TestKind? OfSentence(Course course)
    {
        if (course.LastInSentence is { Kind: EntryKind.Test, Slots.Test: { } said } && TestScale.Of(said).TakesPitch)
        {
            return said;
        }

        foreach (var item in course.Segments.Take(course.At).Reverse().Where(other => other.Sentence == course.Segment.Sentence).SelectMany(other => other.All(Cat.Test).Reverse()))
        {
            if (Enum.Parse<TestKind>(item.Value) is var test && TestScale.Of(test).TakesPitch)
            {
                return test;
            }
        }

        return null;
    }

    /// <summary>“Flat by 11, the tuning note”: the test is named after its pitch.</summary>
    internal static bool NamesLast(Course course, TestKind kind)
    {
        var segment = course.Segment;
        var named = segment.Find(Cat.Test);
        if (course.LastInSentence is not { Kind: EntryKind.Test, Slots.Test: { } said } last || said == kind || last.Last != course.At - 1 || named is not { } item || !TestScale.Of(kind).TakesPitch || !TestScale.Of(said).TakesPitch
            || course.Segments[last.First].Has(Cat.Test) || item.First - segment.First > 1 || segment.End - item.End > 1 || segment.Joint is not ",")
        {
            return false;
        }

        last.Slots = last.Slots with { Test = kind };
        return course.Absorb(aside: false);
    }

    /// <summary>“Still late, those low notes”: the test is named after its step.</summary>
    internal static string? StepBefore(Course course, TestKind kind)
    {
        var segment = course.Segment;
        if (course.At == 0 || segment.Joint is not "," || course.Segments[course.At - 1] is not { } before || before.Sentence != segment.Sentence || segment.Find(Cat.Test) is not { } named || named.First - segment.First > 1 || segment.End - named.End > 1
            || course.Drafts.Any(draft => draft.Last == course.At - 1 && draft.Kind is not EntryKind.Note) || before.Has(Cat.Test) || PlaceReader.Read(before).Count > 0)
        {
            return null;
        }

        return StepReader.Step(before, kind, null, new HeardPitch());
    }

    /// <summary>“At once now”: of the test last spoken of.</summary>
    internal static TestKind? Of(Course course, Segment segment)
    {
        var last = course.LastInSentence is { Kind: EntryKind.Test, Slots.Test: { } now } ? now : (TestKind?)null;
        if (last is { } spoken && StepReader.Step(segment, spoken, course, new HeardPitch()) is not null && !segment.Has(Cat.Verb) && !segment.Has(Cat.Quality))
        {
            return spoken;
        }

        if (course.Segments.Take(course.At).Any(other => other.Sentence == segment.Sentence && (other.Has(Cat.Test, nameof(TestKind.ClosingOrder)) || other.Items.Any(item => item.Cat is Cat.Verb && Moods.Action(item) is "press" or "squeeze"))) && StepRules.Closing(segment) is not null)
        {
            return TestKind.ClosingOrder;
        }

        if (segment.Has(Cat.Test) || PlaceReader.Read(segment).Any(mention => mention.HasPlace))
        {
            return null;
        }

        foreach (var test in Spoken(course))
        {
            if (StepReader.Step(segment, test, course, new HeardPitch()) is not null && StepCover.IsWhole(segment, test))
            {
                return test;
            }
        }

        return null;
    }

    /// <summary>The tests that were spoken of, the last first; the sound’s edge stands for its depth too.</summary>
    private static IEnumerable<TestKind> Spoken(Course course)
    {
        foreach (var item in course.Segments.Take(course.At).Reverse().SelectMany(other => other.Items.Where(item => item.Cat is Cat.Test or Cat.Sound).Reverse()))
        {
            if (item.Cat is Cat.Test)
            {
                yield return Enum.Parse<TestKind>(item.Value);
            }

            if (item.Cat is Cat.Sound || item.Value is "Edge" or "Depth")
            {
                yield return TestKind.Depth;
                yield return TestKind.Edge;
            }
        }

        if (course.Drafts.LastOrDefault() is { Kind: EntryKind.Adjustment, Slots.Zone: Reeds.Zone.Opening })
        {
            yield return TestKind.Opening;
        }

        foreach (var test in course.Before.Log.TestsSaid.Reverse().Select(fact => fact.Now.TestKind).Distinct())
        {
            yield return test;
        }
    }
}
