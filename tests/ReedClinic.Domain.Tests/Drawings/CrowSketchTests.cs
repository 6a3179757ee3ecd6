using System.Text.RegularExpressions;
using CsCheck;
using ReedClinic.Domain.Drawings;

namespace ReedClinic.Domain.Tests.Drawings;

public sealed partial class CrowSketchTests
{
    // No letter of the faces that are used is wider on the average than half of its size, 16.
    private const double SignWidth = 8;

    private static readonly string[] Works = ["clip 0.1 mm", "corners ×2", "bottom of the heart", "drew the plaque once along the…", "Donaudampfschifffahrtsgesellsch…"];

    private static readonly CrowShow[] Shows = [CrowShow.Bench, CrowShow.BenchNarrow, CrowShow.Letter, CrowShow.LetterNarrow, CrowShow.Paper];

    private static readonly Gen<CrowPicture> Pictures =
        from heard in Gen.Select(Gen.Int[-300, 300], Gen.Int[0, 80], Gen.Int[0, 1]).List[1, 14]
        from work in Gen.Int[0, Works.Length - 1].Select(index => Works[index]).List[0, 4].List[14]
        from gaps in Gen.Bool.List[14]
        select Picture(heard, work, gaps);

    [Fact]
    public void Every_word_dot_and_line_of_every_drawing_lies_within_it() =>
        Pictures.Sample(picture => Assert.All(Shows, show =>
        {
            var drawn = CrowSketch.Of(picture, show with { Keys = CrowSketch.Shown(picture) });
            Assert.All(drawn.Parts.SelectMany(Points), point => Assert.True(
                point.X >= -0.1 && point.X <= drawn.Width + 0.1 && point.Y >= 0 && point.Y <= drawn.Height + 0.1, $"{point} of {drawn.Width} by {drawn.Height}"));
        }), iter: 300);

    [Fact]
    public void Down_a_narrow_window_all_that_was_done_stands_whole_and_no_words_cover_others() =>
        Pictures.Sample(picture =>
        {
            var drawn = CrowSketch.Of(picture, CrowShow.LetterNarrow with { Keys = CrowSketch.Shown(picture) });
            var words = drawn.Parts.OfType<SketchWords>().ToList();
            Assert.Equal(
                string.Concat(picture.Moves.SelectMany(move => move.Work.Append(move.Change))).Replace(" ", "", StringComparison.Ordinal),
                string.Concat(words.Where(one => one.X > 170).Select(one => one.Text)).Replace(" ", "", StringComparison.Ordinal)
                    .Replace("sharper", "", StringComparison.Ordinal).Replace("somewhereinbetween", "", StringComparison.Ordinal));
            Apart(words);
        }, iter: 300);

    [Fact]
    public void Over_the_steps_no_words_cover_others() =>
        Pictures.Sample(picture => Apart([.. CrowSketch.Of(picture, CrowShow.Letter with { Keys = CrowSketch.Shown(picture) }).Parts.OfType<SketchWords>()]), iter: 300);

    [Fact]
    public void At_the_bench_a_drawing_is_as_tall_with_one_crow_as_with_twelve() =>
        Pictures.Sample(picture => Assert.Equal(
            (136, 124), (CrowSketch.Of(picture, CrowShow.Bench).Height, CrowSketch.Of(picture, CrowShow.BenchNarrow).Height)));

    [Fact]
    public void The_same_cents_lie_equally_far_from_the_target_however_the_drawing_runs()
    {
        var picture = Picture([(-70, 0, 1), (-20, 0, 1), (30, 0, 1)], [["corners"], ["clip"]], [false, false]);

        var (across, down) = (Dots(CrowShow.Letter), Dots(CrowShow.LetterNarrow));

        Assert.Equal(across.Select(dot => Math.Round((dot.Y - across[2].Y) / (across[0].Y - across[2].Y), 3)), down.Select(dot => Math.Round((down[2].X - dot.X) / (down[2].X - down[0].X), 3)));
        Assert.True(across[0].Y > across[1].Y && across[1].Y > across[2].Y);
        Assert.True(down[0].X < down[1].X && down[1].X < down[2].X);
        List<SketchDot> Dots(CrowShow show) => [.. CrowSketch.Of(picture, show).Parts.OfType<SketchDot>()];
    }

    [Fact]
    public void A_drawing_explains_what_is_on_it_and_asked_for()
    {
        var picture = Picture([(-70, 0, 1), (0, 40, 1), (0, 0, 1)], [["corners"], ["clip"]], [false, true]);

        Assert.Equal(CrowKeys.Band | CrowKeys.Range | CrowKeys.Gap, CrowSketch.Shown(picture));
        Assert.Equal(CrowKeys.Band, CrowSketch.Shown(Picture([(-70, 0, 1), (0, 0, 1)], [["corners"]], [false])));
        Assert.Equal(["within 30 cents of C at\u00A0A\u00A0442\u00A0Hz", "not every pass was heard"], Explained(CrowKeys.Band | CrowKeys.Gap));
        Assert.Empty(Explained(CrowKeys.None));
        Assert.DoesNotContain(CrowSketch.Of(picture, CrowShow.Letter with { HasBand = false }).Parts.OfType<SketchPath>(), path => path.Ink == SketchInk.Band);
        IEnumerable<string> Explained(CrowKeys keys) =>
            CrowSketch.Of(picture, CrowShow.Letter with { Keys = keys }).Parts.OfType<SketchWords>().Select(words => words.Text).Where(text => text.Length > 12);
    }

    [Fact]
    public void Two_crows_of_a_pass_have_one_label()
    {
        var picture = Picture([(-70, 0, 0), (-30, 0, 1), (0, 0, 0)], [["corners"], ["clip"]], [false, false]);

        Assert.Equal(["came", "pass 1"], Labels(CrowShow.Letter));
        Assert.Equal(["came", "pass 1"], Labels(CrowShow.LetterNarrow));
        Assert.Equal(["came: corners: up", "pass 1: clip: up"], CrowSketch.Steps(Picture([(-70, 0, 0), (-30, 0, 0), (0, 0, 1)], [["corners"], ["clip"]], [false, false]), CrowShow.Letter));
        IEnumerable<string> Labels(CrowShow show) =>
            CrowSketch.Of(picture, show).Parts.OfType<SketchWords>().Select(words => words.Text).Where(text => text.StartsWith("pass", StringComparison.Ordinal) || text == "came");
    }

    [Fact]
    public void A_word_that_is_cut_is_never_cut_within_a_letter()
    {
        var cut = string.Concat(Enumerable.Repeat("😀", 9)) + string.Concat(Enumerable.Repeat("e\u0301", 30));
        var lines = CrowSketch.Of(Picture([(-70, 0, 1), (0, 0, 1)], [[cut]], [false]), CrowShow.LetterNarrow).Parts.OfType<SketchWords>().Where(words => words.Type == SketchType.Step).Select(words => words.Text).ToList();

        Assert.True(lines.Count > 2);
        Assert.Equal(cut, string.Concat(lines));
        Assert.All(lines, line => Assert.False(char.IsLowSurrogate(line[0]) || line[0] == '\u0301', line));
    }

    private static CrowPicture Picture(List<(int Low, int Range, int Pass)> heard, List<List<string>> work, List<bool> gaps)
    {
        var passes = heard.Skip(1).Aggregate(new List<int> { 0 }, (all, one) => [.. all, all[^1] + one.Pass]);
        return new(
            "C", 442, "From there to here", [.. heard.Select((one, index) => new CrowHeard(passes[index], one.Low, one.Low + one.Range))],
            [.. Enumerable.Range(0, heard.Count - 1).Select(index => new CrowMove(work[index], "up", string.Join(", ", work[index]) + ": up", gaps[index]))]);
    }

    private static void Apart(List<SketchWords> words)
    {
        foreach (var (one, index) in words.Select((one, index) => (one, index)))
        {
            Assert.All(words.Skip(index + 1), other => Assert.False(
                Math.Abs(one.Y - other.Y) < 13 && Left(one) < Left(other) + Wide(other) && Left(other) < Left(one) + Wide(one), $"{one} covers {other}"));
        }
    }

    private static double Wide(SketchWords words) => words.Text.Length * (SignWidth - 1);

    private static double Left(SketchWords words) => words.X - (Wide(words) * words.Align switch { SketchAlign.Start => 0, SketchAlign.Middle => 0.5, _ => 1 });

    private static IEnumerable<(double X, double Y)> Points(SketchPart part) => part switch
    {
        SketchDot dot => [(dot.X - dot.Radius, dot.Y - dot.Radius), (dot.X + dot.Radius, dot.Y + dot.Radius)],
        SketchWords words => [(Left(words), words.Y - 11), (Left(words) + Wide(words), words.Y)],
        SketchPath path => Pair().Matches(path.Data).Select(pair => (Number(pair.Groups[1]) + path.X, Number(pair.Groups[2]) + path.Y)),
        _ => [],
    };

    private static double Number(Group digits) => double.Parse(digits.Value, System.Globalization.CultureInfo.InvariantCulture);

    [GeneratedRegex("(-?[0-9.]+),(-?[0-9.]+)")]
    private static partial Regex Pair();
}
