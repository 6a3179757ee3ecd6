using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What wasn’t said isn’t recorded as a result, and what isn’t named doesn’t end.</summary>
public sealed class UngivenTests
{
    [Theory]
    [InlineData("easy now")]
    [InlineData("easy now, squeak's gone")]
    [InlineData("middle D a hair sharp but fine")]
    [InlineData("E's a bit sharp but fine")]
    [InlineData("top G is a shade flat but fine")]
    [InlineData("it's dull up top")]
    [InlineData("dark up top")]
    [InlineData("speaks now but still a touch slow, low D drops out sometimes")]
    public void A_result_that_nobody_gave_is_not_recorded(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots: { Step: "speaks at once" or "right" or "wanders" or "a little too easy" } });

    [Theory]
    [InlineData("low notes speak at once", "speaks at once")]
    [InlineData("a little too easy to blow", "a little too easy")]
    [InlineData("bit easy to blow", "a little too easy")]
    [InlineData("high A wanders", "wanders")]
    [InlineData("effort right", "right")]
    public void A_result_that_was_given_is(string phrase, string step) => Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Test } && entry.Slots.Step == step);

    [Theory]
    [InlineData("opening too narrow", "tone's gone thin")]
    [InlineData("opening too narrow", "sound's gone a bit dull")]
    [InlineData("opening too narrow", "better: A holds, pp start is clean")]
    [InlineData("edge of the tip ragged in the corners", "left side's better now, right still stuffy")]
    public void What_names_no_finding_ends_none(string before, string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([before])).Entries, entry => entry.Kind is EntryKind.FindingEnded);

    [Theory]
    [InlineData("left corner of the tip too thick", "left side's better now")]
    [InlineData("left corner of the tip too thick", "that's gone now")]
    [InlineData("opening too narrow", "opening's better now")]
    [InlineData("opening too narrow", "gone")]
    public void What_names_it_ends_it(string before, string phrase) =>
        Assert.Contains(PhraseReader.Read(phrase, PhraseCorpus.Context([before])).Entries, entry => entry.Kind is EntryKind.FindingEnded);

    [Theory]
    [InlineData("response at pp is good now")]
    [InlineData("response at pianissimo is clean")]
    [InlineData("attack at pp is good")]
    [InlineData("response is fine at pp")]
    public void An_answer_at_pp_is_how_softly_it_starts(string phrase) =>
        Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots: { Test: TestKind.SoftestStart, Step: "starts softly" } });

    [Theory]
    [InlineData("low response at pp is good now")]
    [InlineData("low D responds at pp")]
    [InlineData("response is good")]
    public void What_is_said_of_low_notes_or_of_no_loudness_is_no_soft_start(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots.Test: TestKind.SoftestStart });

    [Theory]
    [InlineData("doesn't hold its pitch when I go soft, goes flat")]
    [InlineData("won't hold pitch softly, it goes flat")]
    [InlineData("goes flat when it's soft")]
    [InlineData("pitch sags when I play quietly")]
    [InlineData("won't stay in tune when I go quiet")]
    [InlineData("the pitch drops in pp")]
    public void A_pitch_that_falls_softly_is_no_start(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots.Test: TestKind.SoftestStart });

    [Theory]
    [InlineData("won't start softly", "will not start softly")]
    [InlineData("pp start needs a push", "needs a push")]
    [InlineData("starts softly", "starts softly")]
    public void A_soft_start_that_is_told_is_one(string phrase, string step) => Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots.Test: TestKind.SoftestStart } && entry.Slots.Step == step);

    [Theory]
    [InlineData("took the wire down a hair")]
    [InlineData("took the first wire down a hair to open it")]
    [InlineData("took the top wire in a bit")]
    [InlineData("took the wire round a touch")]
    [InlineData("taken the wire in a little")]
    [InlineData("took the wire up a hair")]
    public void A_wire_that_is_there_is_worked_on(string phrase) => Assert.DoesNotContain(Read(phrase), entry => entry.Slots.Kind is "add-wire");

    [Theory]
    [InlineData("put a wire on")]
    [InlineData("added a wire")]
    [InlineData("fitted a second wire")]
    public void A_wire_that_is_put_on_is_new(string phrase) => Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Adjustment, Slots.Kind: "add-wire" });

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
