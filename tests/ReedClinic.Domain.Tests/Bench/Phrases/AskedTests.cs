using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What may be so and is asked, what was kept off, what ended though “would” or “should” was said, and a remark that has all its words.</summary>
public sealed class AskedTests
{
    [Theory]
    [InlineData("crow is a G", "G")]
    [InlineData("crow is E", "E")]
    [InlineData("the crow is somewhere around F sharp", "F#")]
    [InlineData("crows G today, low octave missing", "G")]
    [InlineData("crow is a G", "G", "crow C")]
    public void A_crow_far_from_where_crows_stand_is_kept_and_asked(string phrase, string note, params string[] before)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal((TestKind.Crow, note), (read.Slots.Test, read.Slots.Pitch));
        Assert.Contains(read.Doubts, doubt => doubt.Slot is "pitch");
    }

    [Theory]
    [InlineData("crow B flat")]
    [InlineData("crow E flat")]
    [InlineData("crow is an A")]
    [InlineData("crow between B and C")]
    [InlineData("crow is a G", "crow G")]
    [InlineData("crow is a G sharp", "crow is a G")]
    public void A_crow_near_a_C_or_near_the_last_one_is_not(string phrase, params string[] before) =>
        Assert.DoesNotContain(Assert.Single(Read(phrase, before)).Doubts, doubt => doubt.Slot is "pitch");

    [Theory]
    [InlineData("rails left alone", Zone.Rails)]
    [InlineData("the rails were left alone", Zone.Rails)]
    [InlineData("I left the rails", Zone.Rails)]
    [InlineData("left the rails", Zone.Rails)]
    [InlineData("the rails I left", Zone.Rails)]
    [InlineData("rails left as they are", Zone.Rails)]
    [InlineData("spine left alone", Zone.Spine)]
    [InlineData("spine left alone on purpose", Zone.Spine)]
    [InlineData("I've left the heart", Zone.HeartCentre)]
    [InlineData("left the windows", Zone.Windows)]
    [InlineData("rails left alone", Zone.Rails, "back too thick")]
    public void A_part_that_was_left_alone_is_kept_off_and_no_praise(string phrase, Zone zone, params string[] before)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal((EntryKind.LeaveAlone, zone, null, null), (read.Kind, read.Slots.Zone, read.Slots.Character, read.Slots.Kind));
    }

    [Fact]
    public void Where_a_part_was_left_its_blade_and_side_are() =>
        Assert.Equal((EntryKind.LeaveAlone, Zone.TipCorners, Blades.Upper), Assert.Single(Read("I left the corners of the upper blade")) is var read ? (read.Kind, read.Slots.Zone, read.Slots.Blades) : default);

    [Theory]
    [InlineData("the heart has been left well alone, lovely", "heart-well-kept")]
    [InlineData("I left the rails intact", "rails-intact")]
    [InlineData("rails intact", "rails-intact")]
    [InlineData("left plenty in the heart", "heart-well-kept")]
    public void A_part_that_is_praised_stays_a_strength(string phrase, string kind) => Assert.Equal((EntryKind.Finding, kind), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Kind) : default);

    [Theory]
    [InlineData("opening too wide", "the gap is gone, as it should be", "opening-wide", FindingEnding.Gone)]
    [InlineData("bump on the tip", "bump's gone, as it should be", "bumps", FindingEnding.Gone)]
    [InlineData("tip too thick", "the tip is better, as it should be", "tip-thick", FindingEnding.Better)]
    [InlineData("tip too thick", "that's better than I would have thought", "tip-thick", FindingEnding.Better)]
    [InlineData("windows uneven", "better than I would have thought", "windows-uneven", FindingEnding.Better)]
    [InlineData("leak at the side", "leak's gone, I should say", "side-leak", FindingEnding.Gone)]
    [InlineData("tip too thick", "tip better, I would leave it there", "tip-thick", FindingEnding.Better)]
    public void What_ended_as_it_should_or_beyond_what_one_would_think_ended_and_is_asked(string before, string phrase, string kind, FindingEnding ending)
    {
        var read = Read(phrase, before)[0];

        Assert.Equal((EntryKind.FindingEnded, kind, ending), (read.Kind, read.Slots.Kind, read.Slots.Ending));
        Assert.Contains(read.Doubts, doubt => doubt.Words.Contains("should", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("leak at the side", "the leak should be gone")]
    [InlineData("leak at the side", "that should be better now")]
    [InlineData("leak at the side", "leak would be gone if I tied it")]
    [InlineData("windows uneven", "they should be even now")]
    public void What_should_or_would_be_so_has_not_ended(string before, string phrase) =>
        Assert.DoesNotContain(Read(phrase, before), read => read.Kind is EntryKind.FindingEnded);

    [Theory]
    [InlineData("note to self, buy more thread, also the cork grease", "note to self, buy more thread, also the cork grease")]
    [InlineData("crow C. she is playing Schumann. nice gouge", "she is playing Schumann. nice gouge")]
    [InlineData("tell her: less soaking; more playing in", "tell her: less soaking;")]
    public void Words_left_over_beside_a_remark_are_part_of_it(string phrase, string words)
    {
        var reading = PhraseReader.Read(phrase, PhraseCorpus.Context([]));

        Assert.Equal(words, Assert.Single(reading.Entries, read => read.Kind is EntryKind.Note).Said);
        Assert.Empty(reading.Kept);
    }

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
