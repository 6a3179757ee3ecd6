using System.Reflection;
using System.Runtime.Loader;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>How pages look. A picture that is to change is looked at first; see <see cref="GoldenPicture"/>.</summary>
public sealed class GoldenPictureTests
{
    private const string Signs = "½¼¾♭♯♮éőŁßếΩЖ“”–—…▢0123456789";

    private static readonly Paper Sheet = Paper.Of(PaperSize.A4);

    private static readonly (Face Face, string Name)[] Faces =
    [
        (Face.Text, "NotoSerif_400Regular"), (Face.Slanted, "NotoSerif_400Regular_Italic"), (Face.Strong, "NotoSerif_600SemiBold"),
        (Face.Label, "SourceSans3_400Regular"), (Face.LabelSlanted, "SourceSans3_400Regular_Italic"), (Face.LabelStrong, "SourceSans3_600SemiBold"),
    ];

    private static readonly string[] Strokes = ["tip-corners-thick", "tip-centre-thin", "tip-not-separate", "step-abrupt", "heart-sides-thick", "back-thick", "left-right-uneven"];

    private static readonly int[] Steps = [1, 2, 6, 12];

    // Each sign stands alone, so that none can hide behind its neighbour.
    private static readonly List<Placed> Specimen =
    [
        new PlacedOpen(FlowRole.Paragraph),
        .. from row in Faces.Index()
           from sign in Signs.Index()
           select new PlacedText(sign.Item.ToString(), new TypeStyle(row.Item.Face, 20, 24), 60 + (sign.Index % 15 * 32), 80 + (row.Index * 100) + (sign.Index / 15 * 40)),
        new PlacedClose(),
    ];

    [Fact]
    public Task A_usual_letter_looks_as_it_was_accepted() =>
        GoldenPicture.CompareAsync("letter", LetterPrint.Pdf(PrintedLetter.Usual(), PrintedLetter.Day, PaperSize.A4));

    [Fact]
    public Task All_signs_in_all_faces_look_as_they_were_accepted() =>
        GoldenPicture.CompareAsync("signs", PdfWriter.Write([Specimen], Sheet, "Signs", "The Harbour Bench"));

    [Fact]
    public Task Every_stroke_of_the_knife_looks_as_it_was_accepted() => GoldenPicture.CompareAsync("strokes", Drawn(Knife(StrokeShow.Letter), 255, 8));

    [Fact]
    public Task For_a_narrow_window_every_stroke_looks_as_it_was_accepted() => GoldenPicture.CompareAsync("strokes-narrow", Drawn(Knife(StrokeShow.LetterNarrow), 240, 4));

    [Fact]
    public Task Maps_of_all_reeds_and_the_crow_s_way_look_as_they_were_accepted()
    {
        List<ReedMark> marks = [.. Enumerable.Range(0, 12).Select(number => new ReedMark(new Place((Zone)((number * 2) + 1 - (number / 11 * 4))), (MarkKind)(number % 5), "words", Times: number))];
        var maps = from style in Enum.GetValues<ScrapeStyle>()
                   from instrument in new[] { Instrument.Oboe, Instrument.CorAnglais }
                   select ReedSketch.Of(marks, style, instrument, "A reed");
        return GoldenPicture.CompareAsync("drawings", Drawn([.. maps, .. Steps.Select(steps => CrowSketch.Of(PrintedLetter.Crow(steps), CrowShow.Paper with { Keys = CrowSketch.Shown(PrintedLetter.Crow(steps)) }))], 230, 8));
    }

    [Fact]
    public Task What_is_only_suspected_looks_otherwise_than_what_is_certain()
    {
        ReadOnlySpan<(MarkKind Kind, Zone Zone)> shown = [(MarkKind.Fault, Zone.TipCorners), (MarkKind.Strength, Zone.HeartCentre), (MarkKind.Taste, Zone.Windows)];
        List<ReedMark> marks = [];
        foreach (var (kind, zone) in shown)
        {
            marks.AddRange([new(new Place(zone, Blades.Upper), kind, "words"), new(new Place(zone, Blades.Lower), kind, "words") { Suspected = true }]);
        }

        return GoldenPicture.CompareAsync("suspected", Drawn([ReedSketch.Of(marks, ScrapeStyle.LongScrape, Instrument.Oboe, "A reed")], 500, 2));
    }

    // PDFsharp cuts letters out of a face itself; a fault there shows as another or a missing letter.
    [Fact]
    public async Task Faces_cut_to_their_letters_look_like_whole_ones()
    {
        var (cut, whole) = (PdfWriter.Write([Specimen], Sheet, "Signs", "The Harbour Bench"), WholeApart());

        Assert.InRange(whole.Length, 4 * cut.Length, int.MaxValue);
        var (one, other) = (await GoldenPicture.PicturesAsync(cut), await GoldenPicture.PicturesAsync(whole));
        Assert.Null(GoldenPicture.Difference(Assert.Single(one), Assert.Single(other)));
    }

    [Fact]
    public async Task A_word_that_moved_and_a_letter_that_went_are_seen()
    {
        async Task<GreyPicture> Seen(IEnumerable<Placed> page) => Assert.Single(await GoldenPicture.PicturesAsync(PdfWriter.Write([[new PlacedOpen(FlowRole.Paragraph), .. page, new PlacedClose()]], Sheet, "Words", "The Harbour Bench")));
        var style = new TypeStyle(Face.Text, 9.7, 13.4);
        List<Placed> page = [.. Enumerable.Range(0, 40).Select(line => new PlacedText("The corners of the tip are thicker than its middle.", style, 70, 80 + (line * style.Leading)))];
        var before = await Seen(page);

        Assert.Null(GoldenPicture.Difference(before, await Seen(page)));
        Assert.NotNull(GoldenPicture.Difference(before, await Seen([.. page.SkipLast(1), new PlacedText("The corners of the tip are thicker  than its middle.", style, 70, 80 + (39 * style.Leading))])));
        Assert.NotNull(GoldenPicture.Difference(before, await Seen([.. page.SkipLast(1), new PlacedText("The corners of the tip are thicker than its midd e.", style, 70, 80 + (39 * style.Leading))])));
    }

    private static IEnumerable<Sketch> Knife(StrokeShow show) =>
        Strokes.Select(kind => StrokeSketch.Of(new FindingKindId(kind), ScrapeStyle.LongScrape, Instrument.Oboe, show)!)
            .Append(StrokeSketch.Of(new FindingKindId(Strokes[0]), ScrapeStyle.ShortScrape, Instrument.CorAnglais, show)!);

    private static byte[] Drawn(IEnumerable<Sketch> drawings, double width, int onAPage)
    {
        var tall = (Sheet.Foot - Sheet.Top) / (onAPage / 2);
        var pages = drawings.Chunk(onAPage).Select(page => (IReadOnlyList<Placed>)
        [
            new PlacedOpen(FlowRole.Figure, "Drawings", 0, 0, 10, 10),
            .. page.Select((drawing, index) => new PlacedSketch(drawing, 40 + (index % 2 * (width + 20)), Sheet.Top + (index / 2 * tall), Math.Min(width / drawing.Width, (tall - 8) / drawing.Height))),
            new PlacedClose(),
        ]);
        return PdfWriter.Write([.. pages], Sheet, "Drawings", "The Harbour Bench");
    }

    // PDFsharp remembers for the rest of a process that a face was once embedded whole: that is done with assemblies of its own.
    private static byte[] WholeApart()
    {
        var apart = new Apart(typeof(GoldenPictureTests).Assembly.Location);
        var twin = apart.LoadFromAssemblyPath(typeof(GoldenPictureTests).Assembly.Location).GetType(typeof(GoldenPictureTests).FullName!, throwOnError: true)!;
        return (byte[])twin.GetMethod(nameof(Whole), BindingFlags.NonPublic | BindingFlags.Static)!.Invoke(null, null)!;
    }

    private static byte[] Whole()
    {
        GlobalFontSettings.FontResolver ??= new ProgramFaces();
        var options = new XPdfFontOptions(PdfFontEncoding.Unicode, PdfFontEmbedding.EmbedCompleteFontFile);
        var names = Faces.ToDictionary(face => face.Face, face => face.Name);
        using var document = new PdfDocument();
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromPoint(Sheet.Width), XUnit.FromPoint(Sheet.Height));
        using (var graphics = XGraphics.FromPdfPage(page))
        {
            foreach (var sign in Specimen.OfType<PlacedText>())
            {
                var font = new XFont(names[sign.Style.Face], sign.Style.Size, XFontStyleEx.Regular, options);
                if (GlyphHelper.GlyphIndexFromCodePoint(sign.Text[0], font) == 0)
                {
                    font = new XFont("DejaVuSerif", sign.Style.Size, XFontStyleEx.Regular, options);
                }

                graphics.DrawString(sign.Text, font, new XSolidBrush(XColor.FromArgb(0x1E, 0x2A, 0x2F)), sign.X, sign.Y, XStringFormats.BaseLineLeft);
            }
        }

        using var file = new MemoryStream();
        document.Save(file, closeStream: false);
        return file.ToArray();
    }

    private sealed class ProgramFaces : IFontResolver
    {
        public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(familyName);

        public byte[]? GetFont(string faceName)
        {
            using var file = typeof(LetterPrint).Assembly.GetManifestResourceStream(faceName + ".ttf")!;
            var bytes = new byte[file.Length];
            file.ReadExactly(bytes);
            return bytes;
        }
    }

    private sealed class Apart(string path) : AssemblyLoadContext("faces embedded whole", isCollectible: false)
    {
        private readonly AssemblyDependencyResolver resolver = new(path);

        protected override Assembly? Load(AssemblyName assemblyName) => resolver.ResolveAssemblyToPath(assemblyName) is { } found ? LoadFromAssemblyPath(found) : null;
    }
}
