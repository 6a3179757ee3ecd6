using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What the words of an entry say plainly is in its slots: steps of a scale, strokes, for the sake of what, and which leak.</summary>
public sealed class SaidPlainlyTests
{
    [Theory]
    [InlineData("crow: high, then low joins, C", TestKind.Crow, "high, then low joins")]
    [InlineData("The crow's only giving the high octave and it's a C sharp", TestKind.Crow, "high only")]
    [InlineData("The crow gives the low note only, and it is a B.", TestKind.Crow, "low only")]
    [InlineData("peeps a B, and already crowing", TestKind.Peep, "already crowing")]
    [InlineData("Peep: C sharp. Student bites, I fear.", TestKind.Peep, null)]
    [InlineData("peep is a clean B", TestKind.Peep, "clean")]
    [InlineData("closing order: all at once", TestKind.ClosingOrder, "all at once")]
    [InlineData("tip closes all at once", TestKind.ClosingOrder, "all at once")]
    public void A_step_is_what_the_words_say(string phrase, TestKind test, string? step) => Assert.Equal((test, step), Read(phrase)[0].Slots is var slots ? (slots.Test, slots.Step) : default);

    [Fact]
    public void What_goes_up_after_the_tuning_note_is_the_tuning_note() =>
        Assert.Equal((TestKind.TuningNote, 6m), Assert.Single(Read("up six", "tuning A flat", "clip a hair")).Slots is var slots ? (slots.Test, slots.Change) : default);

    [Theory]
    [InlineData("set the tip off from the heart, two light strokes", "define-tip", 2, null)]
    [InlineData("five strokes, left window, bottom blade", "open-windows", 5, null)]
    [InlineData("I took one stroke down each shoulder of the heart so that the middle stands thicker by comparison.", "take-heart-sides", 1, Zone.HeartCentre)]
    public void A_deed_has_the_kind_the_strokes_and_the_purpose_that_were_said(string phrase, string kind, int strokes, Zone? sake) =>
        Assert.Equal((EntryKind.Adjustment, kind, strokes, sake), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Kind, read.Slots.Strokes, read.Slots.Sake) : default);

    [Theory]
    [InlineData("opening higher on the left", Sides.Left, Relation.HigherThan)]
    [InlineData("the opening is lopsided, more open on the right", Sides.Right, Relation.MoreOpenThan)]
    public void An_opening_has_the_side_on_which_it_is_higher(string phrase, Sides side, Relation relation) =>
        Assert.Equal(("opening-lopsided", side, relation), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Kind, slots.Sides, slots.Relation) : default);

    [Fact]
    public void A_tip_that_is_as_thin_here_as_there_says_so() =>
        Assert.Equal((Zone.TipCentre, Relation.SameAs, Zone.TipSides), Assert.Single(Read("The tip is as thin in the middle as at the sides.")).Slots is var slots ? (slots.Zone, slots.Relation, slots.OtherZone) : default);

    [Fact]
    public void The_leak_that_is_better_is_the_one_that_was_found() => Assert.Equal("thread-leak", Read("leak's better, not cured", "leak at the thread", "sealed the thread")[0].Slots.Kind);

    [Fact]
    public void The_left_one_is_of_what_was_worked() =>
        Assert.Equal((EntryKind.LeaveAlone, Zone.TipSides, Blades.Upper, Sides.Left), Read("So on the upper blade I took two strokes off the right wing and I'm leaving the left one alone.")[^1] is var read ? (read.Kind, read.Slots.Zone, read.Slots.Blades, read.Slots.Sides) : default);

    [Fact]
    public void What_was_feared_and_did_not_happen_did_not() =>
        Assert.Equal(RiskOutcome.DidNotHappen, Read("It still starts on a breath, so what I feared did not happen.", "A clip may cost the soft start.")[^1].Slots.Outcome);

    [Theory]
    [InlineData("stopped there to protect the tip, going home like that")]
    [InlineData("So I've stopped to protect it")]
    public void Stopped_to_protect_it_is_a_stop_and_a_verdict(string phrase) => Assert.Equal([EntryKind.Stopped, EntryKind.Verdict], Read(phrase).Select(read => read.Kind));

    [Theory]
    [InlineData("wait where did I put the plaque")]
    [InlineData("hang on is this number two or number three")]
    [InlineData("I'm not putting a wire on it")]
    public void What_is_asked_without_a_mark_or_not_put_on_is_a_remark(string phrase) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase)).Kind);

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
