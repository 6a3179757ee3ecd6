using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is a remark and what is none, a stop that protects, a pitch that lies nearer one note, and notes that grumble.</summary>
public sealed class RemarkTests
{
    [Theory]
    [InlineData("crow between B and C, nearer the C", "test")]
    [InlineData("it sits between C and C sharp, closer to C sharp", "test")]
    [InlineData("stopping now, I want to protect it", "stopped", "verdict")]
    [InlineData("that's where I stop, to protect it", "stopped", "verdict")]
    [InlineData("played it for ten minutes, nothing changed", "note")]
    [InlineData("which of the three was this one", "note")]
    [InlineData("um, okay, so")]
    public void Each_is_as_many_entries_as_are_said(string phrase, params string[] kinds) =>
        Assert.Equal(kinds, PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(entry => PhraseCorpus.LineOf(entry).Kind));

    [Theory]
    [InlineData("the low notes grumble")]
    [InlineData("low notes growl a bit before they come")]
    [InlineData("bottom notes splutter")]
    public void Notes_that_grumble_never_speak_at_once(string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries, entry => entry.Slots is { Test: TestKind.LowResponse, Step: "speaks at once" });

    [Fact]
    public void Notes_that_speak_without_a_grumble_do() =>
        Assert.Contains(PhraseReader.Read("low notes speak at once without a grumble", PhraseCorpus.Context([])).Entries, entry => entry.Slots is { Test: TestKind.LowResponse, Step: "speaks at once" });
}
