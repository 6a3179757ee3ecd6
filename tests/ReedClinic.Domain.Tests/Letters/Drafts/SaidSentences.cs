using System.Text.RegularExpressions;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.Tests.Letters.Drafts;

/// <summary>The sentences of a letter, with whatever the student or the teacher typed replaced by an ellipsis.</summary>
internal static partial class SaidSentences
{
    /// <summary>Reads a letter.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="typed">What was typed.</param>
    /// <returns>Its sentences but for the greeting line, the name below it and the cautions; those that were typed whole are left out.</returns>
    public static IReadOnlyList<string> Of(LetterDraft letter, IEnumerable<string> typed)
    {
        var longest = typed.Select(words => words.TrimEnd('.', '?', '!')).OrderByDescending(words => words.Length).ToList();
        return
        [
            .. letter.Blocks.Where(block => block.Kind != BlockKind.Cautions)
                .SelectMany(block => block.Paragraphs.Select(paragraph => (Block: block, Paragraph: paragraph)))
                .Where(pair => !IsLine(pair.Block, pair.Paragraph, letter))
                .Select(pair => longest.Aggregate(pair.Paragraph.Text, (text, words) => text.Replace(words, "…", StringComparison.OrdinalIgnoreCase)))
                .SelectMany(Split)
                .Where(sentence => Letters().Count(sentence) > 0),
        ];
    }

    /// <summary>The sentences of a text.</summary>
    /// <param name="text">The text.</param>
    public static IEnumerable<string> Split(string text) => End().Split(text).Select(sentence => sentence.Trim());

    /// <summary>How many words a sentence has.</summary>
    /// <param name="sentence">The sentence.</param>
    public static int Words(string sentence) => Word().Count(sentence);

    private static bool IsLine(LetterBlock block, LetterParagraph paragraph, LetterDraft letter) => block.Kind switch
    {
        BlockKind.Greeting => paragraph == block.Paragraphs[0],
        BlockKind.Closing => paragraph.Text == letter.Signature,
        _ => false,
    };

    [GeneratedRegex(@"(?<=[.!?…][”)]?)\s+(?=[\p{Lu}“(…])")]
    private static partial Regex End();

    [GeneratedRegex(@"\p{L}")]
    private static partial Regex Letters();

    [GeneratedRegex(@"[\p{L}\p{N}][\p{L}\p{N}’'.,-]*")]
    private static partial Regex Word();
}
