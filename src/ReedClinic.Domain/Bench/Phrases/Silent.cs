namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The peep is dead”, “it won’t crow”, “no peep”: that it gives none is no word of its scale, so it is kept in the words it was said in.</summary>
internal static class Silent
{
    private const int Reach = 5;

    private static readonly HashSet<string> Dead = ["dead", "silent", "mute", "gone", "missing", "absent", "nothing", "none", "died", "dies", "lost", "nil", "vanished", "disappeared", "voiceless", "nonexistent", "stopped"];

    private static readonly HashSet<string> Between = [.. "is 's has was have had just all now seems sounds sounding still stays stayed went gone goes going quite completely totally utterly entirely has_been been it there as good of this that the reed one".Split(' ')];

    // What may stand behind it and says no more.
    private static readonly HashSet<string> Behind = [.. "now again at all to speak of whatsoever whatever left there here in out from it this one reed any more either still today too also completely altogether entirely then me anymore though silent dead mute away quiet nothing none when i me us for even".Split(' ')];

    private static readonly HashSet<string> Modals = ["will", "does", "did", "can", "would", "could", "is", "do", "'s", "has"];

    private static readonly HashSet<string> Sounding = [.. "go goes going speak speaking sound sounding come coming start starting play playing work working respond responding answer answering happen happening ring ringing there say saying".Split(' ')];

    private static readonly Doubt Untried = new("kind", "unsure whether it gave none or wasn’t tried, so it is kept as a note");

    private static readonly Doubt Unscaled = new("step", "that it gives none is no word of its scale, so its words are kept");

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            var last = IsAnswered(course, at) ? at + 1 : at;
            if (Of(Spoken.Whole(course, at, last)) is not { } test || test is TestKind.Peep && IsCrowing(course, at) || Entry(course, at) is not { } draft)
            {
                continue;
            }

            if (IsNotTried(course, at))
            {
                Spoken.Unmake(draft, Untried);
                continue;
            }

            course.Drafts.RemoveAll(other => other != draft && other.First == last && other.Last == last);
            (draft.Kind, draft.Slots, draft.HasAside, draft.Last) = (EntryKind.Test, new ReadSlots { Test = test }, true, Math.Max(draft.Last, last));
            draft.Doubts.Clear();
            draft.Doubts.Add(Unscaled);
        }
    }

    // “Doesn’t peep, crows straight off”.
    private static bool IsCrowing(Course course, int at) => at + 1 < course.Segments.Count && course.Segments[at + 1] is var next && next.Sentence == course.Segments[at].Sentence && (next.HasWord("crows") || next.HasWord("crowing") || next.HasWord("rattles")) && !next.Has(Cat.Not);

    // “Peep: nothing”: said behind its name.
    private static bool IsAnswered(Course course, int at) => at + 1 < course.Segments.Count && course.Segments[at + 1] is var next && next.Sentence == course.Segments[at].Sentence && Dead.Contains(next.Word(next.First)) && Words(next).TrueForAll(word => Dead.Contains(word) || Behind.Contains(word))
        && Words(course.Segments[at]) is [.., "peep" or "crow"];

    // “No crow”, “no crow yet”: it may not have been blown.
    private static bool IsNotTried(Course course, int at) => Words(course.Segments[at]) is ["no", "peep" or "crow", .. var rest] && rest is [] or ["yet"] or ["at", "all"];

    private static Draft? Entry(Course course, int at) => course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { } over && (over.Kind is EntryKind.Stopped or EntryKind.Verdict or EntryKind.Risk or EntryKind.RiskClosed || over.Kind is EntryKind.Adjustment && over.Head == at) ? null : Alone.Of(course, at);

    private static TestKind? Of(Segment segment)
    {
        if (segment.Asked || segment.Has(Cat.Cond) || segment.Has(Cat.Plan) || segment.Tokens.Skip(segment.First).Take(segment.End - segment.First).Any(token => token.Kind is TokenKind.Note or TokenKind.Number))
        {
            return null;
        }

        var words = Words(segment);
        var named = words.FindIndex(word => word is "peep" or "peeps" or "peeping" or "crow" or "crows" or "crowing");
        return named >= 0 && (IsNone(words, named) || IsDead(words, named) || Refuses(words, named)) ? words[named][0] is 'p' ? TestKind.Peep : TestKind.Crow : null;
    }

    private static List<string> Words(Segment segment) => [.. Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is not TokenKind.Break && segment.Word(at) is { Length: > 0 } word && (!segment.Covered(at, Cat.Filler) || Behind.Contains(word) || Between.Contains(word))).Select(segment.Word)];

    // “No peep”, “dead crow”, “nothing from the peep”, “not a crow out of it”; “no peep yet” may be that it wasn’t tried.
    private static bool IsNone(List<string> words, int named)
    {
        var before = named - 1;
        if (before >= 0 && words[before] is "real" or "proper" or "sort" or "kind" or "the" or "a" or "any")
        {
            before--;
        }

        return before >= 0 && EndsAfter(words, named + 1, yet: true)
            && (words[before] is "no" or "zero" || words[before] is "dead" or "silent" or "mute" && before == named - 1 || words[before] is "not" && words[named - 1] is "a"
                || words[before] is "in" or "from" or "of" or "on" && words.Take(before).Any(word => word is "nothing") || words[before] is "get" or "raise" or "coax" or "draw" or "have" or "getting" && words.Take(before).Any(word => word is "not" or "cannot" or "never"));
    }

    // “The peep is dead”, “crow’s gone”, “peep: nothing”; not “crow’s gone up”, “dead on C”.
    private static bool IsDead(List<string> words, int named)
    {
        var at = Skip(words, named + 1);
        return at < words.Count && Dead.Contains(words[at]) && EndsAfter(words, at + 1, yet: true) || words[^1] is "gone" && at == words.Count && words.Count - named is 2 or 3;
    }

    // “The crow won’t speak”, “it refuses to peep”; not “I didn’t crow it”.
    private static bool Refuses(List<string> words, int named)
    {
        var not = words.FindIndex(Math.Max(0, named - Reach), word => word is "not" or "cannot" or "never" or "refuses" or "refused" or "fails" or "failed" or "stopped");
        if (not < 0 || words[not] is "not" && !(not > 0 && Modals.Contains(words[not - 1])) || Pair(words, "i", "did") || Pair(words, "i", "have") || Pair(words, "we", "have"))
        {
            return false;
        }

        return not < named
            ? named - not <= Reach && words.Skip(not + 1).Take(named - not - 1).All(word => word is "to" or "even" or "get" or "it" or "make" or "be" or "made" or "the" or "a" or "this" or "reed" or "one" or "really" or "at" or "all" or "me" or "give" or "any") && (words[named] is not "crows" and not "peeps") && EndsAfter(words, named + 1, yet: true)
            : not - named <= Reach && Enumerable.Range(not + 1, words.Count - not - 1).FirstOrDefault(at => Sounding.Contains(words[at]), -1) is >= 0 and var verb && verb - not <= 3 && EndsAfter(words, verb + 1, yet: true);
    }

    private static int Skip(List<string> words, int at)
    {
        while (at < words.Count && Between.Contains(words[at]))
        {
            at++;
        }

        return at;
    }

    private static bool EndsAfter(List<string> words, int from, bool yet) => words.Skip(from).All(word => Behind.Contains(word) || yet && word is "yet" || word is "on" && words[^1] is "me" or "us" or "you");

    private static bool Pair(List<string> words, string one, string other) => words.Zip(words.Skip(1)).Any(pair => pair.First == one && pair.Second == other);
}
