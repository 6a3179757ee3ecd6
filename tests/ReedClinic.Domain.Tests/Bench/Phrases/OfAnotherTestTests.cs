using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is heard is told of its own test, what is played is no crow, and what was come to is what stands.</summary>
public sealed class OfAnotherTestTests
{
    [Theory]
    [InlineData("reedy, lots of edge, lively", TestKind.Edge)]
    [InlineData("pops out on the attack", TestKind.TonguedStarts)]
    [InlineData("tongues heavily", TestKind.TonguedStarts)]
    [InlineData("staccato thuds", TestKind.TonguedStarts)]
    [InlineData("blows free now, no bite needed", TestKind.Effort)]
    [InlineData("closes at the left corner first, right stays open", TestKind.ClosingOrder)]
    [InlineData("plaque out, tip closed unevenly, left first", TestKind.ClosingOrder)]
    public void A_test_is_told_with_no_best_word_that_was_not_said(string phrase, TestKind test)
    {
        var read = Assert.Single(Read(phrase), read => read.Kind == EntryKind.Test);

        Assert.Equal(test, read.Slots.Test);
        Assert.True(read.Slots.Step is null or "thuds", read.Slots.Step);
    }

    [Theory]
    [InlineData("staccato's clean", TestKind.TonguedStarts, "clean every time")]
    [InlineData("blows too freely", TestKind.Effort, "far too easy")]
    [InlineData("thin sound", TestKind.Depth, "thin")]
    public void A_word_of_a_scale_that_was_said_stands(string phrase, TestKind test, string step)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((test, step), (read.Slots.Test, read.Slots.Step));
    }

    [Theory]
    [InlineData("octave's wide on A")]
    [InlineData("third space C is sharp, twelve cents")]
    [InlineData("octave G is narrow")]
    [InlineData("forked F is flat, ten cents")]
    [InlineData("first ledger A 8 sharp")]
    [InlineData("the fifth D to A is wide")]
    public void A_note_that_is_played_is_no_crow(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Test is TestKind.Crow or TestKind.Peep);

    [Theory]
    [InlineData("crow on C, two octaves", "C")]
    [InlineData("crow B flat to B", "B")]
    [InlineData("crow was B now C", "C")]
    [InlineData("the crow went B to C", "C")]
    public void A_crow_is_the_note_that_it_came_to(string phrase, string note)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((TestKind.Crow, note), (read.Slots.Test, read.Slots.Pitch));
    }

    [Theory]
    [InlineData("took it down to 70.5", 70.5)]
    [InlineData("brought it down to 69 mm", 69)]
    public void A_length_that_was_come_to_is_measured(string phrase, double length)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((TestKind.Length, (decimal?)length), (read.Slots.Test, read.Slots.Length));
    }

    [Theory]
    [InlineData("nearly brought it down to 70")]
    [InlineData("I'd like to get it down to 70")]
    [InlineData("if I cut it down to 69 it'll be sharp")]
    public void A_length_that_is_only_talked_of_is_not(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Length is not null);

    [Theory]
    [InlineData("three up the middle, two either side")]
    [InlineData("two down each side")]
    [InlineData("four up the centre")]
    public void Strokes_up_the_middle_are_no_cents(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Change is not null);

    [Fact]
    public void Cents_are() => Assert.Equal(3m, Assert.Single(Read("crow up three cents")).Slots.Change);

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
