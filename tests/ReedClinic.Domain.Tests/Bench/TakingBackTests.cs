using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Tests.Bench;

public sealed class TakingBackTests
{
    private readonly Writer writer = new();

    [Fact]
    public void What_was_taken_back_out_of_turn_is_what_an_undo_brings_back_and_in_turn_it_takes_back_more()
    {
        var first = writer.Say(Writer.Note("one"), by: Writer.Ada);
        var better = writer.Say(Writer.Note("one, better"), supersedes: first, by: Writer.Ada);
        var second = writer.Say(Writer.Note("two"), by: Writer.Ada);
        Assert.Null(writer.Log.WithdrawnBy(Writer.Ada));
        Assert.Equal("one", Assert.IsType<Note>(writer.Log.FactOf(first)!.Earlier).Words);
        Assert.Null(writer.Log.FactOf(second)!.Earlier);

        var undo = writer.Undo(better, by: Writer.Ada);

        var gone = writer.Log.WithdrawnBy(Writer.Ada)!;
        Assert.Equal((first, "one, better"), (gone.Root, Assert.IsType<Note>(gone.Withdrawn).Words));
        Assert.Null(writer.Log.WithdrawnBy(Writer.Ben));

        writer.Say(Writer.Note("one, better"), supersedes: undo, by: Writer.Ada);
        Assert.Null(writer.Log.WithdrawnBy(Writer.Ada));
        writer.Say(Writer.Note("three"), by: Writer.Ada);
        var last = writer.Log.LastOf(Writer.Ada)!;
        writer.Undo(last.Tail, by: Writer.Ada);
        Assert.Null(writer.Log.WithdrawnBy(Writer.Ada));
        Assert.Equal(first, writer.Log.LastOf(Writer.Ada)!.Root);
    }
}
