namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>A note that was named.</summary>
/// <param name="Name">As <c>C</c>, <c>Bb</c>, <c>F#</c>.</param>
/// <param name="Octave">Its octave, if it was said.</param>
/// <param name="Lean">Flat or sharp, where that can't belong to the name: “C flat”.</param>
/// <param name="First">The first token.</param>
/// <param name="End">The token after the last.</param>
internal readonly record struct NamedNote(string Name, int? Octave, string? Lean, int First, int End);

/// <summary>Finds named notes among the tokens.</summary>
internal static class Notes
{
    private static readonly HashSet<string> BeforeCapitalA = ["", "crow", "is", "'s", "an", "now", "tuning", "and", "to", "on", "at", "between", "crows", "peep", "the", "low", "high"];

    // “A flat spot” is no A flat.
    private static readonly HashSet<string> FlatThings = ["spot", "spots", "place", "patch", "bit", "area", "top", "edge", "corner", "step", "tip", "reed", "note", "crow", "tone", "pitch", "sound", "line", "opening", "heart", "side", "one", "eye", "knife", "ridge", "face", "shape", "oval", "drop", "end"];

    /// <summary>True for a token that can only be, or here must be, the letter of a note.</summary>
    internal static bool IsLetter(IReadOnlyList<Token> tokens, int at)
    {
        var token = tokens[at];
        if (token.Kind == TokenKind.Note)
        {
            return true;
        }

        if (token.Kind != TokenKind.Word || token.Length != 1 || token.Text.Length != 1 || token.Text[0] is < 'a' or > 'g')
        {
            return false;
        }

        var next = at + 1 < tokens.Count ? tokens[at + 1] : default;
        var last = at > 0 ? tokens[at - 1] : default;
        if (token.Is("c") && last.Kind == TokenKind.Number && last.End == token.Start)
        {
            return false;
        }

        if (!token.Is("a"))
        {
            return true;
        }

        var accidental = next.Text is "flat" or "sharp" or "natural";
        if (accidental && at + 2 < tokens.Count && FlatThings.Contains(tokens[at + 2].Text))
        {
            return false;
        }

        if (accidental && (at + 2 >= tokens.Count || !IsPlainLetter(tokens[at + 2])))
        {
            return true;
        }

        return token.IsCapital && (at == 0 ? IsTold(tokens, next) : (next.Text is null || next.Kind != TokenKind.Word || next.Text is "now" or "and" or "then" or "sits" or "is" or "'s" or "was" or "plays" or "comes" or "stands" || last.Text is "the" or "tuning")
            && (last.Kind != TokenKind.Word || BeforeCapitalA.Contains(last.Text)));
    }

    // “A is a bit flat”, “A bang on”.
    private static bool IsTold(IReadOnlyList<Token> tokens, Token next) => next.Text is "bang" or "spot" || (tokens.Count > 3 && (next.Kind is TokenKind.Number || Numbers.Word(next.Text ?? "") is not null) && tokens[2].Text is "cents" or "cent" or "flat" or "sharp") || (next.Text is "is" or "'s" && tokens.Count > 2 && tokens[2].Text is "flat" or "sharp" or "a" or "bit" or "slightly" or "in" or "spot" or "low" or "high" or "just" or "dead" or "about" or "at" or "now" or "still");

    private static bool IsPlainLetter(Token token) => token.Length == 1 && token.Text.Length == 1 && token.Text[0] is >= 'a' and <= 'g';

    /// <summary>The note that begins at a token.</summary>
    internal static NamedNote? At(IReadOnlyList<Token> tokens, int at, int end)
    {
        if (at >= end || !IsLetter(tokens, at))
        {
            return null;
        }

        if (tokens[at].Kind == TokenKind.Note)
        {
            return OfMarks(tokens, at);
        }

        var letter = char.ToUpperInvariant(tokens[at].Text[0]);
        var next = at + 1 < end ? tokens[at + 1].Text : "";
        var after = at + 2 < end ? tokens[at + 2] : default;
        if (next == "natural")
        {
            return new NamedNote(letter.ToString(), null, null, at, at + 2);
        }

        if (next is "flat" or "sharp")
        {
            if (after.Text is "of" or "by")
            {
                return new NamedNote(letter.ToString(), null, null, at, at + 1);
            }

            return IsName(letter, next)
                ? new NamedNote(letter + (next == "flat" ? "b" : "#"), null, null, at, at + 2)
                : new NamedNote(letter.ToString(), null, next, at, at + 2);
        }

        return new NamedNote(letter.ToString(), null, null, at, at + 1);
    }

    // C flat, F flat, E sharp and B sharp are no notes that anybody tunes a reed to.
    private static bool IsName(char letter, string accidental) => accidental == "flat" ? letter is not ('C' or 'F') : letter is not ('E' or 'B');

    private static NamedNote OfMarks(IReadOnlyList<Token> tokens, int at)
    {
        var text = tokens[at].Text;
        var name = char.ToUpperInvariant(text[0]).ToString();
        int? octave = null;
        foreach (var mark in text.AsSpan(1))
        {
            if (char.IsAsciiDigit(mark))
            {
                octave = mark - '0';
            }
            else
            {
                name += mark switch
                {
                    'b' or '♭' => "b",
                    '♮' => "",
                    _ => "#",
                };
            }
        }

        return new NamedNote(name, octave, null, at, at + 1);
    }
}
