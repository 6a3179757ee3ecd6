namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Forms of tokens that need more than one look: notes with their marks, fractions, words cut with a stroke.</summary>
internal static class TokenForms
{
    internal static decimal? Fraction(char c) => c switch
    {
        '½' => 0.5m,
        '¼' => 0.25m,
        '¾' => 0.75m,
        '⅓' => 0.333m,
        '⅔' => 0.667m,
        '⅕' => 0.2m,
        '⅛' => 0.125m,
        '⅒' => 0.1m,
        _ => null,
    };

    /// <summary>“UB”, “u.b.”, “LB”, “l.b.”: the upper or the lower blade.</summary>
    internal static int BladeLength(string text, int at)
    {
        if (text[at] is not ('u' or 'U' or 'l' or 'L') || (at > 0 && char.IsLetterOrDigit(text[at - 1])))
        {
            return 0;
        }

        var end = at + 1;
        var pointed = end < text.Length && text[end] is '.';
        end += pointed ? 1 : 0;
        if (end >= text.Length || text[end] is not ('b' or 'B') || (end + 1 < text.Length && (char.IsLetterOrDigit(text[end + 1]) || text[end + 1] is '♭' or '\'' or '’')))
        {
            return 0;
        }

        end++;
        return (pointed && end < text.Length && text[end] is '.' ? end + 1 : end) - at;
    }

    /// <summary>B♭, Bb, f#, C6, Eb5; not “bb”, “ab” or “eb” in small letters, which may be words.</summary>
    internal static int NoteLength(string text, int at)
    {
        if (text[at] is not ((>= 'A' and <= 'G') or (>= 'a' and <= 'g')) || (at > 0 && char.IsLetterOrDigit(text[at - 1])))
        {
            return 0;
        }

        var end = at + 1;
        if (end < text.Length && text[end] is '♭' or '♯' or '#' or '♮')
        {
            end++;
        }
        else if (end < text.Length && text[end] == 'b' && char.IsUpper(text[at]))
        {
            end++;
        }

        var accidental = end > at + 1;
        if (end < text.Length && text[end] is >= '0' and <= '8')
        {
            end++;
        }
        else if (!accidental)
        {
            return 0;
        }

        return end < text.Length && char.IsLetterOrDigit(text[end]) ? 0 : end - at;
    }

    // “w/ help”, “w/o help”, “s/o had a go”: how much of it is taken in.
    internal static int? Slashed(string text, int at, List<Token> tokens)
    {
        var end = at + 1;
        while (end < text.Length && char.IsLetter(text[end]))
        {
            end++;
        }

        var said = (tokens[^1].Text, text[(at + 1)..end]) switch
        {
            ("with", "o" or "out") => "without",
            ("with", "") => "with",
            ("s", "o") => "somebody",
            ("s", "one" or "body") => "somebody",
            ("b", "c") => "because",
            _ => null,
        };
        if (said is null)
        {
            return null;
        }

        tokens[^1] = tokens[^1] with { Text = said, Length = end - tokens[^1].Start };
        return end - at;
    }
}
