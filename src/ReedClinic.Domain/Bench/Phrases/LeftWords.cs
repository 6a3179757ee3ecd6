namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Whether words that made no entry are worth keeping, or were said in passing.</summary>
internal static class LeftWords
{
    private static readonly HashSet<string> Passing =
        ["a", "again", "also", "and", "at", "but", "eh", "for", "i", "in", "is", "it", "its", "just", "let", "like", "my", "of", "on", "or", "so", "that", "the", "then", "there", "this", "to", "us", "with", "'s", "am", "me", "verdict"];

    private static readonly char[] Around = [' ', '\t', '\u00A0', '\n', '\r', ',', ';', '.', ':', '…', '-', '–', '—', '!', '"', '“', '”', '(', ')'];

    /// <summary>The words of a stretch, without marks around them; null when they say nothing.</summary>
    internal static string? Kept(string text, TextSpan span)
    {
        var words = text.Substring(span.Start, span.Length).Trim(Around);
        return MeansSomething(words) ? words : null;
    }

    /// <summary>The words, where they say more than the entry’s name (“verdict improved”, “stop”) does; else null.</summary>
    internal static string? Beyond(string said, Cat cat)
    {
        var tokens = Tokenizer.Cut(said);
        var items = Scanner.Scan([.. tokens]);
        for (var i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Kind is not (TokenKind.Break or TokenKind.Symbol) && !Passing.Contains(tokens[i].Text) && !items.Any(item => item.First <= i && i < item.End && (item.Cat == cat || item.Cat is Cat.Filler or Cat.Now)))
            {
                return said;
            }
        }

        return null;
    }

    private static bool MeansSomething(string words)
    {
        var tokens = Tokenizer.Cut(words);
        var items = Scanner.Scan([.. tokens]);
        for (var i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Kind is TokenKind.Number or TokenKind.Note
                || (tokens[i].Kind is TokenKind.Word && !Passing.Contains(tokens[i].Text) && !items.Any(item => item.First <= i && i < item.End && item.Cat is Cat.Filler or Cat.Now)))
            {
                return true;
            }
        }

        return false;
    }
}
