using System.Globalization;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>
/// How full the pages of letters are: down to the last ink above the foot. The largest thing that is never parted, a reed’s heading with its
/// drawing at its smallest, is less than a third of a page. docs/measurement/pages.md has the figures.
/// </summary>
public sealed class FullPagesTests(ITestOutputHelper output)
{
    private const double LeastFull = 0.75;
    private const double Dot = 60 / 72.0;

    [Theory, InlineData(PaperSize.A4), InlineData(PaperSize.UsLetter)]
    public async Task Of_twenty_letters_every_page_before_the_last_is_at_least_three_quarters_full(PaperSize size)
    {
        var paper = Paper.Of(size);
        List<(int Letter, int Page, double Full)> full = [];
        for (var seed = 1; seed <= 20; seed++)
        {
            var pages = await GoldenPicture.PicturesAsync(LetterPrint.Pdf(LetterComposer.Compose(InventedBatch.Of(seed).Scene.Material), PrintedLetter.Day, size));
            full.AddRange(pages.SkipLast(1).Select((page, index) => (seed, index + 1, ((page.LastInk((int)Math.Ceiling(paper.Foot * Dot) + 1) / Dot) - paper.Top) / (paper.Foot - paper.Top))));
        }

        var sorted = full.Select(page => page.Full).Order().ToList();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {size} | {sorted.Count} | {sorted[0]:P0} | {sorted[sorted.Count / 10]:P0} | {sorted[sorted.Count / 2]:P0} |"));
        Assert.True(sorted.Count > 30);
        Assert.All(full, page => Assert.True(page.Full >= LeastFull, $"letter {page.Letter}, page {page.Page}: {page.Full:P0}"));
    }
}
