namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Actually it was two strokes”, “only two”: how much was done, said anew, with no place or work of its own; it records no more work.</summary>
internal static class BareCount
{
    /// <summary>Words that may stand beside an amount, and say nothing of it.</summary>
    internal static readonly HashSet<string> Beside = [.. "stroke strokes pass passes mm millimetre millimetres millimeter millimeters tenth tenths of a off each in all only just instead not and but the them were there like about around nearer closer roughly or so well um er oh ah yes yeah nah probably really one altogether total".Split(' ')];

    private static readonly HashSet<string> Anew = ["actually", "rather", "only", "mean", "meant", "was", "were", "sorry", "correction", "wrong", "mistake"];

    private static readonly Doubt Which = new("kind", "unsure whether this puts right the entry before, so it is kept as a note");

    /// <summary>Whether these words say an amount anew, and nothing else.</summary>
    internal static bool Says(IReadOnlyList<Token> tokens)
    {
        var (anew, counted) = (false, false);
        for (var at = 0; at < tokens.Count;)
        {
            if (tokens[at].Text is "?")
            {
                return false;
            }

            if (!tokens[at].Is("one") && Numbers.At(tokens, at, tokens.Count) is { } number)
            {
                counted = true;
                at = number.End;
                continue;
            }

            counted |= tokens[at].Text is "one" or "tenth";
            anew |= Anew.Contains(tokens[at].Text);
            if (tokens[at].Kind is not TokenKind.Break && !RightWords.Lead.Contains(tokens[at].Text) && !Beside.Contains(tokens[at].Text) && !IsMoreLike(tokens, at))
            {
                return false;
            }

            at++;
        }

        return anew && counted;
    }

    /// <summary>“More like two” is less or more, and no more work.</summary>
    internal static bool IsMoreLike(IReadOnlyList<Token> tokens, int at) => tokens[at].Text is "more" && at + 1 < tokens.Count && tokens[at + 1].Is("like");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment).ToList())
        {
            var said = Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last);
            if (said.Asked || !Says([.. said.Tokens.Skip(said.First).Take(said.End - said.First)]))
            {
                continue;
            }

            var before = course.Drafts.IndexOf(draft) is > 0 and var at ? course.Drafts[at - 1] : null;
            if (draft.Slots is { Strokes: { } strokes, Mm: null } && before is { Kind: EntryKind.Adjustment, Slots: { Strokes: not null, Mm: null } } && before.Last + 1 >= draft.First)
            {
                before.Slots = before.Slots with { Strokes = strokes };
                Spoken.Join(course, before, draft);
            }
            else
            {
                Spoken.Unmake(draft, Which);
            }
        }
    }
}
