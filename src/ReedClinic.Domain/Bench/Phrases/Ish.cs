namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“C sharp-ish”, “a B, flat-ish”: a little to that side of the note, and no name of another note.</summary>
internal static class Ish
{
    /// <summary>Hears the word with its ending as one: the characters stay where they are.</summary>
    internal static void Quiet(List<Token> tokens)
    {
        for (var at = 0; at + 1 < tokens.Count; at++)
        {
            var ish = tokens[at + 1].Is("ish") ? at + 1 : at + 2 < tokens.Count && tokens[at + 1].Kind is TokenKind.Symbol && tokens[at + 2].Is("ish") ? at + 2 : -1;
            if (ish > 0 && tokens[at].Text is "sharp" or "flat")
            {
                tokens[at] = tokens[at] with { Text = tokens[at].Is("flat") ? "flattish" : "sharpish", Length = tokens[ish].End - tokens[at].Start };
                tokens.RemoveRange(at + 1, ish - at);
            }
        }
    }
}
