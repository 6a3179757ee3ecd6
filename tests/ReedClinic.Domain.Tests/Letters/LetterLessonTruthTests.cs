using System.Text.RegularExpressions;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>
/// What a lesson tells to see is what light and cane do: against a lamp thin cane is bright, and over a dark plaque it is dark, because the
/// plaque stops the lamp and shows through (optics of a thin layer before a bright and before a dark ground; the words are common practice).
/// What it tells to do can be done as it stands, and is what its drawing shows.
/// </summary>
public sealed partial class LetterLessonTruthTests
{
    private static readonly ScrapeStyle[] Styles = [ScrapeStyle.LongScrape, ScrapeStyle.ShortScrape];

    private static readonly Instrument[] Instruments = [Instrument.Oboe, Instrument.CorAnglais];

    private static readonly List<(string Name, FindingKindId Kind, ScrapeStyle Style, Instrument For, TeachingNote Note)> All =
    [
        .. from kind in FindingCatalogue.All
           from style in Styles
           from instrument in Instruments
           select ($"{kind.Id.Value}, {style}, {instrument}", kind.Id, style, instrument, TeachingNote.For(kind.Id, style, instrument)),
    ];

    [Theory]
    [InlineData("tip-corners-thick", "corners should be (the )?darkest", "as pale as the middle.*(thinning|more|thick)")]
    [InlineData("tip-centre-thin", "middle should be a (shade|little) paler", "dark (all|right) across, the middle (has gone|is too thin)")]
    [InlineData("left-right-uneven", "(Over it|There) the thin(ner)? side is the darker", "darker.* thicker")]
    public void Over_a_dark_plaque_thin_cane_is_told_to_be_dark_and_thick_cane_pale(string kind, string right, string otherwise)
    {
        var checks = TeachingNote.For(new FindingKindId(kind)).Checks;
        Assert.All(Enumerable.Range(0, 14), reading =>
        {
            var told = string.Join(' ', checks.Select(check => LetterWordingTests.Readings(check).ElementAt(reading * 2)));
            Assert.Matches(right, told);
            Assert.Matches(otherwise, told);
        });
    }

    [Fact]
    public void Whatever_names_a_shade_of_cane_says_against_what_it_is_seen() => Assert.All(Texts(), text =>
    {
        if (Shade().IsMatch(text))
        {
            Assert.Matches("(?i)lamp|light|plaque", text);
            Assert.DoesNotMatch(@"(?i)plaque[^.]*\b(lets?|more|most) light through|through (?:[^.]*)plaque in\b", text);
        }
    });

    /// <summary>A plaque between the blades keeps the lamp from being seen through them.</summary>
    [Fact]
    public void Whoever_has_scraped_on_the_plaque_takes_it_out_before_looking_against_the_lamp() => Assert.All(
        All.Where(lesson => lesson.Note.Stroke is { } stroke && stroke.Any(text => text.Contains("plaque", StringComparison.Ordinal))),
        lesson => Assert.All(lesson.Note.Plan.SelectMany(LetterWordingTests.Readings), step =>
        {
            if (AgainstTheLamp().IsMatch(step) && !step.StartsWith("stop", StringComparison.Ordinal))
            {
                Assert.Contains("take the plaque out", step, StringComparison.Ordinal);
            }
        }));

    [Fact]
    public void The_card_of_the_plaque_says_which_way_round_it_is() =>
        Assert.Matches("darker than it should be is thin.*paler is thick.*other way round", Catalogue.Shipped.Tests.Single(card => card.Id.Value == "look-plaque").Otherwise);

    [Fact]
    public void Each_step_that_takes_cane_says_how_often() => Assert.All(All, lesson => Assert.All(lesson.Note.Plan.SelectMany(LetterWordingTests.Readings), step =>
    {
        if (TakesCane().IsMatch(step))
        {
            Assert.Matches(@"\b(one|two|three|four|twice|once)\b", step);
        }
    }));

    /// <summary>The last step, “stop …”, is left out where the teacher wrote that the student stops too soon.</summary>
    [Fact]
    public void A_plan_with_a_stroke_has_an_end_besides_its_last_step() => Assert.All(
        All.Where(lesson => lesson.Note.Stroke is not null && !lesson.Name.Contains("uneven", StringComparison.Ordinal) && !lesson.Name.Contains("lopsided", StringComparison.Ordinal)),
        lesson => Assert.Contains(
            lesson.Note.Plan.Where(step => !step.StartsWith("stop", StringComparison.Ordinal)), step => LetterWordingTests.Readings(step).All(text => HasEnd().IsMatch(text))));

    [Fact]
    public void A_step_of_cane_is_said_to_lie_on_a_side_and_not_in_front() => Assert.All(
        Texts(), text => Assert.DoesNotMatch(@"\b(step|stair)( that is left)? (in front of|behind) (it|the line)", text));

    [Fact]
    public void A_line_to_be_drawn_has_its_lengths_or_a_reed_to_take_them_from() => Assert.All(
        All.Where(lesson => lesson.Kind.Value is "tip-not-separate" or "tip-long"),
        lesson => Assert.All(LetterWordingTests.Readings(lesson.Note.Plan[0]), step => Assert.Matches(
            lesson is { Style: ScrapeStyle.LongScrape, For: Instrument.Oboe } ? "two millimetres from the end in the middle, about four at the sides" : "as far from the end as on a reed that you like", step)));

    [Fact]
    public void A_stroke_is_told_as_it_is_drawn() => Assert.All(All, lesson =>
    {
        if (lesson.Note.Stroke is not { } stroke || StrokePlan.For(lesson.Kind, lesson.Style, lesson.For) is not { } plan)
        {
            return;
        }

        Assert.All(Enumerable.Range(0, 14), reading =>
        {
            var told = string.Join(' ', stroke.Select(text => LetterWordingTests.Readings(text).ElementAt(reading * 2)));
            Assert.All(Words(plan.Start).Concat(Words(plan.Finish)), word => Assert.Matches($@"\b{word}\b", told));
            Assert.DoesNotContain("side of the blade.", told, StringComparison.Ordinal);
        });
        var half = ReedMeasures.For(lesson.Style, lesson.For).TipWidth / 2;
        var leaves = plan.Finish.Contains("past", StringComparison.Ordinal);
        Assert.All(plan.Ways, way => Assert.Equal(leaves, way.To.Y < 0 || Math.Abs(way.To.X) > half));
    });

    /// <summary>Each half of the tip is reached: no way of the knife that is drawn stops short of the outer part.</summary>
    [Fact]
    public void The_strokes_from_the_line_reach_the_outer_half_of_the_tip_and_nearly_its_end()
    {
        var ways = StrokePlan.For(new FindingKindId("tip-not-separate"), ScrapeStyle.LongScrape, Instrument.Oboe)!.Ways;
        Assert.Contains(ways, way => Math.Abs(way.From.X) > 1.75 && way.To.Y < 0.5);
        Assert.Contains(ways, way => Math.Abs(way.From.X) < 1.75 && way.To.Y < 0.5);
    }

    private static IEnumerable<string> Texts() => All.Select(lesson => lesson.Note).Distinct()
        .SelectMany(note => note.Checks.Concat(note.Stroke ?? []).Concat(note.Plan)).Distinct().SelectMany(LetterWordingTests.Readings);

    private static IEnumerable<string> Words(string sign) => sign.Split(' ').Where(word => word.Length > 3 && word is not ("begin" or "lift" or "where"));

    [GeneratedRegex(@"\b(dark|darker|darkest|pale|paler|palest|bright|brighter|brightest)\b(?! (plaque|sky))")]
    private static partial Regex Shade();

    [GeneratedRegex(@"(?i)\b(against|hold\w*[^.]*to) (the|a) (lamp|light)\b")]
    private static partial Regex AgainstTheLamp();

    [GeneratedRegex(@"^(first |then |last of all, |at the very end, |last, )?(scrape|thin|smooth|take (two|three|the st|one))\b")]
    private static partial Regex TakesCane();

    [GeneratedRegex(@"\b(rounds?|until|at (the )?most|only if|if|drops below|would)\b|when the crow")]
    private static partial Regex HasEnd();
}
