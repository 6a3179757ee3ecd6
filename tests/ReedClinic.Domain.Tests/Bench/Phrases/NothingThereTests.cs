using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What gives nothing, and where nothing was done: neither is praise, a deed, an ending or a place to be kept off. And a hump is never too little cane.</summary>
public sealed class NothingThereTests
{
    [Theory]
    [InlineData("the peep is dead", TestKind.Peep)]
    [InlineData("peep won't go", TestKind.Peep)]
    [InlineData("no peep in it", TestKind.Peep)]
    [InlineData("peep's gone", TestKind.Peep)]
    [InlineData("the crow is dead", TestKind.Crow)]
    [InlineData("dead peep", TestKind.Peep)]
    [InlineData("it won't peep", TestKind.Peep)]
    [InlineData("it refuses to crow", TestKind.Crow)]
    [InlineData("can't get a peep out of it", TestKind.Peep)]
    [InlineData("peep: nothing", TestKind.Peep)]
    [InlineData("I get nothing in the crow", TestKind.Crow)]
    [InlineData("the peep has died on me", TestKind.Peep)]
    [InlineData("there's no crow to speak of", TestKind.Crow)]
    [InlineData("crow stays silent", TestKind.Crow)]
    [InlineData("peep's gone", TestKind.Peep, "peep B", "tip too thick")]
    [InlineData("the crow's gone", TestKind.Crow, "crow C", "clip a hair")]
    public void A_crow_or_a_peep_that_gives_none_is_no_good_one(string phrase, TestKind test, params string[] before)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal((EntryKind.Test, new ReadSlots { Test = test }), (read.Kind, read.Slots));
        Assert.Equal(phrase, Assert.IsType<Domain.Bench.Test>(Made(read)).Words);
        Assert.NotEmpty(read.Doubts);
    }

    [Fact]
    public void What_gives_none_stands_beside_what_else_is_said() =>
        Assert.Equal([EntryKind.Adjustment, EntryKind.Test], Read("clipped a hair and the peep's gone").Select(read => read.Kind));

    [Theory]
    [InlineData("crow's gone up", null)]
    [InlineData("crow dead on C", "C")]
    [InlineData("peep gone to C", "C")]
    [InlineData("the crow is C", "C")]
    public void A_crow_that_went_somewhere_is_there(string phrase, string? pitch) =>
        Assert.Equal((EntryKind.Test, pitch), Assert.Single(Read(phrase)) is var read && !read.Doubts.Any(doubt => doubt.Words.Contains("gives none", StringComparison.Ordinal)) ? (read.Kind, read.Slots.Pitch) : default);

    [Theory]
    [InlineData("the peep is clean", "clean")]
    [InlineData("doesn't peep, crows straight off", "already crowing")]
    public void A_peep_that_is_there_keeps_its_word(string phrase, string step) => Assert.Equal((TestKind.Peep, step), Read(phrase)[0].Slots is var slots ? (slots.Test, slots.Step) : default);

    [Theory]
    [InlineData("no peep")]
    [InlineData("no crow at all")]
    [InlineData("no peep yet")]
    [InlineData("no crow yet")]
    [InlineData("I didn't crow it")]
    [InlineData("haven't crowed it yet")]
    [InlineData("is the crow dead?")]
    [InlineData("if the crow is dead")]
    [InlineData("no crow problem")]
    public void What_was_not_tried_or_is_asked_is_a_remark(string phrase) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("peep won't go up")]
    [InlineData("peep's gone flat")]
    [InlineData("peep's a bit odd")]
    public void A_peep_is_clean_or_crows_only_where_a_word_says_so(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Test is TestKind.Peep && read.Slots.Step is not null);

    [Theory]
    [InlineData("eased nothing yet")]
    [InlineData("took nothing off yet")]
    [InlineData("scraped nothing off the heart")]
    [InlineData("haven't touched the tip yet")]
    [InlineData("nothing off the tip yet")]
    [InlineData("took nothing off the windows")]
    [InlineData("nothing scraped off the corners so far")]
    [InlineData("haven't eased anything yet")]
    [InlineData("I didn't take anything off the rails")]
    [InlineData("not touched the heart yet")]
    [InlineData("spine not touched")]
    [InlineData("I've done nothing to the corners yet")]
    public void Where_nothing_was_done_nothing_is_noted_but_the_words(string phrase)
    {
        foreach (var before in (string[][])[[], ["tip too thick"], ["corners too thick", "heart too thick"]])
        {
            Assert.All(Read(phrase, before), read => Assert.Equal(EntryKind.Note, read.Kind));
        }
    }

    [Theory]
    [InlineData("leave the heart", EntryKind.LeaveAlone)]
    [InlineData("nothing off the heart", EntryKind.LeaveAlone)]
    [InlineData("don't touch the heart", EntryKind.LeaveAlone)]
    [InlineData("not touching the spine", EntryKind.LeaveAlone)]
    [InlineData("took next to nothing off the heart", EntryKind.Adjustment)]
    [InlineData("eased the corners a little", EntryKind.Adjustment)]
    [InlineData("nothing left of the heart", EntryKind.Finding)]
    [InlineData("spine not scraped", EntryKind.LookedFor)]
    [InlineData("eased", EntryKind.FindingEnded, "tip too thick")]
    public void What_was_done_or_is_to_be_left_is_kept(string phrase, EntryKind kind, params string[] before) => Assert.Equal(kind, Assert.Single(Read(phrase, before)).Kind);

    [Fact]
    public void Nothing_here_and_strokes_there_are_the_strokes_alone() =>
        Assert.Equal([EntryKind.Note, EntryKind.Adjustment], Read("took nothing off the tip, two strokes off the heart").Select(read => read.Kind));

    [Theory]
    [InlineData("left corner thick on the top blade and a hump in the heart")]
    [InlineData("hump in the heart, left corner thick on the top blade")]
    [InlineData("hump in the heart and left corner thick on the top blade")]
    [InlineData("top blade: left corner thick, and there's a hump in the heart")]
    [InlineData("left corner is thick on the top blade and the heart has a hump in it")]
    [InlineData("left corner thick on the top blade, the heart is humped")]
    [InlineData("top blade left corner thick and a bulge in the heart")]
    public void A_corner_and_a_hump_are_two_faults(string phrase)
    {
        var read = Read(phrase).OrderBy(entry => entry.Slots.Zone).ToList();

        Assert.Equal([("tip-corners-thick", Zone.TipCorners, Blades.Upper, Sides.Left), ("heart-thick", Zone.HeartCentre, null, null)], read.Select(entry => (entry.Slots.Kind, entry.Slots.Zone!.Value, entry.Slots.Blades, entry.Slots.Sides)));
    }

    [Theory]
    [InlineData("a hump in the heart", "heart-thick", null)]
    [InlineData("heart a bit humpy", "heart-thick", "slight")]
    [InlineData("there's a bit of a hump in the heart", "heart-thick", "slight")]
    [InlineData("high spot in the heart", "bumps", null)]
    [InlineData("a bump in the heart", "bumps", null)]
    [InlineData("lump in the heart", "bumps", null)]
    public void A_hump_or_a_bump_stands_in_the_heart(string phrase, string kind, string? degree) =>
        Assert.Equal((kind, Zone.HeartCentre, degree), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Kind, slots.Zone, slots.Degree) : default);

    [Theory]
    [InlineData("heart has a good hump", EntryKind.Finding, "heart-well-kept")]
    [InlineData("no hump in the heart", EntryKind.LookedFor, "heart-thick")]
    [InlineData("took the hump in the heart down two strokes", EntryKind.Adjustment, "dust-heart")]
    public void A_hump_that_is_praised_denied_or_taken_down_is_no_fault(string phrase, EntryKind entry, string kind) => Assert.Equal((entry, kind), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Kind) : default);

    private static BenchEntry Made(ReadEntry read) => Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context([]))).Value;

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
