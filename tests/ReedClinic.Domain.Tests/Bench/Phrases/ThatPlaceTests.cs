using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>“That corner”, “the other window”, “sorry, meant upper”: the place that was spoken of, or that was meant.</summary>
public sealed class ThatPlaceTests
{
    [Theory]
    [InlineData("left corner thick, upper blade", "two light strokes on that corner", Blades.Upper, Sides.Left)]
    [InlineData("two strokes off the left corner of the upper blade", "one stroke on this corner", Blades.Upper, Sides.Left)]
    [InlineData("two strokes off the left corner of the upper blade", "the other corner, same blade", Blades.Upper, Sides.Right)]
    [InlineData("two strokes off the left corner of the upper blade", "there again", Blades.Upper, Sides.Left)]
    [InlineData("left window of the lower blade is shallow", "opened that window, 3 strokes", Blades.Lower, Sides.Left)]
    [InlineData("left window of the lower blade is shallow", "opened the other window, 3 strokes", Blades.Lower, Sides.Right)]
    public void What_is_pointed_to_is_where_it_was_spoken_of(string before, string phrase, Blades blades, Sides sides)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal((EntryKind.Adjustment, blades, sides), (read.Kind, read.Slots.Blades, read.Slots.Sides));
        Assert.NotEqual(Zone.Opening, read.Slots.Zone);
    }

    [Fact]
    public void In_one_breath_as_well()
    {
        var read = Read("left corner of the upper blade is thick. Two strokes on that corner, one on the other corner");

        Assert.Equal([(Blades.Upper, Sides.Left), (Blades.Upper, Sides.Left), (Blades.Upper, Sides.Right)], read.Select(entry => (entry.Slots.Blades!.Value, entry.Slots.Sides!.Value)));
    }

    [Theory]
    [InlineData("two light strokes on that corner")]
    [InlineData("one stroke on the same corner")]
    [InlineData("two light strokes on that corner", "corners thick")]
    [InlineData("two light strokes on that corner", "left window shallow, upper blade")]
    public void Where_none_was_spoken_of_it_is_a_remark_in_doubt_and_not_all_four(string phrase, params string[] before)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal(EntryKind.Note, read.Kind);
        Assert.NotEmpty(read.Doubts);
    }

    [Fact]
    public void What_is_shown_in_the_hand_is_shown_unsure() => Assert.Contains(Assert.Single(Read("I'm taking this corner down now, watch, one stroke")).Doubts, doubt => doubt.Slot is "sides");

    [Theory]
    [InlineData("sorry meant upper", Blades.Upper, Sides.Right)]
    [InlineData("sorry, I meant the upper", Blades.Upper, Sides.Right)]
    [InlineData("no wait, that was the top blade", Blades.Upper, Sides.Right)]
    [InlineData("sorry, left side", Blades.Lower, Sides.Left)]
    [InlineData("oops, upper left corner", Blades.Upper, Sides.Left)]
    [InlineData("wrong blade", Blades.Upper, Sides.Right)]
    [InlineData("wrong blade, upper", Blades.Upper, Sides.Right)]
    [InlineData("other blade, sorry", Blades.Upper, Sides.Right)]
    public void What_puts_right_a_blade_or_a_side_changes_that(string text, Blades blades, Sides sides)
    {
        var work = Assert.IsType<Adjustment>(PlacePutRight.Of(text, Last("two strokes off the right corner of the lower blade"), alone: true));

        Assert.Equal(("thin-corners", new Place(Zone.TipCorners, blades, sides), 2), (work.AdjustmentKind.Value, work.Place, work.AmountStrokes));
    }

    [Theory]
    [InlineData("upper")]
    [InlineData("the right corner was thick")]
    [InlineData("sorry, meant three strokes")]
    [InlineData("sorry, the left window")]
    [InlineData("was it the upper?")]
    [InlineData("sorry")]
    [InlineData("no more on the left")]
    public void What_says_anything_else_puts_right_no_place(string text) => Assert.Null(PlacePutRight.Of(text, Last("two strokes off the right corner of the lower blade"), alone: true));

    [Fact]
    public void In_a_correction_the_blade_alone_is_enough_and_words_that_named_another_are_told_with_it()
    {
        var left = Assert.IsType<LeaveAlone>(PlacePutRight.Of("upper", Last("leave the left rail of the lower blade alone"), alone: false));

        Assert.Equal((Blades.Upper, "leave the left rail of the lower blade alone (upper)"), (left.Place.Blades, left.Words));
    }

    [Fact]
    public void A_test_has_no_place_to_put_right() => Assert.Null(PlacePutRight.Of("sorry, upper", Last("crow is C"), alone: true));

    private static BenchEntry? Last(string phrase) => PhraseCorpus.Context([phrase]).Log.Facts[^1].Now;

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
