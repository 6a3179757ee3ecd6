namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Clauses that say nothing of the reed beside one that does: “have you”, “while you were looking for your pencil”, “whatever it does next”.</summary>
internal static class Asides
{
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        return course.LastInSentence is { Kind: not EntryKind.Note } && (IsTag(segment) || IsMeanwhile(segment) || IsRepeated(course)) && course.Absorb();
    }

    // “…, have you”, “…, isn’t it”.
    private static bool IsTag(Segment segment)
    {
        var words = Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is TokenKind.Word).Select(segment.Word).ToList();
        return words.Count is 2 or 3 && words[0] is "have" or "has" or "is" or "are" or "do" or "does" or "did" or "was" or "were" or "would" or "could" or "can" or "will" or "should" or "had"
            && words[^1] is "you" or "it" or "they" or "she" or "he" or "i" or "we" && (words.Count == 2 || words[1] is "not");
    }

    // “While I chatter on”; not “while the left is thin”.
    private static bool IsMeanwhile(Segment segment) => segment.Word(segment.First) is "while" or "whatever" or "whoever" or "whilst" && segment.Has(Cat.Me) | segment.Has(Cat.Other) | segment.Word(segment.First) is "whatever" && !segment.Has(Cat.Quality);

    // “A hair off the end, snip”: the deed once more in one word.
    private static bool IsRepeated(Course course)
    {
        var segment = course.Segment;
        var words = Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is TokenKind.Word).ToList();
        return course.LastInSentence is { Kind: EntryKind.Adjustment } deed && words.Count > 0 && !segment.Has(Cat.Stroke) && words.All(at => segment.Word(at) == segment.Word(words[0])) && segment.Items.FirstOrDefault(item => item.Cat is Cat.Verb && item.First == words[0]) is { Value: not null } verb
            && (Moods.Action(verb) == deed.Verb || deed.Slots.Kind is "clip" or "clip-hair" && Moods.Action(verb) is "clip");
    }

    /// <summary>“Write to her about storage”, “reminder: invoice”: worth a note.</summary>
    internal static bool Concerns(Segment segment) => segment.HasWord("better") || segment.HasWord("worse") || segment.HasWord("helped") || segment.HasWord("difference") || segment.HasWord("disappointing") || segment.HasWord("promising") || segment.HasWord("puzzling")
        || (segment.HasWord("still") && segment.Has(Cat.Not)) || segment.End - segment.First > 2 && (segment.HasWord("reminder") || segment.HasWord("remember")
        || segment.All(Cat.Other).Any(item => segment.Word(item.First) is "she" or "he" or "her" or "him" or "his" or "they" or "them" or "their" or "student" or "pupil" or "teacher" or "maker"));
}
