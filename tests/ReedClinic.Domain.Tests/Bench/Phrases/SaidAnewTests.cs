using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What puts right the entry before in other words: how much on each side, what was wrong, which half alone, the last one by name, a fault that stands after all.</summary>
public sealed class SaidAnewTests
{
    [Theory]
    [InlineData("scratch that, two each side", "three strokes off the left corner", "thin-corners", 2, Blades.Both, Sides.Both)]
    [InlineData("no, two each side", "three strokes off the left corner", "thin-corners", 2, Blades.Both, Sides.Both)]
    [InlineData("scratch that, one on each side", "three strokes off the left corner", "thin-corners", 1, Blades.Both, Sides.Both)]
    [InlineData("scratch that, two a side", "three strokes off the left corner", "thin-corners", 2, Blades.Both, Sides.Both)]
    [InlineData("forget that, three either side", "two strokes off the left window", "open-windows", 3, Blades.Both, Sides.Both)]
    [InlineData("make that two each side", "three strokes off the left window", "open-windows", 2, Blades.Both, Sides.Both)]
    [InlineData("amend that, two strokes on both sides", "three strokes off the left corner", "thin-corners", 2, Blades.Both, Sides.Both)]
    [InlineData("scratch that, two off each", "three strokes off the left corner", "thin-corners", 2, Blades.Both, Sides.Both)]
    [InlineData("scratch that, two each blade", "three strokes off the heart, upper blade", "dust-heart", 2, Blades.Both, Sides.Both)]
    [InlineData("correct: three strokes was wrong, five strokes", "three strokes off the heart", "dust-heart", 5, Blades.Both, Sides.Both)]
    [InlineData("three strokes was wrong, it was five", "three strokes off the heart", "dust-heart", 5, Blades.Both, Sides.Both)]
    [InlineData("correct: five strokes", "three strokes off the heart", "dust-heart", 5, Blades.Both, Sides.Both)]
    [InlineData("correction, three was wrong, five strokes", "three strokes off the heart", "dust-heart", 5, Blades.Both, Sides.Both)]
    [InlineData("no, three is wrong, five", "three strokes off the heart", "dust-heart", 5, Blades.Both, Sides.Both)]
    public void How_much_and_where_is_put_right_at_once(string text, string before, string kind, int strokes, Blades blades, Sides sides)
    {
        var work = Assert.IsType<Adjustment>(Of(text, before));

        Assert.Equal((kind, (int?)strokes, blades, sides), (work.AdjustmentKind.Value, work.AmountStrokes, work.Place.Blades, work.Place.Sides));
    }

    [Theory]
    [InlineData("scratch the other blade, only the upper", "two strokes off the tip, both blades", Blades.Upper, Sides.Both)]
    [InlineData("forget the other blade, only the upper", "two strokes off the tip, both blades", Blades.Upper, Sides.Both)]
    [InlineData("scratch the lower blade, just the upper", "two strokes off the tip, both blades", Blades.Upper, Sides.Both)]
    [InlineData("scratch the right side, only the left", "two strokes off the corners", Blades.Both, Sides.Left)]
    [InlineData("not the other side, only the left", "two strokes off the corners", Blades.Both, Sides.Left)]
    [InlineData("that last one was on the lower blade", "two strokes off the left corner", Blades.Lower, Sides.Left)]
    [InlineData("the last entry was the lower blade", "two strokes off the left corner", Blades.Lower, Sides.Left)]
    [InlineData("sorry, that last one was the right corner", "two strokes off the left corner", Blades.Both, Sides.Right)]
    [InlineData("last one should have been lower", "left corner too thick", Blades.Lower, Sides.Left)]
    [InlineData("no, the last one was on the lower blade", "left corner too thick", Blades.Lower, Sides.Left)]
    public void Which_half_was_meant(string text, string before, Blades blades, Sides sides) => Assert.Equal(new Place(Zone.TipCorners, blades, sides), (Assert.IsAssignableFrom<BenchEntry>(Of(text, before)) switch
    {
        Adjustment work => work.Place,
        Finding found => found.Place,
        _ => default,
    }) with
    { Zone = Zone.TipCorners });

    [Theory]
    [InlineData("scratch that, half a turn", "moved the wire a quarter turn", "half a turn")]
    [InlineData("no, half a turn", "tightened the wire a quarter turn", "half a turn")]
    [InlineData("make that a full turn", "tightened the wire a quarter turn", "a full turn")]
    [InlineData("sorry, a quarter turn", "loosened the wire", "a quarter turn")]
    [InlineData("amend that: two turns", "tightened the wire one turn", "two turns")]
    public void How_far_a_wire_was_turned(string text, string before, string words) => Assert.Equal((Zone.Wire, words), Assert.IsType<Adjustment>(Of(text, before)) is var work ? (work.Zone, work.Amount.Words) : default);

    [Theory]
    [InlineData("undo that, it's still ragged", "edge is ragged", "smoothed the edge")]
    [InlineData("undo that, it's still ragged", "edge is ragged", "that's gone")]
    [InlineData("scratch that, it's still too thick", "left corner too thick", "that's gone")]
    [InlineData("forget that, the cork's still loose", "cork loose", "that's gone")]
    [InlineData("take that back, it's still too thick", "left corner too thick", "two strokes off the left corner")]
    public void A_fault_that_stands_after_all(string text, string found, string after) => Assert.Equal(FindingEnding.Unchanged, Assert.IsType<FindingEnded>(Of(text, found, after)).Ending);

    [Theory]
    [InlineData("two strokes off the left corner", "that last one was on another reed")]
    [InlineData("two strokes off the left corner", "the last reed was on the lower side")]
    [InlineData("clipped a hair", "that last one was a good clip")]
    [InlineData("two strokes off the heart", "scratch that, half a turn")]
    [InlineData("three strokes off the heart", "correct: four strokes was wrong, five strokes")]
    [InlineData("clipped 0.2 mm", "scratch that, two each side")]
    [InlineData("edge is ragged", "undo that, it's still ragged")]
    [InlineData("two strokes off the tip, upper", "scratch the other blade")]
    [InlineData("crow C", "three strokes was wrong, five strokes")]
    [InlineData("two strokes off the left corner", "two each side")]
    [InlineData("two strokes off the tip, both blades", "is the last one on the lower blade?")]
    public void What_says_something_else_puts_nothing_right(string before, string text) => Assert.Null(Of(text, before));

    [Theory]
    [InlineData("scratch that, two off the left corner and clipped a hair")]
    [InlineData("forget that, crow is B and the peep is C")]
    [InlineData("undo that, heart too thick, tip too thin")]
    [InlineData("take that back, two strokes off the heart, crow C")]
    [InlineData("scratch that, clipped a hair and crow is B")]
    public void Several_things_behind_what_takes_back_are_not_recorded_by_halves(string text)
    {
        var read = Assert.Single(PhraseReader.Read(text, PhraseCorpus.Context(["three strokes off the left corner"])).Entries);

        Assert.Equal((EntryKind.Note, text), (read.Kind, read.Said));
        Assert.NotEmpty(read.Doubts);
    }

    [Theory]
    [InlineData("forget the other blade, only the upper")]
    [InlineData("correct: five strokes")]
    [InlineData("correct: three strokes was wrong, five strokes")]
    public void Where_nothing_is_put_right_nothing_is_recorded_either(string text) => Assert.Equal(EntryKind.Note, Assert.Single(PhraseReader.Read(text, PhraseCorpus.Context(["crow C"])).Entries).Kind);

    [Fact]
    public void Where_nothing_stands_several_things_are_read() => Assert.Equal(3, PhraseReader.Read("scratch that, clipped a hair and crow is B", PhraseCorpus.Context([])).Entries.Count);

    private static BenchEntry? Of(string text, params string[] before)
    {
        var context = PhraseCorpus.Context(before);
        return EntryPutRight.Of(text, context.Log.Told.MaxBy(fact => fact.Now!.Sequence)?.Now, context, alone: true);
    }
}
