namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“A bit rattly at the bottom”, “sounds tired”: what a sound is like and no scale has a word for is a remark, and no opening, effort, peep or edge.</summary>
internal static class Timbres
{
    private static readonly Doubt Unsure = new("test", "which test this belongs to wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Step: not null, Pitch: null, Cents: null, Change: null, Test: TestKind.Opening or TestKind.Effort or TestKind.Peep or TestKind.ClosingOrder or TestKind.Edge or TestKind.Crow or TestKind.SoftestStart } }).ToList())
        {
            var segment = course.Segments[draft.Head];
            if (!(IsNoisy(segment) || draft.Slots.Test is TestKind.Edge && IsTired(segment)) || IsNamed(segment, draft.Slots.Test!.Value))
            {
                continue;
            }

            if (course.Drafts.IndexOf(draft) is > 0 and var at && course.Drafts[at - 1] is { Kind: EntryKind.Test } before && before.Sentence == draft.Sentence && before.Last >= draft.First - 1)
            {
                Spoken.Join(course, before, draft);
            }
            else
            {
                Spoken.Unmake(draft, Unsure);
            }
        }
    }

    private static bool IsNoisy(Segment segment) => Spoken.HasStem(segment, "rattl", "buzz", "woolly", "wooly", "fuzz", "rasp", "gravel", "honk", "quack");

    // Of a sound that is dead or tired nobody can tell how much edge it has.
    private static bool IsTired(Segment segment) => (segment.HasWord("tired") || segment.HasWord("dead") || segment.HasWord("lifeless") || segment.HasWord("knackered") || segment.HasWord("flabby"))
        && !Spoken.HasStem(segment, "dark", "dull", "cover", "muffl", "bright", "edg", "stuff");

    private static bool IsNamed(Segment segment, TestKind test) => segment.Has(Cat.Test, test.ToString()) || test is TestKind.Opening && segment.Has(Cat.Zone, "Opening");
}
