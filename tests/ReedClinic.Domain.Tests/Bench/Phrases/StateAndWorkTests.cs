using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>How a place is stands beside what was done for it, with the blade and the side that were named.</summary>
public sealed class StateAndWorkTests
{
    [Theory]
    [InlineData("upper tip: left fine, right too thick, took one stroke off the right", "tip-thick TipSides Upper Right | thin-whole-tip TipSides Upper Right")]
    [InlineData("lower tip: right fine, left too thick, took two strokes off the left", "tip-thick TipSides Lower Left | thin-whole-tip TipSides Lower Left")]
    [InlineData("tip left too thick, took one off", "tip-thick TipSides - Left | thin-whole-tip TipSides - Left")]
    [InlineData("upper heart strong, lower heart weak", "heart-thick HeartCentre Upper - | heart-thin HeartCentre Lower -")]
    [InlineData("lower heart too strong, upper ok", "heart-thick HeartCentre Lower -")]
    [InlineData("upper heart weak, lower heart strong", "heart-thin HeartCentre Upper - | heart-thick HeartCentre Lower -")]
    [InlineData("heart good and strong", "  - -")]
    [InlineData("heart sounds strong", "  - -")]
    public void How_it_is_and_what_was_done_are_both_kept(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("heart too strong", "heart-thick HeartCentre - -")]
    [InlineData("lower heart weak", "heart-thin HeartBottom - -")]
    [InlineData("took one stroke off the right corner", "thin-corners TipCorners - Right")]
    [InlineData("took one off the tip because it was too thick", "thin-whole-tip TipSides - -")]
    [InlineData("left corner too thick, took one off it", "tip-corners-thick TipCorners - Left | thin-corners TipCorners - Left")]
    [InlineData("corners are thick, thinned them left and right", "tip-corners-thick TipCorners - - | thin-corners TipCorners - -")]
    public void What_is_said_plainly_stays(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(read =>
        $"{read.Slots.Kind} {read.Slots.Zone} {read.Slots.Blades?.ToString() ?? "-"} {read.Slots.Sides?.ToString() ?? "-"}"));
}
