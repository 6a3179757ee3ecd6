using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>A look is no test, a place is the one that was named, a note ahead is whose the number is, and what wasn’t done, or wasn’t done before, isn’t recorded as if it had been.</summary>
public sealed class OnlySaidSoTests
{
    [Theory]
    [InlineData("seams look well closed")]
    [InlineData("sides look sealed")]
    [InlineData("the edges look airtight")]
    [InlineData("the sides seem tight")]
    [InlineData("the sides looked tight")]
    [InlineData("the seams appear tight")]
    public void What_only_looks_tight_has_not_passed_a_test(string phrase)
    {
        var read = Assert.Single(Read(phrase));

        Assert.NotEqual("seals-well", read.Slots.Kind);
        Assert.True(read.Kind is EntryKind.Note || read is { Slots: { Kind: "something-else", Character: FindingCharacter.Strength, Zone: Zone.SideEdges }, HasAside: true });
    }

    [Theory]
    [InlineData("sides are tight")]
    [InlineData("seals well")]
    [InlineData("sides are well sealed")]
    public void What_was_found_to_seal_still_seals(string phrase) => Assert.Contains(Read(phrase), read => read.Slots is { Kind: "seals-well" } or { Test: TestKind.Seal });

    [Theory]
    [InlineData("tip is even", Zone.TipSides)]
    [InlineData("tip looks nice and even", Zone.TipSides)]
    [InlineData("the tip's beautifully even now", Zone.TipSides)]
    [InlineData("heart's nice and even", Zone.HeartCentre)]
    [InlineData("corners are nice and even", Zone.TipCorners)]
    [InlineData("tip is lovely and even", Zone.TipSides)]
    public void A_place_that_is_even_is_no_even_opening(string phrase, Zone zone) => Assert.Equal(("something-else", FindingCharacter.Strength, zone), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Kind, slots.Character, slots.Zone) : default);

    [Theory]
    [InlineData("opening's nice and even")]
    [InlineData("the opening is even")]
    [InlineData("even opening")]
    public void An_opening_that_is_even_is_one(string phrase) => Assert.Equal("opening-even", Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("hump just behind the tip", "bumps")]
    [InlineData("thick behind the tip", "something-else")]
    [InlineData("too much cane right behind the tip", "something-else")]
    [InlineData("small bulge just below the tip", "bumps")]
    [InlineData("a hump behind the tip, more on the left", "bumps")]
    [InlineData("thick just behind the tip on the upper", "something-else")]
    public void What_is_behind_the_tip_is_in_neither_tip_nor_heart(string phrase, string kind) => Assert.Equal((EntryKind.Finding, kind, Zone.Transition), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Kind, read.Slots.Zone) : default);

    [Theory]
    [InlineData("took two strokes behind the tip", 2)]
    [InlineData("scraped three strokes just behind the tip", 3)]
    public void Strokes_behind_the_tip_thin_no_tip(string phrase, int strokes) => Assert.Equal((EntryKind.Adjustment, "blend", strokes), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Kind, read.Slots.Strokes) : default);

    [Theory]
    [InlineData("tip's too thick", "tip-thick")]
    [InlineData("a hump in the heart", "heart-thick")]
    [InlineData("heart's too thick", "heart-thick")]
    public void What_is_in_the_tip_or_the_heart_stays_there(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("A, it's flat by 10", -10)]
    [InlineData("A: sharp by 20", 20)]
    [InlineData("the A, sharp by 5", 5)]
    [InlineData("A, flat by 12", -12)]
    [InlineData("now A, it's sharp by 8", 8)]
    [InlineData("A, that's 15 flat", -15)]
    public void An_A_that_is_named_ahead_is_the_note_that_was_played(string phrase, int cents) => Assert.Equal((TestKind.TuningNote, "A", (decimal)cents), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Test, slots.Pitch, slots.Cents) : default);

    [Theory]
    [InlineData("C, it's flat by 10", TestKind.Crow)]
    [InlineData("crow is sharp by 15", TestKind.Crow)]
    [InlineData("peep sharp by 15", TestKind.Peep)]
    public void A_crow_or_a_peep_stays_one(string phrase, TestKind test) => Assert.Equal(test, Assert.Single(Read(phrase)).Slots.Test);

    [Theory]
    [InlineData("crow is a tone and a half flat", -300)]
    [InlineData("crow a semitone and a half sharp", 150)]
    [InlineData("a semitone and a half flat", -150)]
    [InlineData("crow's flat by a tone and a half", -300)]
    [InlineData("crow's one semitone and a half flat", -150)]
    [InlineData("crow is sharp by a semitone and a half", 150)]
    [InlineData("crow is a semitone flat", -100)]
    [InlineData("crow is half a tone flat", -100)]
    [InlineData("crow is a quarter tone flat", -50)]
    public void No_half_of_an_interval_is_lost(string phrase, int cents) => Assert.Equal((decimal)cents, Assert.Single(Read(phrase)).Slots.Cents);

    [Theory]
    [InlineData("crow C sharp and a half", true)]
    [InlineData("peeps B and a bit", true)]
    [InlineData("crow's a B and a half", true)]
    [InlineData("crows C and a quarter", true)]
    [InlineData("peep is C and a bit", true)]
    [InlineData("crow B and a touch", true)]
    [InlineData("crow is C", false)]
    [InlineData("peeps B", false)]
    [InlineData("crow's a C sharp", false)]
    public void More_than_a_note_keeps_its_words(string phrase, bool isKept)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal(isKept, read.Doubts.Any(doubt => doubt.Slot is "pitch"));
        Assert.Equal(isKept ? phrase : null, Assert.IsType<Test>(Made(read)).Words);
    }

    [Theory]
    [InlineData("heart's a bit cheeky", Zone.HeartCentre)]
    [InlineData("tip's a bit grumpy", Zone.TipSides)]
    [InlineData("back is rather stubborn", Zone.Windows)]
    [InlineData("heart's domineering", Zone.HeartCentre)]
    [InlineData("heart's shy", Zone.HeartCentre)]
    [InlineData("the heart is a touch sulky", Zone.HeartCentre)]
    public void How_a_person_is_makes_no_place_thick(string phrase, Zone zone)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal(("something-else", FindingCharacter.Taste, zone), (read.Slots.Kind, read.Slots.Character, read.Slots.Zone));
        Assert.Contains(read.Doubts, doubt => doubt.Slot is "kind");
        Assert.Equal(phrase, Assert.IsType<Finding>(Made(read)).Words);
    }

    [Theory]
    [InlineData("heart's a bit heavy", "heart-thick")]
    [InlineData("heart's too thick", "heart-thick")]
    [InlineData("heart's thick and stubborn", "heart-thick")]
    public void A_word_of_thickness_still_is_one(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("tip hasn't been touched yet")]
    [InlineData("corners haven't been thinned yet")]
    [InlineData("the heart has not been worked yet")]
    [InlineData("heart not scraped yet")]
    [InlineData("windows haven't been opened yet")]
    [InlineData("heart hasn’t been touched at all")]
    public void What_was_not_done_yet_says_nothing_of_how_it_is(string phrase) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("it came out fine")]
    [InlineData("came up lovely")]
    [InlineData("came out nicely")]
    [InlineData("and it came up really well")]
    [InlineData("that came out well")]
    [InlineData("this one came up great")]
    public void What_came_up_well_is_no_crow_and_no_opening(string phrase) => Assert.DoesNotContain(Read(phrase, "clip a hair"), read => read.Kind is not EntryKind.Note);

    [Theory]
    [InlineData("crow came up ten")]
    [InlineData("crow came up fine")]
    [InlineData("pitch came up 10 cents")]
    public void What_came_up_by_its_name_is_a_test(string phrase) => Assert.Equal(EntryKind.Test, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("clip again")]
    [InlineData("another clip")]
    [InlineData("dust the heart again")]
    [InlineData("two more strokes off the tip")]
    [InlineData("scraped the ramp again")]
    [InlineData("clipped another hair")]
    public void Work_that_is_done_again_where_none_was_done_is_asked_about(string phrase)
    {
        Assert.Contains(Assert.Single(Read(phrase)).Doubts, doubt => doubt.Slot is "done" && doubt.Words.Contains("no such work", StringComparison.Ordinal));
        Assert.DoesNotContain(Assert.Single(Read(phrase, "clip a hair, dust the heart, two strokes off the tip, two strokes off the ramp")).Doubts, doubt => doubt.Words.Contains("no such work", StringComparison.Ordinal));
    }

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;

    private static BenchEntry Made(ReadEntry read) => read.ToEntry(PhraseCorpus.Context([])) is Outcome<BenchEntry>.Done done ? done.Value : throw new InvalidOperationException();
}
