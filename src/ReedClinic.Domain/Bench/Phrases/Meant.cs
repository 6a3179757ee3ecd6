namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Plays pp now, no bump”, “improved response”: how a reed plays is no verdict; a verdict is meant, by a word for it, by an end of the work, or by its bare name.</summary>
internal static class Meant
{
    private static readonly string[] Saying = ["verdict", "verd", "call", "stop", "quit", "finish", "label", "judg", "grade"];

    private static readonly HashSet<string> Ends = ["leave", "leaving", "home", "send", "sending", "sent", "post", "posting", "knife", "red", "green", "put"];

    private static readonly string[] Arrival = ["came", "arriv", "box", "envelope", "parcel", "here"];

    private static readonly string[] Playing = ["respon", "tone", "sound", "crow", "attack", "articul", "tongu", "pitch", "tun", "note", "low", "high", "play", "blow", "speak", "start", "pp", "ff", "easi", "easy", "free"];

    private static readonly string[] Betters = ["improv", "better", "happi", "nicer", "freer"];

    private static readonly HashSet<string> Denying = ["no", "not", "hardly", "barely", "scarcely", "never", "nothing", "neither", "without", "little", "n't"];

    private static readonly Doubt Unsure = new("kind", "no verdict was called so, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.Improved }).ToList())
        {
            if (IsDenied(course.Segments[draft.Head]) || !IsMeant(course, draft))
            {
                Unsay(course, draft);
            }
        }
    }

    // Beside a test of its sentence the words are that one’s.
    private static void Unsay(Course course, Draft draft)
    {
        var at = course.Drafts.IndexOf(draft);
        if (at > 0 && course.Drafts[at - 1] is { Kind: EntryKind.Test } before && before.Sentence == draft.Sentence && before.Last == draft.First - 1)
        {
            Spoken.Join(course, before, draft);
        }
        else if (at + 1 < course.Drafts.Count && course.Drafts[at + 1] is { Kind: EntryKind.Test } after && after.Sentence == draft.Sentence && after.First == draft.Last + 1)
        {
            (after.First, after.HasAside) = (draft.First, true);
            course.Drafts.Remove(draft);
        }
        else
        {
            Spoken.Unmake(draft, Unsure);
        }
    }

    private static bool IsMeant(Course course, Draft draft) => course.Before.Last is Stopped
        || course.Drafts.Exists(other => other.Kind is EntryKind.Stopped || other.Kind is EntryKind.Verdict && other != draft)
        || course.Segments.Any(IsEnd)
        || IsBare(course.Segments[draft.Head]) && !course.Drafts.Exists(other => other != draft && other.Kind is not EntryKind.Note && other.Sentence == draft.Sentence);

    // “Call it improved”, “goes back better”, “better than it came”.
    private static bool IsEnd(Segment segment) => Spoken.HasAny(segment, Ends) || Spoken.HasStem(segment, Saying)
        || (segment.Has(Cat.Than) || segment.HasWord("than") || segment.HasWord("when") || segment.All(Cat.Verdict).Any(named => named.Count > 1) || Enumerable.Range(segment.First, segment.End - segment.First).LastOrDefault(at => segment.Word(at).Length > 0) is var last && segment.Word(last) is "came" && segment.Word(last - 1) is "it") && Spoken.HasStem(segment, Arrival)
        || segment.HasWord("back") && (segment.HasWord("goes") || segment.HasWord("going") || segment.HasWord("have") || segment.HasWord("go"));

    // “Hardly improved”, “no improvement”, “not really better”: what is denied is no verdict.
    private static bool IsDenied(Segment segment)
    {
        var better = Enumerable.Range(segment.First, segment.End - segment.First).FirstOrDefault(at => Betters.Any(stem => segment.Word(at).StartsWith(stem, StringComparison.Ordinal)), segment.First);
        return Enumerable.Range(segment.First, better - segment.First).Any(at => Denying.Contains(segment.Word(at)) && better - at <= 4);
    }

    // “Improved”, “it’s improved, no question”, and nothing of how it plays.
    private static bool IsBare(Segment segment) => Spoken.HasStem(segment, "improve") && !Spoken.HasStem(segment, Playing) && !segment.Has(Cat.Test) && !segment.Has(Cat.Sound) && !segment.Has(Cat.Quality)
        && PlaceReader.Read(segment).All(mention => !mention.HasPlace);
}
