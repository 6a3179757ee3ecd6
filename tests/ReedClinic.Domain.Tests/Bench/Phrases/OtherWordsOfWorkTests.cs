using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Work and what was measured in other words: a place that was cleaned up, a wire that was bent, places in a row, a size, a note that is a little sharp.</summary>
public sealed class OtherWordsOfWorkTests
{
    [Theory]
    [InlineData("cleaned up the right side", "even-up", Zone.WholeReed)]
    [InlineData("cleaned up the heart", "dust-heart", Zone.HeartCentre)]
    [InlineData("cleaned up the tip", "thin-whole-tip", Zone.TipSides)]
    [InlineData("cleaned up the rails two strokes", "thin-rails", Zone.Rails)]
    [InlineData("cleaned the heart up a bit", "dust-heart", Zone.HeartCentre)]
    [InlineData("cleaned up the left side of the heart", "take-heart-sides", Zone.HeartSides)]
    public void What_was_cleaned_up_was_scraped_there(string phrase, string kind, Zone zone)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((EntryKind.Adjustment, kind, zone), (read.Kind, read.Slots.Kind, read.Slots.Zone));
        Assert.Contains(read.Doubts, doubt => doubt.Slot is "kind" or "done");
    }

    [Theory]
    [InlineData("cleaned it up")]
    [InlineData("cleaned up inside")]
    [InlineData("cleaned the tube")]
    [InlineData("cleaned the right side inside")]
    public void What_was_cleaned_inside_stays_so(string phrase) => Assert.Equal("clean-inside", Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("squeezed the wire", true)]
    [InlineData("pinched the wire a touch", true)]
    [InlineData("pinched it at the wire", true)]
    [InlineData("rounded it at the wire", false)]
    [InlineData("flattened the wire", false)]
    [InlineData("bent the wire round", false)]
    [InlineData("squeezed the wire top and bottom", false)]
    [InlineData("squeezed the wire at the sides", false)]
    public void Which_way_a_wire_was_bent_is_kept_or_asked(string phrase, bool isAsked)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal(("bend-wire", isAsked), (read.Slots.Kind, read.Doubts.Any(doubt => doubt.Slot is "kind")));
        Assert.Equal(phrase, Assert.IsType<Adjustment>(Made(read)).Words);
    }

    [Theory]
    [InlineData("pinched the sides", "open-squeeze")]
    [InlineData("squeezed the sides of the opening", "open-squeeze")]
    [InlineData("put a wire on", "add-wire")]
    public void What_bends_no_wire_stays_what_it_was(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("scraped the tip, the heart")]
    [InlineData("scraped tip, heart")]
    [InlineData("scraped the tip, the heart too")]
    [InlineData("thinned the tip, the heart also")]
    [InlineData("took a bit off the tip, the heart")]
    [InlineData("scraped the tip, the heart as well")]
    public void Each_place_in_a_row_is_an_entry(string phrase) => Assert.Equal(
        [(EntryKind.Adjustment, "thin-whole-tip"), (EntryKind.Adjustment, "dust-heart")], Read(phrase).Select(entry => (entry.Kind, entry.Slots.Kind)));

    [Theory]
    [InlineData("scraped the tip, the heart looks fine", "heart-well-kept")]
    [InlineData("scraped the tip, the heart's thick", "heart-thick")]
    [InlineData("scraped the tip, the heart is too thick", "heart-thick")]
    public void A_place_that_something_is_said_of_is_no_work(string phrase, string kind) => Assert.Equal([(EntryKind.Adjustment, "thin-whole-tip"), (EntryKind.Finding, kind)], Read(phrase).Select(entry => (entry.Kind, entry.Slots.Kind)));

    [Theory]
    [InlineData("opening's about 1.1,")]
    [InlineData("opening's about 1.1.")]
    [InlineData("opening now 0.9.")]
    [InlineData("opening is 1.1, right")]
    [InlineData("opening's 1.1, a touch closed")]
    [InlineData("opening about 1.1, tip line square")]
    public void A_size_of_the_opening_is_kept_in_its_words(string phrase)
    {
        var test = Assert.IsType<Domain.Bench.Test>(Made(Assert.Single(Read(phrase))));

        Assert.Equal((TestKind.Opening, phrase), (test.TestKind, test.Words));
    }

    [Theory]
    [InlineData("opening a bit wide, 1.2", EntryKind.Finding)]
    [InlineData("opened it to 1.1", EntryKind.Adjustment)]
    [InlineData("should the opening be 1.1?", EntryKind.Note)]
    public void A_number_beside_other_words_is_of_those(string phrase, EntryKind kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("crow c sharp-ish", "C", "sharp")]
    [InlineData("crow C sharp-ish", "C", "sharp")]
    [InlineData("crow b flat-ish", "B", "flat")]
    [InlineData("crow is B, flat-ish", "B", "flat")]
    [InlineData("crow C sharp ish", "C", "sharp")]
    [InlineData("crow B on the sharp side", "B", "sharp")]
    public void A_note_that_is_a_little_off_is_that_note(string phrase, string pitch, string lean) => Assert.Equal((pitch, lean), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Pitch, slots.Lean) : default);

    [Theory]
    [InlineData("crow c sharp", "C#")]
    [InlineData("crow B flat", "Bb")]
    [InlineData("crow is B-flat", "Bb")]
    public void A_note_that_is_named_stays_that(string phrase, string pitch) => Assert.Equal((pitch, null), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Pitch, slots.Lean) : default);

    private static BenchEntry Made(ReadEntry read, params string[] before) => Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context(before))).Value;

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
