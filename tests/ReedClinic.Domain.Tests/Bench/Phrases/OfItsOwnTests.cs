using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What a word is said of: a soft start, a comparison, a corner, the whole tip, the line of the tip, the work before it, the verdict.</summary>
public sealed class OfItsOwnTests
{
    [Theory]
    [InlineData("pp start comes late")]
    [InlineData("starts late at pp")]
    [InlineData("the pp start is late")]
    [InlineData("soft start comes late")]
    [InlineData("soft attack speaks late")]
    [InlineData("quiet starts are slow")]
    [InlineData("attack at pp is better now")]
    public void A_soft_start_that_is_late_or_better_is_no_low_note_and_no_good_start(string phrase) => Assert.Equal(new ReadSlots { Test = TestKind.SoftestStart }, Assert.Single(Read(phrase)).Slots);

    [Theory]
    [InlineData("attack at pp is good")]
    [InlineData("attack good at pp")]
    [InlineData("the pp attack is clean")]
    [InlineData("quiet attacks are fine")]
    [InlineData("starts at pp are good")]
    [InlineData("attack in pp is nice")]
    public void An_attack_that_is_good_softly_is_good_softly(string phrase) => Assert.Equal((TestKind.SoftestStart, "starts softly"), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Test, slots.Step) : default);

    [Theory]
    [InlineData("tongued attack good", TestKind.TonguedStarts, "clean every time")]
    [InlineData("low notes start late at pp", TestKind.LowResponse, "late")]
    [InlineData("soft start better: starts softly", TestKind.SoftestStart, "starts softly")]
    public void Tongued_starts_and_low_notes_stay_what_they_are(string phrase, TestKind test, string step) => Assert.Equal((test, step), Read(phrase)[0].Slots is var slots ? (slots.Test, slots.Step) : default);

    [Theory]
    [InlineData("easier", TestKind.Effort)]
    [InlineData("easier now", TestKind.Effort)]
    [InlineData("much easier", TestKind.Effort)]
    [InlineData("low notes easier", TestKind.LowResponse)]
    [InlineData("low notes are easier now", TestKind.LowResponse)]
    [InlineData("low D speaks easier", TestKind.LowResponse)]
    [InlineData("starts easier", TestKind.SoftestStart)]
    [InlineData("easier", TestKind.Effort, "far too hard")]
    public void Easier_is_only_compared(string phrase, TestKind test, params string[] before) => Assert.Equal((test, null), Assert.Single(Read(phrase, before)) is var read && read.Doubts.Count > 0 ? (read.Slots.Test, read.Slots.Step) : default);

    [Fact]
    public void Easier_and_still_hard_is_still_hard() => Assert.Equal("a little too hard", Assert.Single(Read("easier, but still hard")).Slots.Step);

    [Theory]
    [InlineData("left corner clipped a bit too short", Sides.Left)]
    [InlineData("left corner's been clipped too short", Sides.Left)]
    [InlineData("right corner cut too short", Sides.Right)]
    [InlineData("right corner trimmed too far", Sides.Right)]
    [InlineData("left corner cut back too much", Sides.Left)]
    [InlineData("right corner nipped too short", Sides.Right)]
    public void A_corner_that_was_clipped_short_slants_nothing(string phrase, Sides side)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal(("something-else", Zone.TipCorners, side), (read.Slots.Kind, read.Slots.Zone, read.Slots.Sides));
        Assert.Equal(phrase, Assert.IsType<Finding>(Made(read)).Words);
    }

    [Theory]
    [InlineData("left corner too short", "tip-line-slanted")]
    [InlineData("the tip line is slanted", "tip-line-slanted")]
    [InlineData("left corner too thick", "tip-corners-thick")]
    public void A_corner_that_is_short_as_it_came_still_slants_the_tip(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("tip's thin all round")]
    [InlineData("tip thin all over")]
    [InlineData("tip thin everywhere")]
    [InlineData("tip too thick all round")]
    [InlineData("the tip is thin throughout")]
    [InlineData("whole tip is thin")]
    [InlineData("tip thin on all four sides")]
    public void What_is_said_of_the_whole_tip_keeps_its_words(string phrase)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal(phrase, Assert.IsType<Finding>(Made(read)).Words);
        Assert.Contains(read.Doubts, doubt => doubt.Slot is "zone");
    }

    [Fact]
    public void A_tip_that_is_thin_is_in_no_doubt() => Assert.Empty(Assert.Single(Read("the tip's thin")).Doubts);

    [Theory]
    [InlineData("left wing corner chipped a bit, upper", "tip-corner-broken", Zone.TipCorners, "slight")]
    [InlineData("corner's chipped slightly, lower right", "tip-corner-broken", Zone.TipCorners, "slight")]
    [InlineData("right corner a touch chipped", "tip-corner-broken", Zone.TipCorners, "slight")]
    [InlineData("the left corner is chipped", "tip-corner-broken", Zone.TipCorners, null)]
    [InlineData("chip out of the right corner", "tip-corner-broken", Zone.TipCorners, null)]
    [InlineData("tip chipped a little", "tip-edge-ragged", Zone.TipEdge, "slight")]
    public void A_chip_is_as_small_as_it_was_said(string phrase, string kind, Zone zone, string? degree)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((kind, zone, degree), (read.Slots.Kind, read.Slots.Zone, read.Slots.Degree));
        Assert.Equal(degree is null ? null : phrase, Assert.IsType<Finding>(Made(read)).Words);
    }

    [Theory]
    [InlineData("slopes a touch", "slight", true)]
    [InlineData("tip line slopes a touch", "slight", false)]
    [InlineData("the tip slopes a touch", "slight", true)]
    [InlineData("the end slopes a bit", "slight", false)]
    [InlineData("slopes slightly", "slight", true)]
    [InlineData("tip slopes a bit to the right", "slight", true)]
    [InlineData("tip slants a touch", "slight", false)]
    [InlineData("the edge isn't square, slopes a bit", "slight", false)]
    public void A_tip_that_slopes_is_slanted_by_as_much_as_was_said(string phrase, string degree, bool unsure)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal(("tip-line-slanted", Zone.TipEdge, degree, unsure), (read.Slots.Kind, read.Slots.Zone, read.Slots.Degree, read.Doubts.Any(doubt => doubt.Slot is "kind")));
    }

    [Theory]
    [InlineData("leave the slopes")]
    [InlineData("blended the slope a touch")]
    [InlineData("slope from heart to tip is steep")]
    [InlineData("does the tip slope?")]
    public void The_slope_is_a_place(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Kind is "tip-line-slanted");

    [Theory]
    [InlineData("squeezed the tube")]
    [InlineData("pressed it closed")]
    [InlineData("squeezed the opening a touch")]
    [InlineData("squeezed it open")]
    [InlineData("flattened the tube")]
    [InlineData("soaked it")]
    [InlineData("retied it")]
    public void Work_without_a_side_gets_none_from_a_correction(string before)
    {
        var context = PhraseCorpus.Context([before]);

        Assert.Null(EntryPutRight.Of("no, the left one", context.Log.History[^1].Entry, context, alone: true));
        Assert.DoesNotContain(PhraseReader.Read("no, the left one", context).Entries, read => read.Kind is not EntryKind.Note);
        Assert.All(Read(before + ", no, the left one"), read => Assert.Null(read.Slots.Sides));
    }

    [Theory]
    [InlineData("scraped the right corner")]
    [InlineData("two strokes off the right window")]
    [InlineData("right corner thick")]
    [InlineData("pressed the right side of the tube")]
    public void Work_with_a_side_is_put_right(string before)
    {
        var context = PhraseCorpus.Context([before]);

        Assert.NotNull(EntryPutRight.Of("no, the left one", context.Log.History[^1].Entry, context, alone: true));
    }

    [Theory]
    [InlineData("verdict: have a go and see")]
    [InlineData("verdict: plays in F major")]
    [InlineData("verdict good enough for now")]
    [InlineData("verdict – let it rest")]
    [InlineData("verdict: wait and see")]
    [InlineData("my verdict: it's a nice one")]
    [InlineData("no verdict yet")]
    [InlineData("verdict open")]
    public void A_verdict_that_names_none_is_a_note_that_says_so(string phrase)
    {
        var read = Assert.Single(Read(phrase, "crow C", "clip a hair", "that may cost the low notes"));

        Assert.Equal((EntryKind.Note, phrase), (read.Kind, read.Said));
        Assert.Equal("no verdict was named, so the words are kept as a note", Assert.Single(read.Doubts).Words);
        Assert.True(OpenVerdict.Says(read.Said));
    }

    [Theory]
    [InlineData("Verdict – let it rest", true)]
    [InlineData("  No verdict yet.", true)]
    [InlineData("My verdict: wait and see. Or not?", true)]
    [InlineData("The verdict of the band was kind", false)]
    [InlineData("no, verdict later", false)]
    [InlineData("Verdict?", false)]
    [InlineData("no verdicts", false)]
    [InlineData("it plays well", false)]
    [InlineData("", false)]
    [InlineData(null, false)]
    public void A_note_that_calls_itself_a_verdict_is_known_by_its_words(string? words, bool says) => Assert.Equal(says, OpenVerdict.Says(words));

    [Theory]
    [InlineData("verdict: improved", VerdictKind.Improved)]
    [InlineData("verdict: as it came", VerdictKind.LeftAsItCame)]
    [InlineData("verdict: needs playing in", VerdictKind.NeedsPlayingIn)]
    public void A_verdict_that_is_named_is_one(string phrase, VerdictKind kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Verdict);

    [Theory]
    [InlineData("That's down ten.", -10, "peep B, clean")]
    [InlineData("up ten", 10, "peep B")]
    [InlineData("down five cents", -5, "peep C")]
    [InlineData("it's up eight", 8, "crow C", "peep B")]
    [InlineData("it came up ten", 10, "peep B", "clip a hair")]
    [InlineData("that went up six cents", 6, "peep C, clean")]
    public void What_goes_up_after_the_peep_is_the_peep(string phrase, int change, params string[] before) => Assert.Equal((TestKind.Peep, (decimal?)change), Assert.Single(Read(phrase, before)).Slots is var slots ? (slots.Test, slots.Change) : default);

    [Theory]
    [InlineData("up ten", "crow C")]
    [InlineData("crow up ten", "peep B")]
    [InlineData("up ten", "peep B", "crow C")]
    public void What_goes_up_after_the_crow_is_the_crow(string phrase, params string[] before) => Assert.Equal((TestKind.Crow, 10m), Assert.Single(Read(phrase, before)).Slots is var slots ? (slots.Test, slots.Change) : default);

    [Theory]
    [InlineData("No crack in the tip, I looked against the light.", KnownBy.Light)]
    [InlineData("no crack in the tip, checked against the light", KnownBy.Light)]
    [InlineData("no bump in the ramp, under the finger", KnownBy.Finger)]
    [InlineData("corners aren't thick, I looked on the plaque", KnownBy.Plaque)]
    [InlineData("against the light there's no crack in the tip", KnownBy.Light)]
    [InlineData("no crack, and I looked against the light", KnownBy.Light)]
    public void How_it_was_looked_for_may_stand_behind(string phrase, KnownBy known) => Assert.Equal((EntryKind.LookedFor, known), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Known) : default);

    [Theory]
    [InlineData("Now I've made the tip too thin on the left.", Arose.CausedByTheWork)]
    [InlineData("I made the heart too thin", Arose.CausedByTheWork)]
    [InlineData("now I've got the tip too thin", Arose.CausedByTheWork)]
    [InlineData("oh dear, I made the back too thin", Arose.CausedByTheWork)]
    [InlineData("we made the tip too short", Arose.CausedByTheWork)]
    [InlineData("I've made the back on the right too thin", Arose.CausedByTheWork)]
    [InlineData("the tip is too thin on the left", null)]
    [InlineData("the maker made the tip too thin", null)]
    public void A_fault_that_the_speaker_made_is_the_works(string phrase, Arose? arose) => Assert.Equal(arose, Read(phrase)[^1].Slots.Arose);

    private static BenchEntry Made(ReadEntry read) => Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context([]))).Value;

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
