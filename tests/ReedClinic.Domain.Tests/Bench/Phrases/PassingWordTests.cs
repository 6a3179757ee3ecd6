using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is said in passing: of work just done, of a note that was played, of a place behind a comma, of what has ended. None of it is new work, or a fact that nobody told.</summary>
public sealed class PassingWordTests
{
    [Theory]
    [InlineData("oops, took too much off the left corner")]
    [InlineData("oops, took too much off the left corner", "two strokes off the left corner, upper")]
    [InlineData("whoops, I scraped a bit too much off the tip", "two strokes off the tip")]
    [InlineData("took a bit too much there")]
    [InlineData("took a bit too much there", "thinned the left corner, upper blade")]
    [InlineData("I took too much off the tip", "took a scrape off the tip")]
    [InlineData("damn, scraped too much off the heart")]
    [InlineData("went too far on the left corner")]
    [InlineData("overdid the left corner a bit")]
    [InlineData("took more than I wanted off the left wing", "two strokes off the left wing")]
    public void Too_much_of_what_was_just_done_is_a_remark(string phrase, params string[] before) => Assert.All(Read(phrase, before), read => Assert.Equal(EntryKind.Note, read.Kind));

    [Theory]
    [InlineData("took too much off the corners, lower", "thin-corners")]
    [InlineData("took too much off the corners, lower", "thin-corners", "dusted the heart, two strokes")]
    [InlineData("took too much off the left corner", "thin-corners", "two strokes off the right corner")]
    public void Too_much_elsewhere_is_a_deed_that_was_not_told_yet(string phrase, string kind, params string[] before) =>
        Assert.Equal((EntryKind.Adjustment, kind), Assert.Single(Read(phrase, before)) is var read ? (read.Kind, read.Slots.Kind) : default);

    [Theory]
    [InlineData("E flat is flat a bit")]
    [InlineData("E flat is flat a bit", "crow on C")]
    [InlineData("the E flat is sharp")]
    [InlineData("the B flat is sharp", "crow C")]
    [InlineData("middle D cracks")]
    [InlineData("middle D cracks", "crow on C")]
    [InlineData("middle C cracks", "crow on C")]
    [InlineData("half-hole D is sharp")]
    [InlineData("no more bump on the D")]
    [InlineData("octave D is flat")]
    [InlineData("left hand C sharp is sharp")]
    public void A_note_that_is_played_is_no_crow(string phrase, params string[] before) =>
        Assert.DoesNotContain(Read(phrase, before), read => read is { Kind: EntryKind.Test, Slots.Test: TestKind.Crow or TestKind.Peep });

    [Theory]
    [InlineData("crow on E flat", "Eb", null)]
    [InlineData("it crows E flat", "Eb", null)]
    [InlineData("C flat", "C", "crow B")]
    [InlineData("C -20", "C", "crow B")]
    [InlineData("C is flat", "C", "crow C")]
    [InlineData("B and a bit", "B", "crow C")]
    [InlineData("it's a B flat, a bit sharp", "Bb", "crow C")]
    public void A_crow_is_one_where_it_is_called_so_or_was_just_heard(string phrase, string pitch, string? before) =>
        Assert.Equal((TestKind.Crow, pitch), Assert.Single(Read(phrase, before is null ? [] : [before])).Slots is var slots ? (slots.Test, slots.Pitch) : default);

    [Theory]
    [InlineData("took a scrape off the tip, upper blade right corner", "thin-corners", Zone.TipCorners, Blades.Upper, Sides.Right)]
    [InlineData("two strokes off the tip, left corner lower blade", "thin-corners", Zone.TipCorners, Blades.Lower, Sides.Left)]
    [InlineData("dusted the tip, right side", "thin-tip-sides", Zone.TipSides, null, Sides.Right)]
    [InlineData("took two off the tip, lower blade", "thin-whole-tip", Zone.TipSides, Blades.Lower, null)]
    [InlineData("took a little off the heart, left shoulder upper blade", "take-heart-sides", Zone.HeartSides, Blades.Upper, Sides.Left)]
    [InlineData("one stroke off the back, left window lower blade", "open-windows", Zone.Windows, Blades.Lower, Sides.Left)]
    [InlineData("two strokes off the tip, left corner, lower blade", "thin-corners", Zone.TipCorners, Blades.Lower, Sides.Left)]
    public void A_place_behind_the_comma_says_where_in_it_the_work_was_done(string phrase, string kind, Zone zone, Blades? blade, Sides? side) =>
        Assert.Equal((EntryKind.Adjustment, kind, zone, blade, side), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Kind, read.Slots.Zone, read.Slots.Blades, read.Slots.Sides) : default);

    [Theory]
    [InlineData("the left one, two more strokes", "open-windows", Sides.Left, 2, "two strokes off the left window", "pressed closed")]
    [InlineData("the right one, one more stroke", "open-windows", Sides.Right, 1, "two strokes off the left window, upper", "pressed closed")]
    [InlineData("the left one, two more strokes", "thin-corners", Sides.Left, 2, "one stroke off the left corner", "dusted the heart, one stroke", "pressed closed")]
    [InlineData("left one, two strokes", "open-windows", Sides.Left, 2, "two strokes off the left window")]
    [InlineData("and two more on the right", "open-windows", Sides.Right, 2, "two strokes off the left window", "pressed closed")]
    public void Strokes_belong_to_what_was_scraped(string phrase, string kind, Sides side, int strokes, params string[] before) =>
        Assert.Equal((EntryKind.Adjustment, kind, side, strokes), Assert.Single(Read(phrase, before)) is var read ? (read.Kind, read.Slots.Kind, read.Slots.Sides, read.Slots.Strokes) : default);

    [Theory]
    [InlineData("the left one, two more strokes", "pressed closed")]
    [InlineData("two more strokes", "pressed closed")]
    [InlineData("the left one, two more strokes", "dusted the heart", "pressed closed")]
    public void Strokes_of_nothing_that_was_scraped_are_a_remark(string phrase, params string[] before) => Assert.All(Read(phrase, before), read => Assert.Equal(EntryKind.Note, read.Kind));

    [Theory]
    [InlineData("never clip this one", Zone.TipEdge)]
    [InlineData("never ever clip this", Zone.TipEdge)]
    [InlineData("don't ever clip this reed", Zone.TipEdge)]
    [InlineData("don't ever scrape the back on this", Zone.Windows)]
    [InlineData("never clip this one, it's too short", Zone.TipEdge)]
    public void Never_on_this_one_is_left_alone(string phrase, Zone zone) => Assert.Equal((EntryKind.LeaveAlone, zone), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Zone) : default);

    [Theory]
    [InlineData("never clip a reed when it's dry")]
    [InlineData("I never clip before soaking")]
    [InlineData("don't clip this yet")]
    public void Never_at_large_is_a_remark(string phrase) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("blades even now", "blades-uneven", "upper blade heavier than the lower")]
    [InlineData("blades are even now", "left-right-uneven", "left thicker than right")]
    [InlineData("sides even now", "left-right-uneven", "left thicker than right")]
    [InlineData("blades match now", "blades-uneven", "upper blade heavier than the lower")]
    public void What_is_even_now_has_ended(string phrase, string kind, string before) =>
        Assert.Equal((EntryKind.FindingEnded, kind, FindingEnding.Gone), Assert.Single(Read(phrase, before)) is var read ? (read.Kind, read.Slots.Kind, read.Slots.Ending) : default);

    [Fact]
    public void What_is_not_even_has_not_ended() => Assert.DoesNotContain(Read("not even now", "upper blade heavier than the lower"), read => read.Kind is EntryKind.FindingEnded);

    [Fact]
    public void A_note_beside_a_crow_that_was_told_is_not_another_crow() => Assert.Equal("C", Assert.Single(Read("crow C, E flat a bit flat"), read => read.Slots.Test is TestKind.Crow).Slots.Pitch);

    [Theory]
    [InlineData("the buzz is gone on the low D")]
    [InlineData("low D bump gone now")]
    public void A_noise_that_is_gone_is_no_step_of_how_a_note_speaks(string phrase) => Assert.All(Read(phrase), read => Assert.Null(read.Slots.Step));

    [Theory]
    [InlineData("opening about a mil")]
    [InlineData("opening just over half a mil")]
    [InlineData("opening 0.6")]
    public void A_size_of_the_opening_is_no_step_and_no_cents(string phrase) => Assert.All(Read(phrase), read => Assert.True(read.Slots is { Step: null, Cents: null, Kind: null }));

    [Fact]
    public void Blades_that_nobody_found_uneven_end_nothing() => Assert.DoesNotContain(Read("blades even now"), read => read.Kind is EntryKind.FindingEnded);

    [Theory]
    [InlineData("lower blade is heavier than the upper on the right side", Blades.Lower, Sides.Right)]
    [InlineData("upper blade is thicker than the lower on the left", Blades.Upper, Sides.Left)]
    [InlineData("on the right side the lower blade is heavier than the upper", Blades.Lower, Sides.Right)]
    public void Blade_against_blade_on_one_side_is_no_left_against_right(string phrase, Blades blade, Sides side) =>
        Assert.Equal(("blades-uneven", blade, side, Relation.ThickerThan), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Kind, slots.Blades, slots.Sides, slots.Relation) : default);

    [Theory]
    [InlineData("bump is gone on the middle D")]
    [InlineData("bump is gone on the middle D but low C still late")]
    [InlineData("bump is gone on the middle D but low C still late", "bump in the heart")]
    [InlineData("bump on the middle D")]
    public void A_bump_that_is_gone_was_not_found(string phrase, params string[] before) => Assert.DoesNotContain(Read(phrase, before), read => read.Kind is EntryKind.Finding);

    [Fact]
    public void Low_notes_behind_a_bump_that_is_gone_are_heard() => Assert.Contains(Read("bump is gone on the middle D but low C still late"), read => read.Slots is { Test: TestKind.LowResponse, Step: "late", Pitch: "C" });

    [Theory]
    [InlineData("crow is flat, B and a bit")]
    [InlineData("crow is flat, B")]
    [InlineData("crow is low, B")]
    public void A_crow_that_is_flat_says_nothing_of_its_octaves(string phrase) => Assert.Equal((TestKind.Crow, null, "B"), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Test, slots.Step, slots.Pitch) : default);

    [Theory]
    [InlineData("sealed? held under water, no bubbles")]
    [InlineData("held under water, no bubbles")]
    [InlineData("held it under water, bubbles at the thread")]
    public void Bubbles_are_no_step_of_the_drawn_air(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Test is TestKind.Seal);

    [Theory]
    [InlineData("opening half a mil")]
    [InlineData("opening is half a millimetre")]
    [InlineData("opening 0.5 mm")]
    public void A_size_of_the_opening_is_no_fault(string phrase) => Assert.All(Read(phrase), read => Assert.Equal(EntryKind.Note, read.Kind));

    [Theory]
    [InlineData("effort is too easy", "a little too easy")]
    [InlineData("effort too hard", "a little too hard")]
    [InlineData("effort far too easy", "far too easy")]
    [InlineData("way too hard to blow", "far too hard")]
    public void Too_alone_is_not_far_too(string phrase, string step) => Assert.Equal((TestKind.Effort, step), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Test, slots.Step) : default);

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
