using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Tip line slopes a touch”, “it slants slightly”: what slopes is the end of the reed, and by how much is kept; “the slope” is a place.</summary>
internal static class Slopes
{
    private static readonly HashSet<string> Verbs = ["slopes", "sloping", "slants", "slanting"];

    private static readonly HashSet<string> Ahead = ["line", "tip", "edge", "end", "it", "is", "'s", "one", "this", "that", "still", "also", "and", "but", "which", "just", "clearly", "definitely"];

    private static readonly HashSet<string> Behind = ["a", "slightly", "to", "off", "down", "away", "very", "badly", "really", "quite", "rather", "left", "right", "towards", "still", "now", "ever", "just", "somewhat", "too", "noticeably", "the"];

    private static readonly HashSet<string> Elsewhere = ["heart", "ramp", "into", "from", "opening", "mouth", "staple", "cork", "thread", "window", "windows", "back", "pitch", "between", "gently"];

    private static readonly Doubt What = new("kind", "taken for the line of the tip");

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            var segment = course.Segments[at];
            var verb = Verb(segment);
            if (verb < 0 || segment.Asked || segment.Has(Cat.Not) || segment.Has(Cat.Plan) || segment.Has(Cat.Cond) || Spoken.HasAny(segment, Elsewhere) || segment.Has(Cat.Stroke) || segment.Has(Cat.Leave) || !IsVerb(segment, verb) || IsWell(segment))
            {
                continue;
            }

            if (IsOnlyDown(segment, verb))
            {
                course.Drafts.Find(draft => draft is { Kind: EntryKind.Finding, Slots.Kind: "tip-line-slanted", Doubts.Count: 0 } && draft.Head == at)?.Doubts.Add(What);
                continue;
            }

            if (course.Drafts.Exists(other => other is { Kind: EntryKind.Finding, Slots.Kind: "tip-line-slanted" or "crooked-on-staple" or "opening-lopsided" } && other.Sentence == segment.Sentence && (other.Head != at || other.Slots.Zone is not Zone.Transition)))
            {
                continue;
            }

            if (course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is not { Kind: EntryKind.Adjustment or EntryKind.Verdict or EntryKind.Stopped } && Alone.Of(course, at) is { } draft)
            {
                Find(segment, draft, verb, Spoken.Whole(course, Spoken.Lead(course, draft), at));
            }
        }
    }

    private static int Verb(Segment segment)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            if (Verbs.Contains(segment.Tokens[at].Text))
            {
                return at;
            }
        }

        return -1;
    }

    private static bool IsVerb(Segment segment, int verb) => (verb == segment.First && !segment.Word(verb).EndsWith("ing", StringComparison.Ordinal) || Ahead.Contains(segment.Word(verb - 1))) && (verb + 1 >= segment.End || segment.Tokens[verb + 1].Kind is TokenKind.Break ? verb > segment.First : Behind.Contains(segment.Word(verb + 1)));

    // “The tip slopes away nicely”: that is how a tip is to be.
    private static bool IsWell(Segment segment) => segment.HasWord("evenly") || segment.HasWord("smoothly") || segment.All(Cat.Good).Any(good => segment.Word(good.First) is not ("good" or "right" or "fair") || segment.Word(good.First - 1) is not ("a" or "the"));

    // “The tip slopes down”: towards its end, unless a side or its line is named.
    private static bool IsOnlyDown(Segment segment, int verb) => segment.Word(verb + 1) is "down" or "away" && !segment.Has(Cat.Side) && !segment.HasWord("line") && !segment.HasWord("edge") && !segment.HasWord("end") && !segment.HasWord("side");

    private static void Find(Segment segment, Draft draft, int verb, Segment whole)
    {
        var said = whole.HasWord("line") || whole.HasWord("edge") || whole.HasWord("end") || segment.Word(verb).StartsWith("slant", StringComparison.Ordinal) && whole.HasWord("tip");
        draft.Kind = EntryKind.Finding;
        draft.Slots = new ReadSlots { Kind = "tip-line-slanted", Character = FindingCharacter.Fault, Zone = Zone.TipEdge, Blades = PlaceReader.Read(segment).Select(place => place.OneBlade).FirstOrDefault(blade => blade is not null), Degree = FindingReader.Degree(segment, new Item(Cat.Quality, "", verb, verb + 1)), Certainty = segment.Has(Cat.Hedge) ? Certainty.Suspected : null, Known = FindingReader.Known(segment) };
        draft.HasAside |= segment.Has(Cat.Side);
        draft.Doubts.Clear();
        if (!said)
        {
            draft.Doubts.Add(What);
        }
    }
}
