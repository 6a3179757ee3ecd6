using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What a reed did by itself, and what came of work, is no work; and each thing that is said is of its own part and its own test.</summary>
public sealed class NoHandInItTests
{
    [Theory]
    [InlineData("opened up overnight")]
    [InlineData("closed up since yesterday")]
    [InlineData("opened by itself while drying")]
    [InlineData("closed down after soaking")]
    [InlineData("today it's twenty flat again")]
    [InlineData("today it's ten sharp")]
    [InlineData("went a bit far on the heart")]
    [InlineData("went too far with the corners")]
    [InlineData("tip's feathering at the right end")]
    [InlineData("the edge is fraying on the left")]
    [InlineData("corner's peeling, upper")]
    public void What_became_of_a_reed_is_no_work(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind == EntryKind.Adjustment);

    [Theory]
    [InlineData("opened it up with the pliers", "open-squeeze")]
    [InlineData("squeezed it open", "open-squeeze")]
    [InlineData("feathered the tip, both blades", "thin-whole-tip")]
    [InlineData("let it dry overnight", "rest-dry")]
    public void What_was_done_is_work(string phrase, string kind) => Assert.Contains(Read(phrase), read => read.Kind == EntryKind.Adjustment && read.Slots.Kind == kind);

    [Theory]
    [InlineData("wire is loose, nipped it up")]
    [InlineData("the wire was rattling, snugged it up")]
    [InlineData("wire slack, tweaked it")]
    [InlineData("wire taken off altogether")]
    [InlineData("wire removed")]
    [InlineData("took the wire off")]
    public void Work_at_the_wire_is_no_clip_and_a_wire_that_came_off_was_not_put_on(string phrase) =>
        Assert.DoesNotContain(Read(phrase), read => read.Slots.Kind is "clip" or "clip-hair" or "add-wire" or "close-press" or "open-squeeze");

    [Theory]
    [InlineData("nipped a hair off the tip", "clip-hair")]
    [InlineData("put a wire on", "add-wire")]
    public void A_clip_and_a_new_wire_are_what_they_are(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("cork is chipped at the bottom", Zone.Cork)]
    [InlineData("the cork's split", Zone.Cork)]
    public void What_is_chipped_below_the_blades_is_no_tip(string phrase, Zone zone) => Assert.Equal(zone, Assert.Single(Read(phrase)).Slots.Zone);

    [Theory]
    [InlineData("hairline split, centre of the lower tip, about 2 mm", "tip-cracked", Blades.Lower)]
    [InlineData("crack in the tip, left, upper", "tip-cracked", Blades.Upper)]
    [InlineData("corner broken off, upper left", "tip-corner-broken", Blades.Upper)]
    public void What_is_split_at_the_tip_is(string phrase, string kind, Blades blade)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((kind, blade), (read.Slots.Kind, read.Slots.Blades));
    }

    [Theory]
    [InlineData("the heart's as good as it gets")]
    [InlineData("tip's as good as it'll get")]
    [InlineData("step's not level between the blades")]
    [InlineData("corners are whisper thin, good")]
    [InlineData("heart a little thick, fine")]
    public void A_part_that_is_praised_is_no_verdict_and_no_fault(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind is EntryKind.Verdict || read.Slots.Character is FindingCharacter.Fault);

    [Theory]
    [InlineData("as good as this cane gets", EntryKind.Verdict)]
    [InlineData("corners too thin", EntryKind.Finding)]
    [InlineData("opening too narrow", EntryKind.Finding)]
    public void A_verdict_and_a_fault_are(string phrase, EntryKind kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("backed off, nothing more on the heart", Zone.HeartCentre)]
    [InlineData("no more off the back", Zone.Windows)]
    [InlineData("nothing more from the corners", Zone.TipCorners)]
    public void What_gets_nothing_more_is_left_alone(string phrase, Zone zone) => Assert.Contains(Read(phrase), read => read.Kind == EntryKind.LeaveAlone && read.Slots.Zone == zone);

    [Theory]
    [InlineData("ramp too gentle")]
    [InlineData("spine too strong")]
    [InlineData("blend too smooth")]
    [InlineData("steeper ramp on the left please")]
    [InlineData("thinner tip on the upper please")]
    public void Too_much_of_a_good_thing_and_a_wish_are_no_praise(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Character is FindingCharacter.Strength || read.Kind == EntryKind.Adjustment);

    [Theory]
    [InlineData("spine's fine")]
    [InlineData("heart well kept, upper too")]
    [InlineData("blend nice and smooth")]
    public void Praise_is(string phrase) => Assert.Equal(FindingCharacter.Strength, Assert.Single(Read(phrase)).Slots.Character);

    [Theory]
    [InlineData("scraped down the back from the collar, four strokes a channel", EntryKind.Adjustment)]
    [InlineData("got rid of the wall behind the tip", EntryKind.Note)]
    [InlineData("catch on the left side where the bark ends", EntryKind.Finding)]
    [InlineData("tip length 4", EntryKind.Note)]
    [InlineData("tip down 0.1", EntryKind.Note)]
    [InlineData("crow should be a C", EntryKind.Note)]
    public void Work_is_no_fault_and_a_catch_or_a_wish_is_no_work(string phrase, EntryKind kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("pp fine")]
    [InlineData("the pp is clean")]
    public void What_is_soft_is_the_softest_start_or_a_note(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Test is TestKind.Opening or TestKind.Peep);

    [Theory]
    [InlineData("it warped while drying")]
    [InlineData("curled up a bit while it dried")]
    [InlineData("the reed twisted while it dried out")]
    [InlineData("blades overlap to the left a hair")]
    [InlineData("tip finely blended")]
    [InlineData("tip beautifully blended, both blades")]
    public void How_the_reed_is_and_what_it_became_is_no_work(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind == EntryKind.Adjustment);

    [Theory]
    [InlineData("blended the tip nicely", "blend")]
    [InlineData("set the overlap a hair to the left", "realign")]
    [InlineData("dried it out overnight", "rest-dry")]
    public void What_somebody_did_is(string phrase, string kind) => Assert.Contains(Read(phrase), read => read.Kind == EntryKind.Adjustment && read.Slots.Kind == kind);

    [Theory]
    [InlineData("clip a hair", "took one more off the left", "clip-hair")]
    [InlineData("clipped 0.3", "two more off the right", "clip-hair")]
    public void Strokes_on_one_side_after_a_clip_are_no_clip(string before, string phrase, string kind) => Assert.DoesNotContain(Read(phrase, before), read => read.Slots.Kind == kind || read.Slots.Kind is "clip");

    [Theory]
    [InlineData("tip too thin", "probably a little long still")]
    [InlineData("corners too thick", "soaked five minutes and it's warped less")]
    public void A_finding_that_is_not_named_has_not_ended(string before, string phrase) => Assert.DoesNotContain(Read(phrase, before), read => read.Kind == EntryKind.FindingEnded);

    [Fact]
    public void A_range_has_no_pitch_and_no_best_word_stands_beside_its_contrary()
    {
        Assert.Null(Assert.Single(Read("plays in tune from low B to top E flat")).Slots.Pitch);
        Assert.DoesNotContain(Read("opening is 1.3 now, that's wide"), read => read.Slots.Step is "right");
        Assert.DoesNotContain(Read("gentle attack on low D, no bump", "bumps in the spine"), read => read.Kind == EntryKind.LookedFor);
    }

    private static IReadOnlyList<ReadEntry> Read(string phrase, string before) => PhraseReader.Read(phrase, PhraseCorpus.Context([before])).Entries;

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
