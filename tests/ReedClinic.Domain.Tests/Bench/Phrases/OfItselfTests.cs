using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is said in one breath and is of itself: a test behind a finding, a comparison, the end of a day’s work.</summary>
public sealed class OfItselfTests
{
    [Theory]
    [InlineData("opening too small, high A sags", TestKind.HighSteadiness, "A")]
    [InlineData("tip too thin, top G wobbles", TestKind.HighSteadiness, "G")]
    [InlineData("leak at the side, high A drops", TestKind.HighSteadiness, "A")]
    [InlineData("tip too thin, high A sags", TestKind.HighSteadiness, "A")]
    [InlineData("heart too thick, high A droops", TestKind.HighSteadiness, "A")]
    [InlineData("back too thin, low A late", TestKind.LowResponse, "A")]
    public void A_test_behind_a_finding_is_one_of_its_own(string phrase, TestKind test, string pitch)
    {
        var read = Read(phrase);

        Assert.Equal([EntryKind.Finding, EntryKind.Test], read.Select(entry => entry.Kind));
        Assert.Equal((test, pitch), (read[1].Slots.Test, read[1].Slots.Pitch));
        Assert.Equal(phrase.Split(", ")[1], read[1].Said);
    }

    [Fact]
    public void Three_things_in_one_breath_are_three() => Assert.Equal(
        [(EntryKind.Test, "plays soft as butter,"), (EntryKind.Finding, "opening too small,"), (EntryKind.Test, "high A sags")],
        Read("plays soft as butter, opening too small, high A sags").Select(entry => (entry.Kind, entry.Said)));

    [Theory]
    [InlineData("tip too thick, high strung")]
    [InlineData("opening too small, a bit")]
    [InlineData("heart too thick, low down")]
    public void What_names_no_note_stays_with_its_finding(string phrase) => Assert.Equal(EntryKind.Finding, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("stiff as a board", "far too hard")]
    [InlineData("plays stiff as a board", "far too hard")]
    [InlineData("it's hard as nails", "far too hard")]
    [InlineData("tough as old boots to blow", "far too hard")]
    [InlineData("light as a feather", "far too easy")]
    [InlineData("plays soft as butter", "far too easy")]
    public void A_comparison_says_how_hard_it_is_to_blow(string phrase, string step)
    {
        var read = Assert.Single(Read(phrase));

        Assert.Equal((TestKind.Effort, step), (read.Slots.Test, read.Slots.Step));
        Assert.Equal(phrase, Assert.IsType<Domain.Bench.Test>(Made(read)).Words);
    }

    [Theory]
    [InlineData("heart thick as a plank", "strong")]
    [InlineData("tip thin as paper", "strong")]
    [InlineData("corners stiff as a board", "strong")]
    [InlineData("back's stiff as a plank", "strong")]
    [InlineData("tip thick as before", null)]
    [InlineData("tip as thick as the heart", null)]
    public void A_comparison_gives_a_finding_its_degree(string phrase, string? degree) => Assert.Equal((EntryKind.Finding, degree), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Degree) : default);

    [Theory]
    [InlineData("smooth as butter")]
    [InlineData("not stiff as a board any more")]
    [InlineData("is it stiff as a board?")]
    [InlineData("play it soft as you can")]
    public void What_compares_something_else_is_no_effort(string phrase) => Assert.DoesNotContain(Read(phrase), entry => entry.Slots.Step is "far too hard" or "far too easy");

    [Theory]
    [InlineData("leave it, done for today", "scraped the tip")]
    [InlineData("leave it for tonight", "scraped the tip two strokes")]
    [InlineData("leave it now, tomorrow more", "scraped the tip two strokes")]
    [InlineData("leave it, done for today", "tip too thick")]
    [InlineData("leaving it, that's enough for today", "dusted the heart")]
    [InlineData("leave it for today", "tip too thick")]
    [InlineData("I'll leave it there for tonight", "scraped the tip")]
    public void What_is_left_for_the_day_is_a_stop_and_no_place_to_be_left(string phrase, string before) => Assert.Equal(EntryKind.Stopped, Assert.Single(Read(phrase, before)).Kind);

    [Theory]
    [InlineData("dusted the heart, leave it there for tonight")]
    [InlineData("dusted the heart, leave it, done for today")]
    [InlineData("dusted the heart, leave it for today")]
    public void Work_before_it_stays_work(string phrase) => Assert.Equal([EntryKind.Adjustment, EntryKind.Stopped], Read(phrase).Select(entry => entry.Kind));

    [Theory]
    [InlineData("leave it alone", "scraped the tip")]
    [InlineData("leave it", "scraped the tip two strokes")]
    [InlineData("leave the heart, done for today", "crow C")]
    [InlineData("leave the tip alone for today", "crow C")]
    public void A_place_that_is_left_stays_one(string phrase, string before) => Assert.Contains(Read(phrase, before), entry => entry.Kind is EntryKind.LeaveAlone);

    private static BenchEntry Made(ReadEntry read, params string[] before) => Assert.IsType<Outcome<BenchEntry>.Done>(read.ToEntry(PhraseCorpus.Context(before))).Value;

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
