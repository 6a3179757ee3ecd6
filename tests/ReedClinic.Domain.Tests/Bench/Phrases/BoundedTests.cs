using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>How far a word goes: work that is only bounded, a note that ends where work begins, a fault that is owned, a slope that is as it should be.</summary>
public sealed class BoundedTests
{
    [Theory]
    [InlineData("I've got a tip that's too thick")]
    [InlineData("I've got too thick a tip here")]
    [InlineData("I've got the tip still too thick")]
    [InlineData("I got it with the tip too thick")]
    [InlineData("I've got the tip too thin on this one")]
    [InlineData("now I've got a tip that's too thin")]
    [InlineData("now I've got the tip too thick")]
    [InlineData("I've made the heart too thick")]
    [InlineData("I made a note that the tip is too thin")]
    public void A_fault_that_came_or_that_no_knife_makes_is_not_the_works(string phrase) => Assert.Null(Assert.Single(Read(phrase)).Slots.Arose);

    [Theory]
    [InlineData("now I've got the tip too thin")]
    [InlineData("now I've got the back too thin")]
    [InlineData("Now I've made the tip too thin on the left.")]
    [InlineData("I've made the opening too wide")]
    public void A_fault_that_is_owned_is_in_doubt_and_keeps_its_words(string phrase)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((Arose.CausedByTheWork, "arose"), (read.Slots.Arose, Assert.Single(read.Doubts).Slot));
        Assert.Equal(phrase, Assert.IsType<Finding>(Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context([]))).Value).Words);
    }

    [Theory]
    [InlineData("no verdict yet, clipped 0.2 mm", "no verdict yet,", EntryKind.Adjustment)]
    [InlineData("no verdict yet but I clipped 0.2 mm", "no verdict yet", EntryKind.Adjustment)]
    [InlineData("verdict open, took two strokes off the left corner", "verdict open,", EntryKind.Adjustment)]
    [InlineData("verdict can wait, clipped 0.2 mm, crow is C", "verdict can wait,", EntryKind.Adjustment, EntryKind.Test)]
    [InlineData("final verdict later, thinned the left corner two strokes", "final verdict later,", EntryKind.Adjustment)]
    [InlineData("no verdict yet, tip too thick", "no verdict yet,", EntryKind.Finding)]
    [InlineData("verdict: good enough for now, crow is C", "verdict: good enough for now,", EntryKind.Test)]
    public void What_is_said_beside_an_open_verdict_is_its_own(string phrase, string note, params EntryKind[] kinds)
    {
        var read = Read(phrase);

        Assert.Equal((EntryKind.Note, note, "verdict"), (read[0].Kind, read[0].Said, Assert.Single(read[0].Doubts).Slot));
        Assert.Equal(kinds, read.Skip(1).Select(entry => entry.Kind));
    }

    [Theory]
    [InlineData("verdict clipped 0.2 mm")]
    [InlineData("verdict: clipped 0.2 mm")]
    public void Work_with_an_amount_is_work_even_where_it_is_called_a_verdict(string phrase) => Assert.Equal((EntryKind.Adjustment, 0.2m), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Mm) : default);

    [Theory]
    [InlineData("haven't taken more than two strokes off the left corner", "thin-corners", 2)]
    [InlineData("I haven't taken more than two strokes off the heart yet", "dust-heart", 2)]
    [InlineData("haven't clipped more than 0.2 mm", "clip-hair", null, 0.2)]
    [InlineData("did not take a lot off the heart, two strokes", "dust-heart", 2)]
    [InlineData("took nothing less than ten strokes off the heart", "dust-heart", 10)]
    [InlineData("took no less than ten strokes off the heart", "dust-heart", 10)]
    [InlineData("took nothing more than two strokes off the heart", "dust-heart", 2)]
    [InlineData("haven't scraped the heart much", "dust-heart")]
    public void Work_that_is_only_bounded_is_work_in_doubt(string phrase, string kind, int? strokes = null, double? mm = null)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((EntryKind.Adjustment, kind, strokes, (decimal?)mm), (read.Kind, read.Slots.Kind, read.Slots.Strokes, read.Slots.Mm));
        Assert.Contains(Doubt.Done, read.Doubts);
        Assert.Equal(phrase, Assert.IsType<Adjustment>(Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context([]))).Value).Words);
    }

    [Theory]
    [InlineData("haven't taken more off the heart")]
    [InlineData("haven't taken one stroke off the heart")]
    [InlineData("I haven't taken two strokes off the heart yet")]
    [InlineData("haven't taken more than I should")]
    [InlineData("haven't taken too much off the heart there that was me")]
    [InlineData("didn't take too much off the left corner")]
    [InlineData("I haven't clipped it and I'm not going to however much it begs")]
    [InlineData("the clip didn't take much")]
    [InlineData("it didn't take much to open it")]
    [InlineData("if I haven't taken more than two strokes")]
    [InlineData("don't take more than two strokes off the heart")]
    [InlineData("you haven't taken more than two strokes off the heart")]
    public void What_is_denied_or_said_of_another_is_no_work(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind is EntryKind.Adjustment);

    [Theory]
    [InlineData("tip slopes down nicely")]
    [InlineData("the tip slopes away nicely")]
    [InlineData("tip slopes away very evenly")]
    [InlineData("it slopes away")]
    public void A_tip_that_slopes_well_or_only_away_is_not_slanted(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Kind is "tip-line-slanted");

    [Theory]
    [InlineData("the tip slopes down", true)]
    [InlineData("tip slopes away to the left", true)]
    [InlineData("tip line slopes down", false)]
    [InlineData("the tip slopes to the left a good bit", false)]
    public void A_tip_that_slopes_to_a_side_is(string phrase, bool unsure) => Assert.Equal(("tip-line-slanted", Zone.TipEdge, unsure), Assert.Single(Read(phrase)) is var read ? (read.Slots.Kind, read.Slots.Zone, read.Doubts.Any(doubt => doubt.Slot is "kind")) : default);

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
