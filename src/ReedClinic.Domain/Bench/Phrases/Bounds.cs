namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Haven’t taken more than two strokes off the left corner”, “nothing less than ten strokes”: what bounds the work doesn’t deny it. It is work, in doubt, and keeps its words.</summary>
internal static class Bounds
{
    private static readonly HashSet<string> Work = ["take", "taken", "clip", "clipped", "scrape", "scraped", "thin", "thinned", "shave", "shaved", "remove", "removed", "ease", "eased", "dust", "dusted", "touch", "touched", "file", "filed", "blend", "blended"];

    private static readonly HashSet<string> Amounts = ["a", "an", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "twelve", "half"];

    // Before it: who speaks, or nobody.
    private static readonly HashSet<string> Speakers = ["i", "we", "and", "but", "so", "then", ",", ".", ";", ":", "!"];

    // Where another clause begins.
    private static readonly HashSet<string> Turns = ["and", "but", "or", "so", "how", "however", "because", "since", "if", "until", "that", "which", "not", "as", "when", "though", "although"];

    /// <summary>Hears the bounding words in passing: the characters stay where they are.</summary>
    internal static void Quiet(List<Token> tokens)
    {
        for (var at = 0; at + 2 < tokens.Count; at++)
        {
            if (tokens[at].Is("not") && at > 0 && tokens[at - 1].Text is "have" or "'ve" or "did" && Work.Contains(tokens[at + 1].Text) && (at is 1 || Speakers.Contains(tokens[at - 2].Text)) && Much(tokens, at + 2) is var (first, count) && count > 0)
            {
                Hush(tokens, at, 1);
                Hush(tokens, first, count);
            }
            else if (tokens[at].Text is "nothing" or "no" && at > 0 && tokens[at - 1].Text is "took" or "clipped" or "scraped" or "taken" or "removed" or "shaved" or "thinned" && IsThan(tokens, at + 1))
            {
                Hush(tokens, at, 3);
            }
        }
    }

    /// <summary>Work that was only bounded is in doubt.</summary>
    internal static void Keep(Course course)
    {
        if (!course.Segments.Any(IsBounded))
        {
            return;
        }

        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment && Enumerable.Range(draft.First, draft.Last - draft.First + 1).Any(at => IsBounded(course.Segments[at]))))
        {
            draft.HasAside = true;
            if (!draft.Doubts.Contains(Doubt.Done))
            {
                draft.Doubts.Add(Doubt.Done);
            }
        }
    }

    private static bool IsBounded(Segment segment)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            if (segment.Tokens[at].IsBound)
            {
                return true;
            }
        }

        return false;
    }

    // “More than two strokes”, “a lot off the heart”, “the heart much”: in the same breath.
    private static (int First, int Count) Much(List<Token> tokens, int from)
    {
        for (var at = from; at < tokens.Count && tokens[at].Kind is not TokenKind.Break && !Turns.Contains(tokens[at].Text); at++)
        {
            if (IsThan(tokens, at))
            {
                return (at, 2);
            }

            if (tokens[at].Is("much"))
            {
                return tokens[at - 1].Is("too") ? default : (at, 1);
            }

            if (tokens[at].Is("lot") && tokens[at - 1].Is("a"))
            {
                return (at - 1, 2);
            }
        }

        return default;
    }

    private static bool IsThan(List<Token> tokens, int at) => at + 2 < tokens.Count && tokens[at].Text is "more" or "less" && tokens[at + 1].Is("than") && (tokens[at + 2].Kind is TokenKind.Number || Amounts.Contains(tokens[at + 2].Text));

    private static void Hush(List<Token> tokens, int at, int count)
    {
        for (var word = at; word < at + count; word++)
        {
            tokens[word] = tokens[word] with { Text = "um", Kind = TokenKind.Word, Number = null, IsCapital = false, IsBound = true };
        }
    }
}
