using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>A wire that is tightened or loosened is neither rounded nor flattened: that is shown as unsure, in the words that were said.</summary>
public sealed class WireTurnedTests
{
    [Theory]
    [InlineData("tightened the wire a quarter turn")]
    [InlineData("loosened the wire a touch")]
    [InlineData("wire tightened")]
    [InlineData("tightened the back wire a touch")]
    [InlineData("gave the wire another half turn")]
    [InlineData("eased the wire off a quarter turn")]
    [InlineData("snugged up the wire")]
    [InlineData("twisted the wire tight")]
    public void A_wire_that_is_turned_is_not_bent_and_none_is_put_on(string phrase)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal(("something-else", Domain.Reeds.Zone.Wire, true), (read.Slots.Kind, read.Slots.Zone, read.HasAside));
        Assert.Contains(read.Doubts, doubt => doubt.Slot is "kind");
    }

    [Theory]
    [InlineData("flattened the wire a touch", "bend-wire")]
    [InlineData("rounded the wire", "bend-wire")]
    [InlineData("squeezed the wire flat", "bend-wire")]
    [InlineData("moved the wire down a hair", "bend-wire")]
    [InlineData("put a wire on, one turn", "add-wire")]
    [InlineData("opened the windows", "open-windows")]
    public void A_wire_that_is_bent_or_put_on_is(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
