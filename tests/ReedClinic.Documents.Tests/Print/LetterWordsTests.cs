using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;
using UglyToad.PdfPig;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>The printed letter says what the letter on the screen says, word for word and once, in the same order; read back by Poppler and by PdfPig.</summary>
public sealed class LetterWordsTests
{
    public static TheoryData<string> Names => [.. HardLetters.Names];

    [Theory, MemberData(nameof(Names))]
    public async Task Poppler_reads_the_letter_of_the_screen(string name)
    {
        var letter = HardLetters.Of(name);
        var pdf = LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4);

        var read = await Outside.ReadAsync(pdf, "pdftotext", "-raw", "-enc", "UTF-8", "{}", "-");

        Same(letter, read.TrimEnd('\f').Split('\f'));
    }

    [Theory, MemberData(nameof(Names))]
    public void PdfPig_reads_the_letter_of_the_screen(string name)
    {
        var letter = HardLetters.Of(name);

        using var pdf = PdfDocument.Open(LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.UsLetter));

        Same(letter, [.. pdf.GetPages().Select(page => string.Concat(page.Letters.Select(sign => sign.Value)))]);
    }

    // What belongs to the page stands at its end, and the head of a table that goes on at its beginning.
    private static void Same(LetterDraft letter, string[] pages)
    {
        var read = string.Concat(pages.Select((page, index) =>
        {
            var foot = LetterAsSaid.Bare(PrintText.Of($"{letter.Code}page {index + 1} of {pages.Length}"));
            const string Head = "TestWhenitcameNow";
            var bare = LetterAsSaid.Bare(page);
            Assert.EndsWith(foot, bare, StringComparison.Ordinal);
            return bare[(bare.StartsWith(Head, StringComparison.Ordinal) ? Head.Length : 0)..^foot.Length];
        }));

        Assert.Equal(LetterAsSaid.Of(letter), read);
    }
}
