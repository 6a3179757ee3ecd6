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

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
