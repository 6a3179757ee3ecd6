using System.Text;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>The words of some tokens.</summary>
internal static class PhraseText
{
    /// <summary>The tokens' words with single spaces, as they are compared.</summary>
    internal static string Of(IReadOnlyList<Token> tokens, int first, int end)
    {
        StringBuilder words = new();
        for (var i = first; i < end; i++)
        {
            if (tokens[i].Kind is TokenKind.Word && words.Length > 0 && !tokens[i].Text.StartsWith('\''))
            {
                words.Append(' ');
            }

            words.Append(tokens[i].Kind is TokenKind.Word ? tokens[i].Text : tokens[i].Kind is TokenKind.Number ? $" {tokens[i].Number:0.###}" : "");
        }

        return words.ToString().Trim();
    }
}
