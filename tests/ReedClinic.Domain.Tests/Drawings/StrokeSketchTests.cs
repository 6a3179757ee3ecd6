using System.Globalization;
using System.Text.RegularExpressions;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Drawings;

public sealed partial class StrokeSketchTests
{
    // At 16, the size of a drawing’s words, letters of Source Sans 3 are as wide as this in the mean of English text.
    private const double SignWidth = 7.2;

    private static readonly StrokeShow[] Shows = [StrokeShow.Letter, StrokeShow.LetterNarrow];

    private static readonly List<(string Name, Func<StrokeShow, Sketch> Draw)> All =
    [
        .. from kind in FindingCatalogue.All
           from style in Enum.GetValues<ScrapeStyle>()
           from instrument in new[] { Instrument.Oboe, Instrument.CorAnglais }
           where StrokePlan.For(kind.Id, style, instrument) is not null
           select ($"{kind.Id.Value}, {style}, {instrument}", (Func<StrokeShow, Sketch>)(show => StrokeSketch.Of(kind.Id, style, instrument, show)!)),
    ];

    [Fact]
    public void Every_word_and_line_of_every_stroke_lies_within_its_drawing() => Assert.All(All, stroke => Assert.All(Shows, show =>
    {
        var drawn = stroke.Draw(show);
        Assert.All(drawn.Parts.SelectMany(Points), point => Assert.True(
            point.X >= 0 && point.X <= drawn.Width && point.Y >= 0 && point.Y <= drawn.Height, $"{stroke.Name}: {point} of {drawn.Width} by {drawn.Height}"));
    }));

    [Fact]
    public void No_words_of_a_stroke_cover_others() => Assert.All(All, stroke => Assert.All(Shows, show =>
    {
        var words = stroke.Draw(show).Parts.OfType<SketchWords>().ToList();
        Assert.All(words.Index(), one => Assert.All(words.Skip(one.Index + 1), other => Assert.False(
            Math.Abs(one.Item.Y - other.Y) < 13 && Left(one.Item) < Left(other) + Wide(other) && Left(other) < Left(one.Item) + Wide(one.Item), $"{stroke.Name}: {one.Item} covers {other}")));
    }));

    [Fact]
    public void Both_drawings_say_the_same() => Assert.All(All, stroke =>
    {
        static string Said(Sketch drawn) => string.Join(' ', drawn.Parts.OfType<SketchWords>().Select(words => words.Text));
        var (wide, narrow) = (stroke.Draw(StrokeShow.Letter), stroke.Draw(StrokeShow.LetterNarrow));
        Assert.Equal(Said(wide), Said(narrow));
        Assert.Equal((wide.Title, wide.Description), (narrow.Title, narrow.Description));
    });

    private static double Wide(SketchWords words) => words.Text.Length * SignWidth;

    private static double Left(SketchWords words) => words.X - (Wide(words) * words.Align switch { SketchAlign.Start => 0, SketchAlign.Middle => 0.5, _ => 1 });

    private static IEnumerable<(double X, double Y)> Points(SketchPart part) => part switch
    {
        SketchWords words => [(Left(words), words.Y - 11), (Left(words) + Wide(words), words.Y)],
        SketchPath path => Pair().Matches(path.Data).Select(pair => (Number(pair.Groups[1]) + path.X, Number(pair.Groups[2]) + path.Y)),
        _ => [],
    };

    private static double Number(Group digits) => double.Parse(digits.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("(-?[0-9.]+),(-?[0-9.]+)")]
    private static partial Regex Pair();
}
