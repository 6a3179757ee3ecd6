using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Work that is said in the breath in which a reed is put down stays; somebody else’s care, a measure and a denied value are what they are.</summary>
public sealed class KeptWorkTests
{
    [Theory]
    [InlineData("took two strokes off the heart and put it down for today")]
    [InlineData("clipped a hair and laid it down for now")]
    [InlineData("scraped the left wing, put it down for now")]
    [InlineData("took a nail off the tip")]
    [InlineData("clipped a nail's breadth")]
    [InlineData("two and a half off the tip")]
    public void Work_stays_work(string phrase) => Assert.Contains(Read(phrase), read => read.Kind == EntryKind.Adjustment);

    [Theory]
    [InlineData("put it down for today", EntryKind.Stopped)]
    [InlineData("cut my thumb", EntryKind.Note)]
    [InlineData("kept off the spine", EntryKind.LeaveAlone)]
    public void What_is_none_is_none(string phrase, EntryKind kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("she kept off the spine")]
    [InlineData("you kept off the spine nicely")]
    [InlineData("he kept clear of the rails, good")]
    [InlineData("opening not closed enough")]
    public void Nobody_leaves_alone_or_stops_what_somebody_else_did(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind is EntryKind.LeaveAlone or EntryKind.Stopped);

    [Theory]
    [InlineData("seal none too good")]
    [InlineData("low D none too good")]
    [InlineData("heart is even thicker on the left")]
    [InlineData("heart looks even thicker")]
    public void What_is_denied_or_more_is_not_the_best(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots is { Step: "speaks at once" or "holds, then opens with a small pop" } or { Character: FindingCharacter.Strength });

    [Theory]
    [InlineData("tip is 4 mm long")]
    [InlineData("tip measures 3 mm long")]
    [InlineData("sixty nine and three quarters long")]
    public void A_measure_is_no_fault(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind == EntryKind.Finding);

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
