using System.Text.RegularExpressions;
using DiffPlex;

namespace ReedClinic.Documents.Letters;

/// <summary>Cuts a text into sentences; the spaces before a sentence belong to it, so that all of them together are the text again.</summary>
internal sealed partial class SentenceChunker : IChunker
{
    public static SentenceChunker Instance { get; } = new();

    public IReadOnlyList<string> Chunk(string text) => [.. Ends().Split(text).Where(piece => piece.Length > 0)];

    [GeneratedRegex(@"(?<=[.!?…][”’)]*)(?=\s)|(?<=[^\n])(?=\n)")]
    private static partial Regex Ends();
}
