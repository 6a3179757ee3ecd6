using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What looks like something else and isn’t: measures of another thing, work beside what the reed did, faults beside what was left.</summary>
public sealed class NoneOfThatTests
{
    [Theory]
    [InlineData("clipped until the opening was 1.1 mm")]
    [InlineData("clipped, opening now 1.2 mm")]
    [InlineData("clip, wire at 6 mm")]
    public void A_measure_of_something_else_is_not_what_was_clipped(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind == EntryKind.Adjustment && read.Slots.Mm is > 0.9m);

    [Theory]
    [InlineData("brought the pitch down to 60")]
    [InlineData("sharp by 75, brought it down to 60")]
    [InlineData("scraped it down to 60")]
    [InlineData("opened it to 65")]
    [InlineData("left it to 60")]
    public void A_number_that_is_no_length_is_none(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Length is not null);

    [Theory]
    [InlineData("thinned the tip after soaking")]
    [InlineData("took the tip down after soaking")]
    [InlineData("thinned the tip again after resting")]
    [InlineData("went over the tip, far on the left, two strokes")]
    [InlineData("soaked it, crow went sharp as it dried")]
    [InlineData("soaked five minutes, crow dropped while resting")]
    [InlineData("squeezed the opening a bit, will check tomorrow")]
    [InlineData("opening squeezed a bit, will check tomorrow")]
    public void Work_is_work(string phrase) => Assert.Contains(Read(phrase), read => read.Kind == EntryKind.Adjustment);

    [Theory]
    [InlineData("still feathering the tip corners")]
    [InlineData("corner feathering done")]
    [InlineData("tip feathering on the left, three strokes")]
    public void Feathering_by_hand_is_no_ragged_edge(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Kind is "tip-edge-ragged");

    [Theory]
    [InlineData("heart too thick, barely touched")]
    [InlineData("tip thick, hardly scraped at all")]
    [InlineData("left corner shorter than before, chipped")]
    public void A_fault_beside_what_was_hardly_touched_stands(string phrase) => Assert.Contains(Read(phrase), read => read.Kind == EntryKind.Finding);

    [Theory]
    [InlineData("straight on the staple, not a hair off")]
    [InlineData("well tied, not waxed")]
    public void Praise_with_another_not_is_no_crooked_reed(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Kind is "crooked-on-staple");

    [Theory]
    [InlineData("heart left too thick by the maker")]
    [InlineData("tip left very long")]
    public void Left_by_somebody_is_no_side(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Sides is not null);

    [Theory]
    [InlineData("opening less closed than before")]
    [InlineData("opening 1.2, was closed before")]
    public void What_was_before_is_no_order_of_closing(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Test is TestKind.ClosingOrder);

    [Fact]
    public void A_spine_that_is_gone_is_not_mended() => Assert.DoesNotContain(Read("the spine ridge is gone"), read => read.Kind == EntryKind.FindingEnded);

    [Theory]
    [InlineData("heart: left two right three")]
    [InlineData("dusted the left two, right one")]
    public void Both_counts_are_kept(string phrase) => Assert.Equal(2, Read(phrase).Count(read => read.Kind == EntryKind.Adjustment));

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
