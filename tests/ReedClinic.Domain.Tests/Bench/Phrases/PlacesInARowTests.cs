using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Each place in a row was worked on, and the blade, side or amount behind the row holds for all of it.</summary>
public sealed class PlacesInARowTests
{
    [Theory]
    [InlineData("dusted the tip, the heart and the sides, upper only", "thin-whole-tip TipSides Upper - | dust-heart HeartCentre Upper - | take-heart-sides HeartSides Upper -")]
    [InlineData("scraped the tip, the heart and the windows, both blades", "thin-whole-tip TipSides - - | dust-heart HeartCentre - - | open-windows Windows - -")]
    [InlineData("thinned the corners, the wings and the heart, upper only", "thin-corners TipCorners Upper - | thin-tip-sides TipSides Upper - | dust-heart HeartCentre Upper -")]
    [InlineData("dusted the tip, heart, windows, left side only", "thin-tip-sides TipSides - Left | take-heart-sides HeartSides - Left | open-windows Windows - Left")]
    [InlineData("took two off the tip, the heart and the windows, upper blade only", "thin-whole-tip TipSides Upper - 2 | dust-heart HeartCentre Upper - 2 | open-windows Windows Upper - 2")]
    [InlineData("scraped the corners and the windows, right side only", "thin-corners TipCorners - Right | open-windows Windows - Right")]
    [InlineData("dusted the heart, the back and the tip on the lower, three strokes each", "dust-heart HeartCentre Lower - 3 | open-windows Windows Lower - 3 | thin-whole-tip TipSides Lower - 3")]
    [InlineData("scraped the rails, the windows and the tip, left only", "thin-rails Rails - Left | open-windows Windows - Left | thin-tip-sides TipSides - Left")]
    public void What_stands_behind_a_row_of_places_holds_for_each(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("dusted the tip, upper only", "thin-whole-tip TipSides Upper -")]
    [InlineData("scraped the tip, the left corner, upper only", "thin-corners TipCorners Upper Left")]
    [InlineData("scraped the tip, not the heart, upper only", "thin-whole-tip TipSides - -")]
    [InlineData("scraped the tip, the heart and windows look fine", "thin-whole-tip TipSides - - | something-else Windows - -")]
    [InlineData("scraped the tip, the heart is fine", "thin-whole-tip TipSides - - | heart-well-kept HeartCentre - -")]
    [InlineData("scraped the heart, the sides", "dust-heart HeartCentre - -")]
    public void What_is_no_row_of_work_stays_what_it_was(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(read =>
        $"{read.Slots.Kind} {read.Slots.Zone} {read.Slots.Blades?.ToString() ?? "-"} {read.Slots.Sides?.ToString() ?? "-"} {read.Slots.Strokes}".TrimEnd()));
}
