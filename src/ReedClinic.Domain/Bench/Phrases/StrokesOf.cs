using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The left one, two more strokes”, after the reed was pressed closed: strokes are taken with the knife, and belong to what was scraped last.</summary>
internal static class StrokesOf
{
    // What no stroke is taken in.
    private static readonly HashSet<string> Strokeless = ["close-press", "open-squeeze", "draw-air", "round-eye", "flatten-eye", "bend-wire", "add-wire", "seal-sides", "seal-thread", "realign", "retie", "clean-inside", "refit-cork", "soak", "rest-dry", "wait", "clip", "clip-hair"];

    private static readonly HashSet<string> Sided = ["left", "right"];

    private static readonly Doubt Whose = new("kind", "strokes, and what was done last was no scraping: of what wasn’t said, so it is kept as a note");

    private static readonly Doubt Last = new("zone", "taken for the place that was scraped last");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots: { Kind: not null, Strokes: not null } }))
        {
            var whole = course.Segments[Spoken.Lead(course, draft)].With(course.Segments[draft.Last]);
            if (!(Spoken.HasStem(whole, "stroke") || draft.Slots.Kind is "close-press" && Spoken.HasAny(whole, Sided)) || whole.All(Cat.Verb).Any(verb => !whole.Word(verb.First).StartsWith("stroke", StringComparison.Ordinal)) || PlaceReader.Read(whole).Any(mention => mention.HasPlace))
            {
                continue;
            }

            var isBare = !Strokeless.Contains(draft.Slots.Kind!);
            if (isBare && !IsTheOne(whole))
            {
                continue;
            }

            var (blade, side) = (One<Blades>(whole, "upper", "top", Blades.Upper) ?? One<Blades>(whole, "lower", "bottom", Blades.Lower), One<Sides>(whole, "left", "left", Sides.Left) ?? One<Sides>(whole, "right", "right", Sides.Right));
            if (Scraped(course, draft, side is not null) is { } before)
            {
                draft.Slots = before with { Strokes = draft.Slots.Strokes, Mm = null, Words = null, Blades = blade ?? before.Blades, Sides = side ?? before.Sides, Sake = null };
                draft.Doubts.Add(Last);
            }
            else if (!isBare)
            {
                Spoken.Unmake(draft, Whose);
            }
        }
    }

    // “The left one”: of what was spoken of last.
    private static bool IsTheOne(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "left" or "right" && whole.Word(at + 1) is "one");

    private static T? One<T>(Segment whole, string word, string other, T value)
        where T : struct => whole.HasWord(word) || whole.HasWord(other) ? value : null;

    // The scraping that was told of last; where a side is named, one of a place that has two.
    private static ReadSlots? Scraped(Course course, Draft draft, bool sided) => course.Drafts.TakeWhile(other => other != draft).Where(other => other.Kind is EntryKind.Adjustment).Select(other => other.Slots).Reverse()
        .Concat(course.Before.Log.Live<Adjustment>().OrderByDescending(fact => fact.Sequence).Select(fact => AgainReader.Of(fact.Now)))
        .FirstOrDefault(slots => !Strokeless.Contains(slots.Kind!) && (!sided || slots.Sides is not null));
}
