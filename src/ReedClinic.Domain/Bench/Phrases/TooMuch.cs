namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Oops, took too much off the left corner”, right after work there: a remark about what was just done, and no second round of it.</summary>
internal static class TooMuch
{
    private static readonly HashSet<string> Startled = ["oops", "whoops", "oopsie", "damn", "argh", "ugh", "ouch", "drat", "blast", "uh-oh", "dammit", "crumbs"];

    private static readonly HashSet<string> Pointing = ["there", "here"];

    private static readonly HashSet<string> Again = ["again", "another", "also"];

    private static readonly HashSet<string> Thin = ["thin", "thinner", "soft", "weak", "gone", "through", "flimsy", "hollow", "broken", "chipped", "nicked"];

    private static readonly Doubt Just = new("kind", "taken for a remark about what was just done, so it is kept as a note");

    private static readonly Doubt Unsure = new("kind", "unsure what that did to the reed, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = course.Segments[draft.First].With(course.Segments[draft.Last]);
            if (draft.Kind is EntryKind.Adjustment && IsTooMuch(whole) && (IsStartled(course, draft) || IsOnlyPointed(whole) || IsOfLastWork(course, draft, whole)))
            {
                Spoken.Unmake(draft, Just);
            }
            else if ((draft is { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Fault } || draft is { Kind: EntryKind.Test, Slots: { Step: null, Pitch: null, Cents: null, Change: null, Length: null } }) && IsTaken(whole) && !Thin.Any(word => whole.HasWord(word) && !(word is "gone" && whole.HasWord("far"))))
            {
                Spoken.Unmake(draft, Unsure);
            }
        }
    }

    private static bool IsTooMuch(Segment whole) => Pairs(whole, "too", "much") || Pairs(whole, "too", "far") || Pairs(whole, "too", "many") || whole.HasWord("overdid") || IsMeantLess(whole);

    // “More than I wanted”.
    private static bool IsMeantLess(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "than" && whole.Word(at - 1) is "more" && whole.Word(at + 1) is "i" && Enumerable.Range(at + 2, 2).Any(word => whole.Word(word) is "wanted" or "meant" or "intended" or "planned" or "liked"));

    // “Scraped too much off the heart”, “went too far on the left corner”: a deed that was overdone, and nothing of what it left.
    private static bool IsTaken(Segment whole) => whole.HasWord("overdid") || Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "too"
        && (whole.Word(at + 1) is "much" && whole.Word(at + 2) is "off" or "out" or "from" || whole.Word(at + 1) is "far" && (whole.HasWord("went") || whole.HasWord("gone")) && (whole.Word(whole.First) is "went" or "gone" || whole.HasWord("i") || whole.HasWord("we"))));

    private static bool IsStartled(Course course, Draft draft) => course.Segments.Where(segment => segment.Sentence == draft.Sentence || segment.Sentence == draft.Sentence - 1 && Spoken.HasAny(segment, Startled)).Any(segment => Spoken.HasAny(segment, Startled));

    // “There”, and no part of the reed.
    private static bool IsOnlyPointed(Segment whole) => Spoken.HasAny(whole, Pointing) && PlaceReader.Read(whole).All(mention => !mention.HasPlace);

    // The same part was worked on last, here or in the log, and no other blade or side of it is named.
    private static bool IsOfLastWork(Course course, Draft draft, Segment whole)
    {
        if (Spoken.HasAny(whole, Again))
        {
            return false;
        }

        var before = course.Drafts.LastOrDefault(other => other.Kind is EntryKind.Adjustment && other.Head < draft.Head)?.Slots
            ?? (course.Before.Last is Adjustment work ? AgainReader.Of(work) : null);
        return before is { Zone: { } zone } && draft.Slots.Zone is { } said && (zone == said || PlaceReader.Read(whole).All(mention => !mention.HasPlace) || PlaceReader.Of(zone) is { Length: > 0 } region && region == PlaceReader.Of(said))
            && Meets(before.Blades, draft.Slots.Blades) && Meets(before.Sides, draft.Slots.Sides);
    }

    private static bool Meets<T>(T? one, T? other)
        where T : struct => one is null || other is null || one.Equals(other);

    private static bool Pairs(Segment whole, string one, string other) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) == one && whole.Word(at + 1) == other);
}
