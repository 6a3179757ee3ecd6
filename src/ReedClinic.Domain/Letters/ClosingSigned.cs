namespace ReedClinic.Domain.Letters;

/// <summary>Keeps the name below a letter whose closing was changed by hand.</summary>
internal static class ClosingSigned
{
    private const int MostWordsOfAName = 2;

    /// <summary>The changed part; a closing that ended with the signature and lost it has it again, unless it ends with another name.</summary>
    /// <param name="signature">Who signs the letter.</param>
    /// <param name="before">The part before the change.</param>
    /// <param name="after">The part as it was changed.</param>
    public static LetterBlock By(string signature, LetterBlock before, LetterBlock after)
    {
        var wasSigned = before is { Kind: BlockKind.Closing, Paragraphs: [.., var last] } && signature.Length > 0 && last.Text == signature;
        return wasSigned && !after.IsEmpty && after.Paragraphs.Count > 0 && !IsName(LastLine(after), signature)
            ? after with { Paragraphs = [.. after.Paragraphs, LetterParagraph.Plain(signature)] }
            : after;
    }

    private static string LastLine(LetterBlock block) => block.Paragraphs[^1].Text.Split('\n')[^1].Trim();

    // “Your Maren”, “M. H.” and the whole name are signatures; “With best wishes,” goes on.
    private static bool IsName(string line, string signature)
    {
        var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return !line.EndsWith(',') && (words.Length <= MostWordsOfAName && words.Length > 0 && words.All(word => char.IsUpper(word[0])) && line[^1] is not ('!' or '?')
            || signature.Split(' ').Any(name => name.Length > 1 && words.TakeLast(MostWordsOfAName).Any(word => word.Trim('.', ',') == name)));
    }
}
