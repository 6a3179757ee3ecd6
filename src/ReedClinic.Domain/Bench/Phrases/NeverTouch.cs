using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Never clip this one”: of this reed, and for good, so it is left alone there; what one never does is only said.</summary>
internal static class NeverTouch
{
    private static readonly HashSet<string> Lead = ["please", "pls", "and", "but", "so", "we", "you", "must", "should", "ever", "do", "not", "never"];

    private static readonly HashSet<string> Verbs = ["clip", "cut", "trim", "shorten", "scrape", "touch", "thin", "dust", "sand", "work"];

    private static readonly HashSet<string> Until = ["yet", "when", "while", "before", "until", "without", "unless", "if", "after"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Note && draft.Last - draft.First <= 1))
        {
            var segment = course.Segments[draft.First];
            var whole = segment.With(course.Segments[draft.Last]);
            if (Verb(segment) is { } verb && IsThis(segment, verb) && !whole.Asked && !whole.Has(Cat.Cond) && !Spoken.HasAny(whole, Until))
            {
                var place = PlaceReader.Read(segment).FirstOrDefault(mention => mention.HasPlace);
                draft.Kind = EntryKind.LeaveAlone;
                draft.Slots = new ReadSlots { Zone = place is { Usual: not null and not Zone.WholeReed } ? place.Usual : segment.Word(verb) is "clip" or "cut" or "trim" or "shorten" ? Zone.TipEdge : Zone.WholeReed, Blades = place?.OneBlade, Sides = place?.OneSide };
                draft.Doubts.Clear();
                draft.HasAside |= draft.First != draft.Last;
            }
        }
    }

    // “Never clip”, “don’t ever scrape”, and nothing ahead of it.
    private static int? Verb(Segment segment)
    {
        var at = segment.First;
        while (at < segment.End && (Lead.Contains(segment.Word(at)) || segment.Covered(at, Cat.Filler)))
        {
            at++;
        }

        var ahead = segment.Part(segment.First, at);
        return at < segment.End && Verbs.Contains(segment.Word(at)) && (ahead.HasWord("never") || ahead.HasWord("not") && ahead.HasWord("ever")) ? at : null;
    }

    // “This one”, “this reed”, “it”: what lies in the hand.
    private static bool IsThis(Segment segment, int verb) => Enumerable.Range(verb + 1, segment.End - verb - 1).Any(at => segment.Word(at) is "this" or "it" && segment.Word(at + 1) is "" or "one" or "reed" or "again" or "ever" or "," or "." or "!");
}
