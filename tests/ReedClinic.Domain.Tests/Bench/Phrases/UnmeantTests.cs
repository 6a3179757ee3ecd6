using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Whose a word is: which test’s, which finding’s, which place’s. What can’t be known is a remark, or is shown in doubt.</summary>
public sealed class UnmeantTests
{
    [Theory]
    [InlineData("A is a touch flat", "a little flat", "peep B")]
    [InlineData("A is a touch flat", "a little flat", "crow B, peep C")]
    [InlineData("A is sharp now", "sharp", "crow C")]
    [InlineData("A flat", "flat", "crow C")]
    public void An_A_that_is_flat_or_sharp_is_the_tuning_note(string phrase, string step, params string[] before)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal((TestKind.TuningNote, step, null), (read.Slots.Test, read.Slots.Step, read.Slots.Lean));
    }

    [Theory]
    [InlineData("A 10 flat")]
    [InlineData("A minus 10")]
    public void An_A_with_a_number_is_the_tuning_note(string phrase) =>
        Assert.Equal((TestKind.TuningNote, -10m), Assert.Single(Read(phrase, "crow C minus 20")).Slots is var slots ? (slots.Test, slots.Cents) : default);

    [Fact]
    public void Where_crows_are_on_A_an_A_is_the_crow() => Assert.NotEqual(EntryKind.Note, Assert.Single(Read("A minus 10", "crow A flat")).Kind);

    [Theory]
    [InlineData("high A still sags, pitch down by 20 cents")]
    [InlineData("high A down 20 cents")]
    public void What_a_high_note_is_off_by_is_none_of_the_crow(string phrase)
    {
        var read = Assert.Single(Read(phrase, "crow C"));

        Assert.Equal((TestKind.HighSteadiness, null, null), (read.Slots.Test, read.Slots.Step, read.Slots.Change));
        Assert.Equal(phrase, Assert.IsType<Domain.Bench.Test>(Made(read)).Words);
    }

    [Theory]
    [InlineData("G")]
    [InlineData("G is a bit flat")]
    [InlineData("F sharp")]
    [InlineData("E is flat")]
    public void A_note_that_no_crow_has_is_kept_as_a_remark(string phrase)
    {
        var read = Assert.Single(Read(phrase, "crow B"));

        Assert.Equal(EntryKind.Note, read.Kind);
        Assert.NotEmpty(read.Doubts);
    }

    [Theory]
    [InlineData("crow is E")]
    [InlineData("peep A")]
    public void A_crow_or_a_peep_that_is_named_is_kept_wherever_it_stands(string phrase) => Assert.NotNull(Assert.Single(Read(phrase)).Slots.Pitch);

    [Fact]
    public void That_a_low_note_is_flat_says_nothing_of_how_it_speaks() => Assert.Equal((TestKind.LowResponse, null), Assert.Single(Read("low D flat")).Slots is var slots ? (slots.Test, slots.Step) : default);

    [Theory]
    [InlineData("crow C minus 220 still, rattles", "peep B")]
    [InlineData("crow C minus 220 still, rattles", "peep B, already crowing")]
    public void A_crow_that_rattles_is_no_peep_and_keeps_its_amount(string phrase, string before)
    {
        var read = Assert.Single(Read(phrase, before));

        var crow = Assert.IsType<Domain.Bench.Test>(Made(read));
        Assert.Equal((TestKind.Crow, "B♭", -20, phrase), (crow.TestKind, crow.Pitch!.PitchClass.Name, crow.Pitch.Cents.Value, crow.Words));
    }

    [Theory]
    [InlineData("a bit rattly at the bottom though")]
    [InlineData("a bit rattly at the bottom though", "opening a little closed")]
    [InlineData("sounds tired")]
    [InlineData("bone dry cane, dead, sounds tired", "edge bright")]
    public void What_a_sound_is_like_and_no_scale_has_a_word_for_is_no_test(string phrase, params string[] before) =>
        Assert.DoesNotContain(Read(phrase, before), entry => entry.Kind is not EntryKind.Note);

    [Theory]
    [InlineData("that rattle is gone", "nice cane")]
    [InlineData("rattle gone", "nice cane")]
    [InlineData("the buzz is gone", "nice cane", "tip too thick")]
    public void An_ending_is_of_no_finding_that_it_does_not_name(string phrase, params string[] before)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal(EntryKind.Note, read.Kind);
        Assert.NotEmpty(read.Doubts);
    }

    [Theory]
    [InlineData("easier to blow but still woolly", "far too hard")]
    [InlineData("a bit easier", "blows far too hard")]
    [InlineData("harder now", "far too easy")]
    public void What_is_nearer_to_right_is_not_yet_beyond_it(string phrase, string before)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal((TestKind.Effort, null), (read.Slots.Test, read.Slots.Step));
        Assert.Contains(read.Doubts, doubt => doubt.Slot is "step");
    }

    [Theory]
    [InlineData("Squeezed the sides of the tube to open it", "round-eye", false)]
    [InlineData("pinched the sides of the tube to open it a little", "round-eye", false)]
    [InlineData("squeezed the tube to open it", "round-eye", false)]
    [InlineData("pressed the tube top and bottom to close it", "flatten-eye", false)]
    [InlineData("squeezed the tube", "flatten-eye", true)]
    public void A_tube_is_pressed_the_way_that_is_said(string phrase, string kind, bool unsure)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((kind, unsure), (read.Slots.Kind, read.Doubts.Any(doubt => doubt.Slot is "kind")));
    }

    [Theory]
    [InlineData("crow C minus 40 single octave")]
    [InlineData("crow C, one octave only")]
    public void One_octave_alone_stays_with_the_crow(string phrase)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((TestKind.Crow, "C", null), (read.Slots.Test, read.Slots.Pitch, read.Slots.Step));
        Assert.Equal(phrase, Assert.IsType<Domain.Bench.Test>(Made(read)).Words);
    }

    [Theory]
    [InlineData("C flat")]
    [InlineData("crow C flat")]
    [InlineData("peep C flat")]
    public void C_flat_is_a_C_that_is_flat(string phrase) => Assert.Equal(("C", "flat"), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Pitch, slots.Lean) : default);

    [Theory]
    [InlineData("rails left alone on purpose", Zone.Rails)]
    [InlineData("spine left alone deliberately", Zone.Spine)]
    public void What_is_left_alone_on_purpose_is_that_place_and_no_finding(string phrase, Zone zone) =>
        Assert.Equal((EntryKind.LeaveAlone, zone), Assert.Single(Read(phrase, "back too thick")) is var read ? (read.Kind, read.Slots.Zone) : default);

    [Theory]
    [InlineData("softer start ok now", "windows uneven")]
    public void A_softer_start_is_the_soft_start(string phrase, string before) => Assert.Equal((TestKind.SoftestStart, "starts softly"), Assert.Single(Read(phrase, before)).Slots is var slots ? (slots.Test, slots.Step) : default);

    [Theory]
    [InlineData("Verdict improved, needs a couple of days playing in")]
    [InlineData("verdict: improved, needs playing in")]
    [InlineData("verdict improved, needs a day's playing in")]
    [InlineData("improved, needs a day's playing in")]
    [InlineData("improved but needs playing in")]
    [InlineData("verdict better, needs playing in")]
    [InlineData("verdict: better, needs a few days' playing in")]
    public void A_verdict_and_what_is_still_needed_is_one_with_its_reason(string phrase)
    {
        var verdict = Assert.IsType<Verdict>(Made(Assert.Single(Read(phrase))));

        Assert.Equal((VerdictKind.Improved, phrase), (verdict.VerdictKind, verdict.Words));
    }

    [Theory]
    [InlineData("verdict needs playing in")]
    [InlineData("needs a few days' playing in")]
    [InlineData("needs playing in, then it'll be better")]
    public void What_only_has_to_be_played_in_is_called_so(string phrase) =>
        Assert.Equal(VerdictKind.NeedsPlayingIn, Assert.IsType<Verdict>(Made(Assert.Single(Read(phrase)))).VerdictKind);

    private static BenchEntry Made(ReadEntry read) => Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context([]))).Value;

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
