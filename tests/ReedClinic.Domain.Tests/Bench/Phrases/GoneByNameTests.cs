using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is gone under another name than it was found under, and what only sounds as if it were gone.</summary>
public sealed class GoneByNameTests
{
    [Theory]
    [InlineData("that hump's gone", "bump on the transition", "bumps")]
    [InlineData("hump is out", "bump on the transition", "bumps")]
    [InlineData("bump's gone", "step too abrupt at the rooftop", "step-abrupt")]
    [InlineData("bump's gone", "hump in the heart", "heart-thick")]
    [InlineData("the hump's gone at last", "ridge behind the tip", "bumps")]
    [InlineData("solo bump's gone", "bump on the left corner", "bumps")]
    [InlineData("imbalance is gone", "windows uneven", "windows-uneven")]
    [InlineData("slope's gone", "tip line slanted", "tip-line-slanted")]
    [InlineData("gunk's out", "dirty inside", "dirty-inside")]
    [InlineData("patch of bark is off", "bark island on the left window", "bark-island")]
    [InlineData("bark's gone", "bark island on the left window", "bark-island")]
    [InlineData("whistle's gone", "leak at the left side", "side-leak")]
    public void What_is_gone_is_the_finding_that_stands_and_was_called_otherwise(string phrase, string before, string kind)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal((EntryKind.FindingEnded, kind, FindingEnding.Gone), (read.Kind, read.Slots.Kind, read.Slots.Ending));
        Assert.IsType<FindingEnded>(Made(read, before));
    }

    [Theory]
    [InlineData("it seals now", "leak at the left side", "side-leak")]
    [InlineData("slope's smooth now", "step too abrupt at the rooftop", "step-abrupt")]
    [InlineData("tip's clear now", "tip not separate", "tip-not-separate")]
    [InlineData("seals again", "leak at the left side", "side-leak")]
    [InlineData("sides meet now", "leak at the side", "side-leak")]
    [InlineData("tied straight now", "crooked on the staple", "crooked-on-staple")]
    public void What_is_good_now_ends_the_fault_that_was_found(string phrase, string before, string kind)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal((EntryKind.FindingEnded, kind, FindingEnding.Gone), (read.Kind, read.Slots.Kind, read.Slots.Ending));
    }

    [Theory]
    [InlineData("bump's out", "tip too thick")]
    [InlineData("the hump's gone", "tip too thick")]
    [InlineData("bump's gone", "crow C")]
    [InlineData("thickness in the heart is gone", "tip too thick")]
    [InlineData("is the bump gone?", "bump on the transition")]
    [InlineData("I want that bump gone", "bump on the transition")]
    [InlineData("crack's gone further", "crack in the tip")]
    public void What_ends_nothing_that_stands_is_asked_about_in_a_note(string phrase, string before)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal(EntryKind.Note, read.Kind);
        Assert.NotEmpty(read.Doubts);
    }

    [Theory]
    [InlineData("seals well", "leak at the left side", EntryKind.Finding)]
    [InlineData("the bump isn't gone", "bump on the transition", EntryKind.FindingEnded)]
    [InlineData("took the bump off", "bump on the transition", EntryKind.Adjustment)]
    [InlineData("the hump's gone", "crow C", EntryKind.Finding)]
    public void What_says_anything_else_is_not_gone(string phrase, string before, EntryKind kind)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal(kind, read.Kind);
        Assert.NotEqual(FindingEnding.Gone, read.Slots.Ending);
    }

    private static BenchEntry Made(ReadEntry read, params string[] before) => Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context(before))).Value;

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
