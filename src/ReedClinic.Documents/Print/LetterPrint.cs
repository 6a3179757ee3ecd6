using System.Globalization;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Documents.Print;

/// <summary>A letter as a PDF, to be printed and kept.</summary>
public static class LetterPrint
{
    private const int FewReeds = 3;
    private const int MostPages = 4; // about so few reeds nobody reads a fifth page

    private static readonly TypeStyle Foot = new(Face.Label, 8.6, 11, Tone.Pencil);

    /// <summary>Prints a letter.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="day">The day at its head.</param>
    /// <param name="size">The paper.</param>
    /// <param name="among">Where it stands among the letters about its batch; null for the only one.</param>
    /// <param name="pictures">The files of its pictures, by their keys; one that isn't there, or can't be printed, is told in words.</param>
    /// <returns>A tagged PDF.</returns>
    public static byte[] Pdf(LetterDraft letter, DateTimeOffset day, PaperSize size, LetterAmong? among = null, IReadOnlyDictionary<string, ReadOnlyMemory<byte>>? pictures = null)
    {
        ArgumentNullException.ThrowIfNull(letter);
        var paper = Paper.Of(size);
        using var measure = new PrintMeasure();
        var pages = PageBalance.Set(LetterFlow.Of(letter, day, among, pictures), paper, measure, letter.Reeds.Count <= FewReeds ? MostPages : int.MaxValue);
        List<IReadOnlyList<Placed>> whole = [.. pages.Select((page, index) => (IReadOnlyList<Placed>)[.. page, .. Furniture(letter, paper, measure, index + 1, pages.Count)])];
        return PdfWriter.Write(whole, paper, PrintText.Of($"Letter about batch {letter.Code}"), PrintText.Of(letter.Studio ?? letter.Signature));
    }

    /// <summary>The words of a letter that paper can't show, each once; a square stands for each of their letters.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="whatChanged">Of a correction what it puts right, which stands at its head.</param>
    public static IReadOnlyList<string> NotPrinted(LetterDraft letter, string? whatChanged = null)
    {
        ArgumentNullException.ThrowIfNull(letter);
        return [.. Texts(letter).Append(whatChanged).SelectMany(text => PrintText.NotPrinted(text ?? "")).Distinct()];
    }

    // All that may have been typed by somebody.
    private static IEnumerable<string?> Texts(LetterDraft letter) =>
    [
        .. letter.Blocks.SelectMany(block => block.Paragraphs.Select(paragraph => paragraph.Text).Prepend(block.Heading)),
        .. letter.Reeds.Select(reed => reed.HowToRecognise),
        .. letter.Reeds.SelectMany(reed => reed.Marks).Concat(letter.LessonMarks).SelectMany(mark => new[] { mark.Words, mark.Detail }),
        .. letter.Blocks.SelectMany(block => block.Rows).SelectMany(row => new[] { row.Test, row.Before, row.Now }),
        .. letter.Reeds.Where(reed => reed.Crow is not null).SelectMany(reed => reed.Crow!.Moves.SelectMany(move => move.Work.Append(move.Sentence)).Prepend(reed.Crow.Sentence)),
        letter.Studio,
        letter.Signature,
    ];

    private static IEnumerable<Placed> Furniture(LetterDraft letter, Paper paper, PrintMeasure measure, int page, int pages)
    {
        var y = paper.Height - (paper.Bottom * 0.45);
        var number = string.Create(CultureInfo.InvariantCulture, $"page {page} of {pages}");
        return
        [
            new PlacedOpen(FlowRole.Furniture),
            new PlacedText(letter.Code, Foot, paper.Left, y),
            new PlacedText(number, Foot, paper.Width - paper.Right - measure.Width(number, Foot), y),
            new PlacedClose(),
        ];
    }
}
