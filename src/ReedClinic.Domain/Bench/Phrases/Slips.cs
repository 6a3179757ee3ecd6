namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Small words that are often typed for one another: “far to steep”, “thicker then the right”, “might loose the heart”.</summary>
internal static class Slips
{
    private static readonly HashSet<string> BeforeToo = ["far", "way", "much", "bit", "little", "touch", "tad", "hair", "shade", "is", "'s", "are", "was", "were", "looks", "feels", "still", "all", ":", ","];

    private static readonly HashSet<string> AfterToo = ["thick", "thin", "long", "short", "wide", "steep", "high", "low", "flat", "sharp", "hard", "easy", "narrow", "bright", "stiff", "soft", "deep", "heavy", "weak", "strong", "loose", "tight", "big", "small", "shallow", "fat", "late", "steeply", "abrupt", "thickly", "resistant", "edgy", "much", "many"];

    private static readonly HashSet<string> NoComparative = ["upper", "lower", "corner", "shoulder", "other", "gutter", "after", "over", "either", "under", "another", "together", "clear"];

    internal static void Mend(List<Token> tokens)
    {
        Unhead(tokens);
        for (var i = 1; i < tokens.Count; i++)
        {
            tokens[i] = IsFine(tokens, i) ? tokens[i] with { Text = "fine" } : tokens[i];
        }

        for (var i = 1; i + 1 < tokens.Count; i++)
        {
            var (last, word, next) = (tokens[i - 1].Text, tokens[i].Text, tokens[i + 1].Text);
            var meant = word switch
            {
                "than" when tokens[i].Length == 3 && !IsComparative(last) && last is not ("more" or "less" or "open" or "rather" or "other" or "closed" or "worse" or "better") => "thin",
                "to" when BeforeToo.Contains(last) && AfterToo.Contains(next) && !(last is "," or ":" && next is "much" or "many") => "too",
                "then" when IsComparative(last) && next is "the" or "left" or "right" or "upper" or "lower" or "it" or "i" or "before" or "other" or "that" => "than",
                "of" when last is "stroke" or "strokes" or "mm" or "tenth" or "tenths" && IsPlaceNext(tokens, i + 1) => "off",
                "loose" when last is "might" or "may" or "could" or "will" or "would" or "to" or "i" => "lose",
                _ => word,
            };
            if (!ReferenceEquals(meant, word))
            {
                tokens[i] = tokens[i] with { Text = meant };
            }
        }
    }

    // “Done: windows”: a heading, and no end of the work.
    private static void Unhead(List<Token> tokens)
    {
        for (var i = 0; i + 2 < tokens.Count; i++)
        {
            if (tokens[i].Text is "done" or "did" && tokens[i + 1].Is(":") && (i == 0 || tokens[i - 1].Text is "." or ";" or "!"))
            {
                tokens[i] = tokens[i] with { Text = "", Kind = TokenKind.Symbol };
                tokens[i + 1] = tokens[i + 1] with { Text = "", Kind = TokenKind.Symbol };
            }
        }
    }

    // “Spine ok, rails okay”: behind what it is said of it is no filler.
    private static bool IsFine(List<Token> tokens, int at) => tokens[at].Text is "ok" or "okay" && at > 0 && tokens[at - 1].Kind is TokenKind.Word && tokens[at - 1].Text is not ("so" or "right" or "yes" or "and" or "then" or "now" or "well" or "um" or "but" or "is" or "be") && tokens[at - 1].Text.Length > 3
        && (at + 1 == tokens.Count || tokens[at + 1].Kind is TokenKind.Break);

    private static bool IsComparative(string word) => word.Length > 4 && word.EndsWith("er", StringComparison.Ordinal) && !NoComparative.Contains(word);

    // “Two strokes of the left corner”, but “a tenth of a millimetre”, “strokes of the knife”.
    private static bool IsPlaceNext(List<Token> tokens, int at) => tokens[at].Text is "each" or "both" or "left" or "right" or "upper" or "lower" or "either"
        || (tokens[at].Is("the") && at + 1 < tokens.Count && tokens[at + 1].Text is not ("knife" or "file" or "blade" or "paper" or "same" or "kind" or "sort" or "wrist"));
}
