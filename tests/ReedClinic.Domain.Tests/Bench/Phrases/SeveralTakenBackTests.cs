using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Whoever takes “that” back means all that was said in the last breath; “the last two” are two.</summary>
public sealed class SeveralTakenBackTests
{
    private static readonly AccountId Me = new(new Guid(2, 0, 0, new byte[8]));

    private readonly List<BenchEntry> entries = [];

    [Theory]
    [InlineData("scratch that")]
    [InlineData("undo that")]
    [InlineData("undo")]
    [InlineData("no, scratch that")]
    [InlineData("sorry, take that back")]
    [InlineData("take it back")]
    [InlineData("forget that, my mistake")]
    [InlineData("scratch that line")]
    public void All_of_a_breath_goes_together(string text)
    {
        Breath(1, "left corner thick");
        Breath(2, "clip a hair", "crow C");

        Assert.Equal([3, 2], Taken(text));
    }

    [Theory]
    [InlineData("scratch the last entry")]
    [InlineData("delete the last entry")]
    [InlineData("take back the last one")]
    public void The_last_entry_is_one(string text)
    {
        Breath(2, "clip a hair", "crow C");

        Assert.Equal([2], Taken(text));
    }

    [Theory]
    [InlineData("scratch the last two", new[] { 4, 3, 2 })]
    [InlineData("undo the last two lines", new[] { 4, 3, 2 })]
    [InlineData("delete the last 2", new[] { 4, 3, 2 })]
    [InlineData("take back the last two", new[] { 4, 3, 2 })]
    [InlineData("take the last couple back", new[] { 4, 3, 2 })]
    [InlineData("sorry, scratch the last three", new[] { 4, 3, 2, 1 })]
    [InlineData("delete the last two entries", new[] { 4, 3 })]
    public void The_last_two_are_two(string text, int[] gone)
    {
        Breath(1, "left corner thick");
        Breath(2, "clip a hair", "crow C");
        Breath(3, "low D late");

        Assert.True(LastTakenBack.Says(text));
        Assert.Equal(gone, Taken(text));
    }

    [Fact]
    public void The_last_two_of_a_breath_of_two_are_those()
    {
        Breath(1, "left corner thick");
        Breath(2, "clip a hair", "crow C");

        Assert.Equal([3, 2], Taken("scratch the last two"));
    }

    [Theory]
    [InlineData("took the last two off the left")]
    [InlineData("the last two strokes were too much")]
    [InlineData("scratch the last two strokes")]
    [InlineData("take the last two off")]
    [InlineData("can I undo the last two?")]
    public void What_tells_of_two_takes_nothing_back(string text) => Assert.False(LastTakenBack.Says(text));

    [Fact]
    public void What_was_said_better_or_by_somebody_else_is_not_of_the_breath()
    {
        Breath(1, "clip a hair", "crow C", "low D late");
        Add(Note.Of("late indeed"), 9, 0, entries[2].Id);
        Add(Note.Of("a colleague’s"), 1, 3, by: new AccountId(new Guid(7, 0, 0, new byte[8])));

        Assert.Equal([3], Taken("scratch that"));
        Assert.Empty(SaidTogether.Last(BenchLog.Empty, Me, 1));
    }

    private IEnumerable<int> Taken(string text) => SeveralTakenBack.Of(text, BenchLog.Fold(entries), Me).Select(fact => fact.Sequence);

    private void Breath(int number, params string[] said)
    {
        for (var part = 0; part < said.Length; part++)
        {
            Add(Note.Of(said[part]), number, part);
        }
    }

    private void Add(Domain.Outcomes.Outcome<Note> note, int breath, int part, EntryId? better = null, AccountId? by = null) =>
        entries.Add(Writer.Value(note).StampedWith(new EntryStamp(new EntryId(Writer.Number(10, entries.Count + 1)), Writer.Reed, entries.Count + 1, new OperationId(Writer.Number(20, breath)).Part(part), DateTimeOffset.UnixEpoch, by ?? Me, better)));
}
