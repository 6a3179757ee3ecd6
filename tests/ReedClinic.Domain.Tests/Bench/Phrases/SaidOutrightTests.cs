using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What the words say outright stands, whatever was made of the rest.</summary>
public sealed class SaidOutrightTests
{
    [Theory]
    [InlineData("scraping the heart again could drop the pitch a long way")]
    [InlineData("dusting the windows once more would make it too easy")]
    [InlineData("clipping again might sharpen it")]
    [InlineData("thinning the corners again may let it go")]
    public void What_could_come_of_work_is_no_work(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind == EntryKind.Adjustment);

    [Theory]
    [InlineData("dusting the heart", "dust-heart")]
    [InlineData("clipping a hair", "clip-hair")]
    public void Work_that_is_going_on_is(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("one long note soft to loud and the swell breaks", "breaks")]
    [InlineData("swell broke in the middle", "breaks")]
    [InlineData("the swell keeps its place, no break", "keeps its place")]
    public void A_swell_that_breaks_breaks(string phrase, string step) => Assert.Equal(step, Assert.Single(Read(phrase)).Slots.Step);

    [Theory]
    [InlineData("at last the side leak is gone", EntryKind.FindingEnded)]
    [InlineData("leak's gone", EntryKind.FindingEnded)]
    [InlineData("corner is gone", EntryKind.Finding)]
    [InlineData("side leak on the left", EntryKind.Finding)]
    public void A_leak_that_is_gone_has_ended(string phrase, EntryKind kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("0.2 mm clipped", 0.2)]
    [InlineData("half a millimetre clipped", 0.5)]
    public void How_much_was_clipped_is_kept(string phrase, double mm) => Assert.Equal((decimal?)mm, Assert.Single(Read(phrase)).Slots.Mm);

    [Theory]
    [InlineData("first crow of the morning sits on C, four cents flat", null)]
    [InlineData("crow C, high then low joins", "high, then low joins")]
    public void A_crow_has_the_sounds_that_were_said(string phrase, string? step) => Assert.Equal(step, Assert.Single(Read(phrase)).Slots.Step);

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
