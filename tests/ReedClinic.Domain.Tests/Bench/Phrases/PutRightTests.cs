using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is put right, asked, put off or tried out; what is done again elsewhere; and notes of a register that are flat.</summary>
public sealed class PutRightTests
{
    [Theory]
    [InlineData("Clipped, sorry, squared the tip.", "square-tip")]
    [InlineData("tip too short, no sorry too long", "tip-long")]
    [InlineData("back too thick – scrap that, the heart is too thick", "heart-thick")]
    public void Of_what_is_put_right_only_the_later_counts(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("Three strokes, make that four, off the left corner", 4)]
    [InlineData("windows 2x", 2)]
    [InlineData("done: windows x2", 2)]
    public void Strokes_are_counted_as_they_were_put_right_and_as_times(string phrase, int strokes)
    {
        var work = Assert.Single(Read(phrase));

        Assert.Equal((EntryKind.Adjustment, strokes), (work.Kind, work.Slots.Strokes));
    }

    [Theory]
    [InlineData("I dusted the heart last time it was here")]
    [InlineData("new cork: on order")]
    [InlineData("clip: not needed")]
    [InlineData("Shall I leave the back alone?")]
    [InlineData("Is the thread too high?")]
    [InlineData("one more off the back and the opening may drop")]
    public void What_is_asked_put_off_foretold_or_of_another_day_is_no_work_and_no_finding(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry.Kind is EntryKind.Adjustment or EntryKind.Finding or EntryKind.LeaveAlone);

    [Theory]
    [InlineData("drew the air, holds, small pop", TestKind.Seal)]
    [InlineData("pressed lightly, the sides close first", TestKind.ClosingOrder)]
    public void How_a_test_is_done_is_no_work(string phrase, TestKind test) => Assert.Equal((EntryKind.Test, test), (Assert.Single(Read(phrase)).Kind, Read(phrase)[0].Slots.Test));

    [Theory]
    [InlineData("blended the left side, two strokes", "ditto right", null, Sides.Right, 2)]
    [InlineData("one stroke off the left corner", "And its neighbour.", null, Sides.Right, 1)]
    [InlineData("three strokes in the windows, upper blade", "Likewise below.", Blades.Lower, null, 3)]
    [InlineData("three strokes in the left window", "Twice that on the right.", null, Sides.Right, 6)]
    public void What_is_done_again_is_done_where_it_is_said(string before, string phrase, Blades? blade, Sides? side, int strokes)
    {
        var work = Assert.Single(Read(phrase, before));

        Assert.Equal((EntryKind.Adjustment, blade, side, strokes), (work.Kind, work.Slots.Blades, work.Slots.Sides, work.Slots.Strokes));
    }

    [Theory]
    [InlineData("high notes go flat", TestKind.HighSteadiness)]
    [InlineData("the upper register is a bit flat", TestKind.HighSteadiness)]
    [InlineData("top notes sharp", TestKind.HighSteadiness)]
    [InlineData("low notes flat", TestKind.LowResponse)]
    public void Notes_of_a_register_that_are_flat_or_sharp_are_kept_as_that_and_do_not_wander(string phrase, TestKind test)
    {
        var made = Assert.IsType<Domain.Bench.Test>(Assert.IsType<Domain.Outcomes.Outcome<BenchEntry>.Done>(Assert.Single(Read(phrase)).ToEntry(PhraseCorpus.Context([]))).Value);

        Assert.Equal((test, null, phrase), (made.TestKind, made.StepWord, made.Words));
    }

    [Theory]
    [InlineData("nothing wrong with the rails", "rails-intact")]
    [InlineData("spine ok", "spine-intact")]
    public void What_nothing_is_wrong_with_is_praised(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Fact]
    public void Nothing_wrong_with_a_seal_is_no_seal_that_does_not_hold() => Assert.DoesNotContain(Read("nothing wrong with the seal"), entry => entry.Slots.Step is "does not hold");

    [Theory]
    [InlineData("left corner of the upper blade chipped", "no, the right corner")]
    [InlineData("left corner thick", "sorry, lower blade")]
    [InlineData("left corner thick", "I mean the right corner")]
    public void What_only_puts_right_the_place_of_the_entry_before_is_no_new_finding(string before, string phrase)
    {
        var read = Assert.Single(Read(phrase, before));

        Assert.Equal(EntryKind.Note, read.Kind);
        Assert.NotEmpty(read.Doubts);
    }

    [Fact]
    public void What_says_more_of_the_place_than_that_is_read_as_ever() => Assert.Equal("tip-corners-thick", Assert.Single(Read("no, the right corner is thick", "left corner chipped")).Slots.Kind);

    [Theory]
    [InlineData("it plays well")]
    [InlineData("starts better")]
    [InlineData("it grumbles")]
    [InlineData("wobbles a bit")]
    public void How_a_reed_is_at_large_is_no_test_and_no_finding_and_ends_none(string phrase) =>
        Assert.DoesNotContain(Read(phrase, "bump in the ramp"), entry => entry.Kind is EntryKind.Test or EntryKind.Finding or EntryKind.FindingEnded or EntryKind.LookedFor);

    [Theory]
    [InlineData("a clean clip is half the battle, I tell the lot of them")]
    [InlineData("I made you a drawing where you see the strokes.")]
    [InlineData("habit of hers: scrape/clip/scrape/clip, never tests")]
    [InlineData("Pulled the reed off the mandrel in order to play it.")]
    [InlineData("Spine: scraped, upper only, from the heart to halfway down. Not my work.")]
    [InlineData("took a nick out of the tip corner with my thumbnail")]
    [InlineData("maybe cut it off and tie it again")]
    public void What_is_named_like_work_and_is_none_is_no_adjustment(string phrase) => Assert.DoesNotContain(Read(phrase), entry => entry.Kind is EntryKind.Adjustment);

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
