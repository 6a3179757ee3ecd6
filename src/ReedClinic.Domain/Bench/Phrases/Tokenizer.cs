using ReedClinic.Domain.Bench.Phrases.Words;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Cuts a phrase into tokens, once from left to right.</summary>
internal sealed class Tokenizer
{
    private readonly string text;
    private readonly List<Token> tokens = [];
    private int at;

    private Tokenizer(string text) => this.text = text;

    internal static List<Token> Cut(string text)
    {
        var cutter = new Tokenizer(text);
        cutter.Run();
        Slips.Mend(cutter.tokens);
        return cutter.tokens;
    }

    private void Run()
    {
        while (at < text.Length)
        {
            var c = text[at];
            if (c == '\n')
            {
                Add(".", 1, TokenKind.Break);
            }
            else if (char.IsWhiteSpace(c))
            {
                at++;
            }
            else if (StartsNumber())
            {
                Number();
            }
            else if (TokenForms.Fraction(c) is { } part)
            {
                Add("", 1, TokenKind.Number, part);
            }
            else if (TokenForms.BladeLength(text, at) is var blade and > 0)
            {
                Add(c is 'u' or 'U' ? "upper" : "lower", blade, TokenKind.Word);
            }
            else if (char.IsLetter(c))
            {
                Word();
            }
            else
            {
                Mark(c);
            }
        }
    }

    private bool StartsNumber()
    {
        var digit = at;
        if (Sign(at) != 0 && (at == 0 || !char.IsLetterOrDigit(text[at - 1]) || IsAfterNote()))
        {
            digit++;
            if (digit < text.Length && text[digit] == ' ' && at > 0 && text[at] == '+')
            {
                digit++;
            }
        }

        if (digit + 1 < text.Length && text[digit] is '.' or ',')
        {
            digit++;
            return char.IsAsciiDigit(text[digit]) && (digit < 2 || !char.IsLetterOrDigit(text[digit - 2]));
        }

        return digit < text.Length && char.IsAsciiDigit(text[digit]);
    }

    // “C+8”: a letter of a note, and the cents right after it.
    private bool IsAfterNote() => tokens.Count > 0 && tokens[^1].End == at && (tokens[^1].Kind is TokenKind.Note || (tokens[^1] is { Length: 1, Text.Length: 1, Kind: TokenKind.Word } && tokens[^1].Text[0] is >= 'a' and <= 'g'));

    private int Sign(int index) => text[index] switch
    {
        '+' => 1,
        '-' or '−' or '–' when index + 1 < text.Length && (char.IsAsciiDigit(text[index + 1]) || text[index + 1] == '.') => -1,
        _ => 0,
    };

    private void Number()
    {
        var start = at;
        var sign = Sign(at);
        at += sign == 0 ? 0 : 1;
        while (at < text.Length && text[at] == ' ')
        {
            at++;
        }

        var whole = Digits();
        var value = whole;
        if (at + 1 < text.Length && text[at] is '.' or ',' && char.IsAsciiDigit(text[at + 1]))
        {
            at++;
            var from = at;
            var digits = Digits();
            value += digits / Power(at - from);
        }
        else if (at + 1 < text.Length && text[at] is '/' or '⁄' && char.IsAsciiDigit(text[at + 1]))
        {
            at++;
            var under = Digits();
            value = under == 0 ? value : whole / under;
        }
        else if (at < text.Length && TokenForms.Fraction(text[at]) is { } part)
        {
            at++;
            value += part;
        }

        if (sign == 0 && Ordinal(value) is { } ordinal)
        {
            at += 2;
            Put(ordinal, start, at - start, TokenKind.Word, null);
            return;
        }

        Put(sign == 0 ? "" : sign < 0 ? "-" : "+", start, at - start, TokenKind.Number, sign < 0 ? -value : value);
    }

    // “1st”, “2nd”.
    private string? Ordinal(decimal value) => at + 2 <= text.Length && (at + 2 == text.Length || !char.IsLetterOrDigit(text[at + 2])) && text.AsSpan(at, 2) is "st" or "nd" or "rd" or "th"
        ? value switch
        {
            1 => "first",
            2 => "second",
            3 => "third",
            _ => null,
        }
        : null;

    // More digits than any amount has are passed over; the value then means nothing, and no amount takes it.
    private decimal Digits()
    {
        decimal value = 0;
        for (; at < text.Length && char.IsAsciiDigit(text[at]); at++)
        {
            value = value > 1_000_000 ? value : value * 10 + (text[at] - '0');
        }

        return value;
    }

    private static decimal Power(int digits)
    {
        decimal power = 1;
        for (var i = 0; i < digits && power < 1_000_000; i++)
        {
            power *= 10;
        }

        return power;
    }

    private void Word()
    {
        if (at + 1 < text.Length && text[at] is 'b' && text[at + 1] is '4' && (at + 2 >= text.Length || !char.IsLetterOrDigit(text[at + 2])))
        {
            Add("before", 2, TokenKind.Word);
            return;
        }

        if (TokenForms.NoteLength(text, at) is var length and > 0)
        {
            Add(text.Substring(at, length), length, TokenKind.Note, null, char.IsUpper(text[at]));
            return;
        }

        var start = at;
        while (at < text.Length && (char.IsLetter(text[at]) || (IsApostrophe(at) && at > start && at + 1 < text.Length && char.IsLetter(text[at + 1]))))
        {
            at++;
        }

        var raw = text[start..at];
        if (IsTimes(raw, start))
        {
            Put("", start, 1, TokenKind.Symbol, null);
            return;
        }

        if (raw.Length == 2 && raw[0] is >= 'B' and <= 'G' && raw[1] == 's')
        {
            Put(raw[..1], start, 2, TokenKind.Note, null, capital: true);
            return;
        }

        Parts(raw, start);
    }

    // “2x”, “x2”.
    private bool IsTimes(string raw, int start) => raw is "x" or "X" && ((start > 0 && char.IsAsciiDigit(text[start - 1])) || (at < text.Length && char.IsAsciiDigit(text[at])) || (at + 1 < text.Length && text[at] is ' ' && char.IsAsciiDigit(text[at + 1]) && start > 0));

    private void Parts(string raw, int start)
    {
        var word = raw.ToLowerInvariant().Replace('’', '\'').Replace('‘', '\'').Replace('ʼ', '\'');
        foreach (var (part, from, size) in Contractions.Split(word))
        {
            var said = Spelling.Of(part);
            Put(said == part && part.Length == word.Length ? Lexicon.All.Whole(part) ?? said : said, start + from, size, TokenKind.Word, null, from == 0 && char.IsUpper(raw[0]));
        }
    }

    private bool IsApostrophe(int index) => text[index] is '\'' or '’' or '‘' or 'ʼ';

    private void Mark(char c)
    {
        var length = 1;
        while (at + length < text.Length && text[at + length] == c && c is '.' or '-' or '!' or '?')
        {
            length++;
        }

        var alone = at == 0 || char.IsWhiteSpace(text[at - 1]);
        switch (c)
        {
            case '/' when tokens.Count > 0 && tokens[^1].End == at && tokens[^1].Length == 1 && TokenForms.Slashed(text, at, tokens) is { } taken:
                at += taken;
                break;
            case '-' when IsInNote():
                at++;
                break;
            case '.' when length > 1:
            case '…' or ',' or '(' or ')' or '—' or '/' or '、':
            case '–' or '-' when alone || length > 1:
                Add(",", length, TokenKind.Break);
                break;
            case '.' when IsAbbreviated():
                Add("", length, TokenKind.Symbol);
                break;
            case '+' when alone && at + 1 < text.Length && char.IsWhiteSpace(text[at + 1]):
            case '&':
                Add("and", length, TokenKind.Word);
                break;
            case ';' or ':' or '!' or '?' or '.':
                Add(c.ToString(), length, TokenKind.Break);
                break;
            default:
                Add("", length, TokenKind.Symbol);
                break;
        }
    }

    // “B-flat”.
    private bool IsInNote() => tokens.Count > 0 && tokens[^1] is { Length: 1, Kind: TokenKind.Word } && tokens[^1].End == at && tokens[^1].Text[0] is >= 'a' and <= 'g'
        && (text.AsSpan(at + 1).StartsWith("flat", StringComparison.OrdinalIgnoreCase) || text.AsSpan(at + 1).StartsWith("sharp", StringComparison.OrdinalIgnoreCase));

    // “v. thin”, “2 str. off”: the point ends the word, not the sentence.
    private bool IsAbbreviated() => tokens.Count > 0 && at + 1 < text.Length && tokens[^1].End == at && tokens[^1].Kind is TokenKind.Word && at + 1 < text.Length && text[at + 1] == ' '
        && Spelling.IsShort(text.Substring(tokens[^1].Start, tokens[^1].Length));

    private void Add(string said, int length, TokenKind kind, decimal? number = null, bool capital = false)
    {
        Put(said, at, length, kind, number, capital);
        at += length;
    }

    private void Put(string said, int start, int length, TokenKind kind, decimal? number, bool capital = false) =>
        tokens.Add(new Token(said, start, length, kind, number, capital));
}
