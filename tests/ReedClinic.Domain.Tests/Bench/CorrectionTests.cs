using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Tests.Bench;

/// <summary>A better wording of another kind than the first.</summary>
public sealed class CorrectionTests
{
    private readonly Writer writer = new();

    [Fact]
    public void What_was_misheard_as_a_remark_is_said_better_as_a_test_in_its_own_place_and_undo_brings_the_remark_back()
    {
        var note = writer.Say(Writer.Note("efort is hard"));
        writer.Say(Writer.Work());
        var test = writer.Say(Writer.Test(TestKind.Effort, 3), supersedes: note);

        var log = writer.Log;
        Assert.Equal((EntryKind.Test, FactState.Corrected, 0), (log.Facts[0].Kind, log.Facts[0].State, log.Facts[0].Pass));
        Assert.Equal(test, Assert.Single(log.Moves).Arrival!.Now.Id);
        Assert.Empty(log.Live<Note>());
        Assert.Equal([EntryStanding.Corrected, EntryStanding.Stands, EntryStanding.Stands], log.History.Select(line => line.Standing));

        writer.Undo(test);
        Assert.Equal("efort is hard", Assert.Single(writer.Log.Live<Note>()).Now.Words);
        Assert.Empty(writer.Log.Moves);
    }

    [Fact]
    public void What_names_a_finding_that_became_a_remark_stands_and_names_nothing()
    {
        var finding = writer.Say(Writer.Found());
        writer.Say(Writer.Value(FindingEnded.Of(finding, FindingEnding.Gone)));
        writer.Say(Writer.Note("only a shadow"), supersedes: finding);

        Assert.Empty(writer.Log.Findings);
        Assert.Equal([EntryStanding.Corrected, EntryStanding.StandsButNamesNothing, EntryStanding.Stands], writer.Log.History.Select(line => line.Standing));
    }
}
