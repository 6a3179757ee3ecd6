using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What was once misread at the bench, or lost.</summary>
public sealed class MisreadingTests
{
    [Theory]
    [InlineData("stop because it is in tune now", "stop because it is in tune now")]
    [InlineData("I stop here since the crow is C", "I stop here since the crow is C")]
    [InlineData("stop", null)]
    public void Why_the_work_stops_is_kept_with_it_and_is_no_entry_of_its_own(string phrase, string? why) =>
        Assert.Equal(why, Assert.IsType<Stopped>(Entry(phrase)).Words);

    [Theory]
    [InlineData("length 71 mm")]
    [InlineData("overall length is 71 millimetres")]
    [InlineData("the reed is 71 mm long")]
    [InlineData("ruler: 71 mm over all")]
    [InlineData("ruler says 71 mm")]
    [InlineData("71 mm over all")]
    [InlineData("71 mm on the ruler")]
    public void A_length_is_a_measurement_and_no_fault(string phrase) =>
        Assert.Equal((TestKind.Length, 71m), (Assert.IsType<Domain.Bench.Test>(Entry(phrase)).TestKind, ((Domain.Bench.Test)Entry(phrase)).Millimetres));

    [Theory]
    [InlineData("verdict improved", null)]
    [InlineData("verdict: improved", null)]
    [InlineData("improved, thanks to the clip", "improved, thanks to the clip")]
    public void A_verdict_that_is_only_named_has_no_reason_of_its_own(string phrase, string? words)
    {
        var verdict = Assert.IsType<Verdict>(Entry(phrase));

        Assert.Equal((VerdictKind.Improved, words), (verdict.VerdictKind, verdict.Words));
        Assert.Empty(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Kept);
    }

    [Theory]
    [InlineData("stuffy low notes", TestKind.LowResponse)]
    [InlineData("low notes are stuffy", TestKind.LowResponse)]
    [InlineData("low register very stuffy", TestKind.LowResponse)]
    [InlineData("the high notes feel stuffy", TestKind.HighSteadiness)]
    [InlineData("low notes not stuffy any more", TestKind.LowResponse)]
    public void Stuffy_notes_are_kept_in_their_words_with_the_notes_they_are_of_and_on_no_scale_that_was_not_named(string phrase, TestKind notes)
    {
        var test = Assert.IsType<Domain.Bench.Test>(Entry(phrase));

        Assert.Equal((notes, null, phrase), (test.TestKind, test.StepWord, test.Words));
    }

    [Theory]
    [InlineData("crow is 20 cents flat", -20)]
    [InlineData("crow flat by 20", -20)]
    [InlineData("20 cents flat", -20)]
    [InlineData("crow 10 cents sharp", 10)]
    public void Cents_without_a_note_are_told_from_the_note_that_the_test_is_held_against(string phrase, int cents)
    {
        var test = Assert.IsType<Domain.Bench.Test>(Entry(phrase));

        Assert.Equal((TestKind.Crow, "C", cents), (test.TestKind, test.Pitch?.PitchClass.Name, test.Pitch?.Cents.Value));
    }

    [Fact]
    public void Cents_of_the_tuning_note_are_told_from_its_A() =>
        Assert.Equal(("A", 6d), Assert.IsType<Domain.Bench.Test>(Entry("tuning note 6 cents sharp")).Pitch is { } pitch ? (pitch.PitchClass.Name, pitch.Cents.Value) : default);

    [Theory]
    [InlineData("ten cents flat", "peep is B")]
    [InlineData("10 cents flat", "crow C -10", "peep clean")]
    [InlineData("a little flat", "peep is B")]
    public void What_is_said_without_a_test_right_after_a_peep_is_of_the_peep_and_keeps_its_words_where_no_note_is_known(string phrase, params string[] before)
    {
        var test = Assert.IsType<Domain.Bench.Test>(Entry(phrase, before));

        Assert.Equal((TestKind.Peep, null, phrase), (test.TestKind, test.Pitch, test.Words));
    }

    [Fact]
    public void Cents_right_after_the_tuning_note_are_of_the_tuning_note()
    {
        var test = Assert.IsType<Domain.Bench.Test>(Entry("5 cents sharp", "crow C", "tuning note in tune"));

        Assert.Equal((TestKind.TuningNote, "A", 5d), (test.TestKind, test.Pitch?.PitchClass.Name, test.Pitch?.Cents.Value));
    }

    [Fact]
    public void Cents_beside_a_note_are_not_dropped()
    {
        var test = Assert.IsType<Domain.Bench.Test>(Entry("crow is flat, about B flat and 20 cents"));

        Assert.Equal(("B♭", -20d), (test.Pitch?.PitchClass.Name, test.Pitch?.Cents.Value));
    }

    [Theory]
    [InlineData("opening is too open, squeezed it a bit", "close-press")]
    [InlineData("squeezed it a bit", "close-press", "opening too wide")]
    [InlineData("squeezed it a bit", "open-squeeze")]
    public void A_squeeze_without_a_direction_closes_what_is_too_open_and_is_in_doubt(string phrase, string kind, params string[] before)
    {
        var entry = Read(phrase, before).Entries[^1];

        Assert.Equal((EntryKind.Adjustment, kind), (entry.Kind, entry.Slots.Kind));
        Assert.Contains(entry.Doubts, doubt => doubt.Words.Contains("squeeze", StringComparison.Ordinal));
        Assert.Contains("squeezed it", ((Adjustment)Made(entry, before)).Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("opening too narrow, squeezed it a bit", "open-squeeze")]
    [InlineData("opening is too wide, squeezed the sides", "open-squeeze")]
    [InlineData("squeezed it open", "open-squeeze")]
    [InlineData("squeezed it shut a bit", "close-press")]
    public void Which_way_a_squeeze_with_a_direction_went_is_in_no_doubt(string phrase, string kind)
    {
        var entry = Read(phrase).Entries[^1];

        Assert.Equal(kind, entry.Slots.Kind);
        Assert.DoesNotContain(entry.Doubts, doubt => doubt != Doubt.Done);
    }

    [Theory]
    [InlineData("two off each side")]
    [InlineData("two off each side", "thread is loose")]
    [InlineData("two off each side", "retied it")]
    public void Strokes_never_tie_a_reed_again(string phrase, params string[] before)
    {
        var read = Read(phrase, before);
        var work = Assert.IsType<Adjustment>(Made(Assert.Single(read.Entries), before));

        Assert.Equal(("something-else", 2, phrase), (work.AdjustmentKind.Value, work.AmountStrokes, work.Words));
        Assert.NotEmpty(read.Entries[0].Doubts);
    }

    [Fact]
    public void Scraping_at_the_back_keeps_its_words_and_says_that_the_windows_were_taken_for_it()
    {
        var entry = Assert.Single(Read("scraped the back a little").Entries);

        Assert.Contains(entry.Doubts, doubt => doubt.Words.Contains("back", StringComparison.Ordinal));
        Assert.Equal("scraped the back a little", Assert.IsType<Adjustment>(Made(entry)).Words);
    }

    [Theory]
    [InlineData("sounds brighter now")]
    [InlineData("it sounds a bit brighter")]
    public void Brighter_says_which_way_the_edge_went_and_not_where_it_stands(string phrase)
    {
        var test = Assert.IsType<Domain.Bench.Test>(Entry(phrase));

        Assert.Equal((TestKind.Edge, null, phrase), (test.TestKind, test.StepWord, test.Words));
    }

    [Fact]
    public void A_stuffy_note_is_kept_in_its_words_and_is_not_said_to_stay_silent() =>
        Assert.Equal((null, "stuffy low D"), (((Domain.Bench.Test)Entry("stuffy low D")).StepWord, ((Domain.Bench.Test)Entry("stuffy low D")).Words));

    [Theory]
    [InlineData("opening too wide", true)]
    [InlineData("opening too wide|pressed the faces", true)]
    [InlineData("tip too thick", false)]
    [InlineData("", false)]
    public void What_is_still_so_is_unchanged_where_it_was_found_and_else_is_found(string before, bool wasFound)
    {
        var entry = Entry("opening is still too wide", before.Split('|', StringSplitOptions.RemoveEmptyEntries));

        if (wasFound)
        {
            Assert.Equal(FindingEnding.Unchanged, Assert.IsType<FindingEnded>(entry).Ending);
        }
        else
        {
            Assert.Equal("opening-wide", Assert.IsType<Finding>(entry).FindingKind.Value);
        }
    }

    [Theory]
    [InlineData("low notes speak, flimflam wobble")]
    [InlineData("low notes speak and flimflam wobble")]
    public void Words_that_nobody_knows_are_kept_with_the_test_beside_them(string phrase)
    {
        var test = Assert.IsType<Test>(Entry(phrase));

        Assert.Equal(TestKind.LowResponse, test.TestKind);
        Assert.Contains("flimflam wobble", test.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void One_test_told_in_two_ways_is_one_entry() => Assert.Equal(
        TestKind.LowResponse, Assert.Single(PhraseReader.Read("low notes late, low notes will not speak", PhraseCorpus.Context([]), null).Entries).Slots.Test);

    private static PhraseReading Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before));

    private static BenchEntry Made(ReadEntry read, params string[] before) => Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context(before))).Value;

    private static BenchEntry Entry(string phrase, params string[] before)
    {
        var context = PhraseCorpus.Context(before);
        return Assert.IsType<Outcome<BenchEntry>.Done>(Assert.Single(PhraseReader.Read(phrase, context).Entries).ToEntry(context)).Value;
    }
}
