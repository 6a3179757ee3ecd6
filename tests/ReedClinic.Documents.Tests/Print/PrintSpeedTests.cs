using System.Diagnostics;
using System.Globalization;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>
/// How long a letter of three reeds takes, once the faces are read. <c>tests/print.sh</c> asks for many rounds and writes docs/measurement/print.md;
/// no run fails for being slow.
/// </summary>
public sealed class PrintSpeedTests(ITestOutputHelper output)
{
    [Fact]
    public async Task Printing_a_letter_of_three_reeds_is_timed_and_each_round_prints_the_same()
    {
        var rounds = int.Parse(Environment.GetEnvironmentVariable("REEDCLINIC_PRINT_ROUNDS") ?? "3", CultureInfo.InvariantCulture);
        var letter = PrintedLetter.Usual();
        var first = LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4);
        List<double> took = [];
        for (var round = 0; round < rounds; round++)
        {
            var clock = Stopwatch.StartNew();
            var pdf = LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4);
            took.Add(clock.Elapsed.TotalMilliseconds);
            Assert.InRange(pdf.Length, first.Length - 100, first.Length + 100);
        }

        took.Sort();
        var said = string.Create(CultureInfo.InvariantCulture, $"| a PDF of {first.Length / 1024.0:0} kB by the program | {rounds} | {took[rounds / 2]:0.0} | {took[rounds * 95 / 100]:0.0} | {took[0]:0.0} |");
        output.WriteLine(said);
        if (Environment.GetEnvironmentVariable("REEDCLINIC_PRINT_LOG") is { Length: > 0 } log)
        {
            await File.WriteAllTextAsync(log, said + "\n", TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(Path.ChangeExtension(log, ".html"), LetterFile.Html(letter, PrintedLetter.Day), TestContext.Current.CancellationToken);
        }
    }
}
