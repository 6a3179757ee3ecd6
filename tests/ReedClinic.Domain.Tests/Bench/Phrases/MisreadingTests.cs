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
    [InlineData("stuffy low notes", "a little too hard")]
    [InlineData("low notes are stuffy", "a little too hard")]
    [InlineData("low register very stuffy", "far too hard")]
    [InlineData("the high notes feel stuffy", "a little too hard")]
    [InlineData("low notes not stuffy any more", "right")]
    public void Stuffy_is_how_hard_it_is_to_blow_and_not_how_late_it_speaks_and_where_it_is_so_is_kept(string phrase, string step)
    {
        var test = Assert.IsType<Domain.Bench.Test>(Entry(phrase));

        Assert.Equal((TestKind.Effort, step, phrase), (test.TestKind, test.StepWord, test.Words));
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

    private static BenchEntry Entry(string phrase, params string[] before)
    {
        var context = PhraseCorpus.Context(before);
        return Assert.IsType<Outcome<BenchEntry>.Done>(Assert.Single(PhraseReader.Read(phrase, context).Entries).ToEntry(context)).Value;
    }
}
