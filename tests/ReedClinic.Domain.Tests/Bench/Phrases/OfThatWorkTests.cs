using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What leans on work: a fault that is pointed at where it was done, and the blade on which it is done again.</summary>
public sealed class OfThatWorkTests
{
    [Theory]
    [InlineData("I've taken too much off the heart and it's too thin there now.", "heart-thin", Zone.HeartCentre, null)]
    [InlineData("I've taken too much off the back and it's too thin there now", "back-thin", Zone.Windows, null)]
    [InlineData("took too much off the heart, now it's too thin there", "heart-thin", Zone.HeartCentre, null)]
    [InlineData("took too much off the windows and it's thin there now", "back-thin", Zone.Windows, null)]
    [InlineData("took too much off the left corner and now the corner's chipped, so that one's on me", "tip-corner-broken", Zone.TipCorners, Sides.Left)]
    [InlineData("took too much off the right corner and now the corner's too thin", "tip-thin", Zone.TipCorners, Sides.Right)]
    [InlineData("took too much off the left window and now the window's too thin", "back-thin", Zone.Windows, Sides.Left)]
    [InlineData("took too much off the left corner and now the right corner's too thin", "tip-thin", Zone.TipCorners, Sides.Right)]
    [InlineData("took too much off the heart and now the tip's too thin", "tip-thin", Zone.TipSides, null)]
    [InlineData("took too much off the tip and now it's too thin there", "tip-thin", Zone.TipSides, null)]
    public void A_fault_of_the_work_is_where_it_was_done_unless_another_place_is_named(string phrase, string kind, Zone zone, Sides? sides)
    {
        var found = Assert.Single(Read(phrase), entry => entry.Kind is EntryKind.Finding).Slots;

        Assert.Equal((kind, zone, sides), (found.Kind, found.Zone, found.Sides));
    }

    [Theory]
    [InlineData("bottom blade, ears again, same", "ears, two each, top blade", Blades.Lower)]
    [InlineData("lower blade, same again", "two strokes off the upper left corner", Blades.Lower)]
    [InlineData("upper blade, the same", "two strokes off the lower left corner", Blades.Upper)]
    [InlineData("top blade, same again", "two off the heart, lower blade", Blades.Upper)]
    [InlineData("and the upper blade, same again", "two off the heart, lower blade", Blades.Upper)]
    [InlineData("bottom blade, same again", "four strokes in the left window of the upper blade", Blades.Lower)]
    [InlineData("same again", "two strokes off the upper left corner", Blades.Upper)]
    [InlineData("same on the other blade", "two strokes off the upper left corner", Blades.Lower)]
    [InlineData("upper blade, same again", "two strokes off the upper left corner", Blades.Upper)]
    public void Work_again_is_of_the_blade_that_is_named(string phrase, string before, Blades blades) => Assert.Equal((EntryKind.Adjustment, blades), Assert.Single(Read(phrase, before)) is var read ? (read.Kind, read.Slots.Blades) : default);

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
