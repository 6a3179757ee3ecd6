using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;
using UglyToad.PdfPig;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>Faces are kept for the whole program, and letters are printed by several people at a time.</summary>
public sealed class LettersAtOnceTests
{
    [Fact]
    public async Task Eight_letters_printed_at_once_say_what_they_say_one_by_one()
    {
        List<LetterDraft> letters = [.. Enumerable.Range(1, 8).Select(number => PrintedLetter.Usual(number) with { Studio = $"Bench {number}", Signature = new string((char)('a' + number), number) })];

        // At once first: what a letter leaves behind could help the next, and hide that they are in each other's way.
        List<byte[][]> rounds = [];
        for (var round = 0; round < 3; round++)
        {
            using var gate = new Barrier(letters.Count);
            rounds.Add(await Task.WhenAll(letters.Select(letter => Task.Factory.StartNew(
                () =>
                {
                    gate.SignalAndWait(TestContext.Current.CancellationToken);
                    return LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4);
                },
                TestContext.Current.CancellationToken, TaskCreationOptions.LongRunning, TaskScheduler.Default))));
        }

        var alone = letters.Select(letter => Read(LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4))).ToList();
        Assert.All(rounds, together => Assert.Equal(alone, together.Select(Read)));
    }

    private static string Read(byte[] pdf)
    {
        using var read = PdfDocument.Open(pdf);
        return string.Join('\f', read.GetPages().Select(page => string.Concat(page.Letters.Select(sign => sign.Value))));
    }
}
