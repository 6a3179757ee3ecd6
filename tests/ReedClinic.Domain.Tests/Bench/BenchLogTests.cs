using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench;

public sealed class BenchLogTests
{
    private readonly Writer writer = new();

    [Fact]
    public void An_empty_log_has_only_the_reed_as_it_arrived()
    {
        var log = BenchLog.Empty;

        Assert.Equal([0], log.Passes.Select(pass => pass.Number));
        Assert.Empty(log.History);
        Assert.Null(log.Verdict);
        Assert.False(log.IsStopped);
        Assert.Equal(0, log.LastSequence);
    }

    [Fact]
    public void A_new_adjustment_after_a_test_opens_the_next_pass()
    {
        writer.Say(Writer.Test(TestKind.Crow, 3));
        writer.Say(Writer.Work());
        writer.Say(Writer.Work());
        writer.Say(Writer.Note("The left corner came down first."));
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Writer.Test(TestKind.Effort, 2));
        writer.Say(Writer.Work());

        var passes = writer.Log.Passes;

        Assert.Equal([1, 5, 1], passes.Select(pass => pass.Facts.Count));
        Assert.Equal([0, 2, 1], passes.Select(pass => pass.Adjustments.Count()));
        Assert.Equal([1, 2, 0], passes.Select(pass => pass.Tests.Count()));
    }

    [Fact]
    public void An_entry_can_say_which_pass_it_belongs_to()
    {
        var first = writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Peep, 0), pass: new PassId(first.Value));
        writer.Say(Writer.Work(), pass: new PassId(first.Value));

        Assert.Equal([0, 4, 1], writer.Log.Passes.Select(pass => pass.Facts.Count));

        // Nor does a test that was said late make the next adjustment open a pass.
        writer.Say(Writer.Work());
        Assert.Equal([0, 4, 2], writer.Log.Passes.Select(pass => pass.Facts.Count));
    }

    [Fact]
    public void What_was_made_at_a_place_in_the_log_belongs_to_the_pass_that_was_open_there_as_it_counts_today()
    {
        writer.Say(Writer.Test(TestKind.Crow, 0));
        var first = writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Crow, 1));
        writer.Say(Writer.Work());
        writer.Say(Writer.Note("late"), pass: new PassId(first.Value));

        Assert.Equal([0, 0, 1, 1, 2, 2, 2], Enumerable.Range(0, 7).Select(place => writer.Log.PassAt(place)));

        writer.Undo(first);
        Assert.Equal([0, 0, 0, 0, 1, 1, 1], Enumerable.Range(0, 7).Select(place => writer.Log.PassAt(place)));
    }

    [Fact]
    public void A_pass_that_was_named_and_taken_back_leaves_the_entry_where_it_was_said()
    {
        var first = writer.Say(Writer.Work());
        writer.Undo(first);
        writer.Say(Writer.Test(TestKind.Peep, 0), pass: new PassId(first.Value));

        Assert.Equal([1], writer.Log.Passes.Select(pass => pass.Facts.Count));
    }

    [Fact]
    public void Taking_back_the_adjustment_that_opened_a_pass_closes_the_gap()
    {
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Crow, 0));
        var mistake = writer.Say(Writer.Work());
        writer.Undo(mistake);
        writer.Say(Writer.Test(TestKind.Peep, 0));

        Assert.Equal([0, 3], writer.Log.Passes.Select(pass => pass.Facts.Count));
    }

    [Fact]
    public void A_correction_stands_in_the_place_of_the_first_wording()
    {
        var said = writer.Say(Writer.Note("The tip is thik."));
        writer.Say(Writer.Work());
        var corrected = writer.Say(Writer.Note("The tip is thick."), supersedes: said);

        var fact = writer.Log.FactOf(corrected)!;

        Assert.Equal(said, fact.Root);
        Assert.Equal(corrected, fact.Tail);
        Assert.Equal(FactState.Corrected, fact.State);
        Assert.Equal(0, fact.Pass);
        Assert.Equal("The tip is thick.", Assert.IsType<Note>(fact.Now).Words);
        Assert.Equal([EntryStanding.Corrected, EntryStanding.Stands, EntryStanding.Stands], Standings());
    }

    [Fact]
    public void Undoing_a_correction_brings_the_earlier_wording_back_and_undoing_again_takes_the_fact_back()
    {
        var first = writer.Say(Writer.Note("one"));
        var second = writer.Say(Writer.Note("two"), supersedes: first);
        var undo = writer.Undo(second);

        Assert.Equal("one", Assert.IsType<Note>(writer.Log.FactOf(first)!.Now).Words);
        Assert.Equal([EntryStanding.Stands, EntryStanding.TakenBack, EntryStanding.TakesBack], Standings());

        var again = writer.Undo(undo);

        Assert.Equal(FactState.TakenBack, writer.Log.FactOf(first)!.State);
        Assert.Empty(writer.Log.Live<Note>());

        writer.Undo(again);

        Assert.Equal(EntryStanding.NothingToTakeBack, writer.Log.History[^1].Standing);
    }

    [Fact]
    public void What_was_taken_back_can_be_said_again()
    {
        var first = writer.Say(Writer.Note("one"));
        var undo = writer.Undo(first);
        writer.Say(Writer.Note("one after all"), supersedes: undo);

        Assert.Equal("one after all", Assert.Single(writer.Log.Live<Note>()).Now.Words);
    }

    [Fact]
    public void An_undo_takes_back_the_last_wording_of_the_teacher_who_asks()
    {
        var mine = writer.Say(Writer.Note("mine"), by: Writer.Ada);
        var theirs = writer.Say(Writer.Note("theirs"), by: Writer.Ben);

        Assert.Equal(mine, writer.Log.LastOf(Writer.Ada)!.Root);
        Assert.Equal(theirs, writer.Log.LastOf(Writer.Ben)!.Root);

        writer.Say(Writer.Note("mine, mended by the other"), supersedes: mine, by: Writer.Ben);

        Assert.Null(writer.Log.LastOf(Writer.Ada));
        Assert.Equal(mine, writer.Log.LastOf(Writer.Ben)!.Root);
    }

    [Fact]
    public void A_second_correction_of_the_same_wording_is_listed_and_does_not_count()
    {
        var first = writer.Say(Writer.Note("one"));
        writer.Say(Writer.Note("two"), supersedes: first);
        var late = writer.Say(Writer.Note("also two"), supersedes: first, by: Writer.Ben);
        writer.Say(Writer.Note("three"), supersedes: late, by: Writer.Ben);

        Assert.Equal("two", Assert.Single(writer.Log.Live<Note>()).Now.Words);
        Assert.Equal(
            [EntryStanding.Corrected, EntryStanding.Stands, EntryStanding.CameSecond, EntryStanding.FollowsWhatDoesNotCount],
            Standings());
    }

    [Fact]
    public void Entries_that_replace_nothing_another_kind_or_come_twice_are_listed_with_the_reason()
    {
        var note = writer.Say(Writer.Note("one"));
        writer.Say(Writer.Note("of nothing"), supersedes: new EntryId(Writer.Number(99, 1)));
        writer.Say(Writer.Value(CauseJudged.Of(new Domain.Catalogues.CauseId("tip-corners-thick"), CauseAnswer.Confirmed)), supersedes: note);
        writer.Add(Writer.Note("again"), 4, operation: writer.Entries[0].OperationId);
        writer.Say(Undo.Entry());

        Assert.Equal("one", Assert.Single(writer.Log.Live<Note>()).Now.Words);
        Assert.Single(writer.Log.Facts);
        Assert.Equal(
            [
                EntryStanding.Stands, EntryStanding.NothingToReplace, EntryStanding.ReplacesAnotherKind,
                EntryStanding.Repeat, EntryStanding.NothingToTakeBack,
            ],
            Standings());
    }

    [Fact]
    public void Arrival_and_now_are_told_for_each_test()
    {
        writer.Say(Writer.Test(TestKind.Effort, 4));
        writer.Say(Writer.Test(TestKind.Opening, 2));
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Effort, 3));
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Effort, 2));
        writer.Say(Writer.Test(TestKind.Depth, 1));

        var moves = writer.Log.Moves;

        Assert.Equal([TestKind.Opening, TestKind.Effort, TestKind.Depth], moves.Select(move => move.TestKind));
        Assert.Equal((4, 2), (moves[1].Arrival!.Now.Step, moves[1].Now!.Now.Step));
        Assert.Equal(Movement.Nearer, moves[1].Movement);
        Assert.Null(moves[0].Now);
        Assert.Null(moves[2].Arrival);
        Assert.Equal(Movement.NotComparable, moves[2].Movement);
    }

    [Fact]
    public void A_two_sided_test_can_pass_the_good_step_and_be_further_from_it()
    {
        writer.Say(Writer.Test(TestKind.Effort, 3));
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Effort, 0));

        Assert.Equal(Movement.Further, Assert.Single(writer.Log.Moves).Movement);
    }

    [Fact]
    public void A_finding_knows_how_it_ended_and_what_was_done_for_it_even_when_they_name_a_later_wording()
    {
        var found = writer.Say(Writer.Found());
        var corrected = writer.Say(Writer.Found("tip-thick"), supersedes: found);
        var work = writer.Say(Writer.Work(found));
        writer.Say(Writer.Value(FindingEnded.Of(found, FindingEnding.Better)));
        writer.Say(Writer.Value(FindingEnded.Of(corrected, FindingEnding.Gone)));

        var finding = Assert.Single(writer.Log.Findings);

        Assert.Equal("tip-thick", finding.Finding.FindingKind.Value);
        Assert.Equal(FindingEnding.Gone, finding.Ended!.Now.Ending);
        Assert.Equal(work, Assert.Single(finding.DoneForIt).Root);
    }

    [Fact]
    public void An_ending_of_a_finding_that_was_taken_back_stands_and_names_nothing()
    {
        var found = writer.Say(Writer.Found());
        writer.Say(Writer.Value(FindingEnded.Of(found, FindingEnding.Gone)));
        writer.Undo(found);

        Assert.Empty(writer.Log.Findings);
        Assert.Equal(EntryStanding.StandsButNamesNothing, writer.Log.History[1].Standing);
    }

    [Fact]
    public void A_risk_is_open_until_it_is_closed_and_still_open_keeps_it_open()
    {
        var risk = writer.Say(Writer.Value(Risk.Of("The left corner may tear.", Zone.TipCorners)));
        Assert.Equal(risk, Assert.Single(writer.Log.OpenRisks).Fact.Root);

        writer.Say(Writer.Value(RiskClosed.Of(risk, RiskOutcome.StillOpen)));
        Assert.Single(writer.Log.OpenRisks);

        writer.Say(Writer.Value(RiskClosed.Of(risk, RiskOutcome.DidNotHappen)));
        Assert.Empty(writer.Log.OpenRisks);
        Assert.Equal(RiskOutcome.DidNotHappen, Assert.Single(writer.Log.Risks).Closed!.Now.Outcome);
    }

    [Fact]
    public void Work_after_a_stop_means_that_it_has_not_stopped()
    {
        writer.Say(Writer.Value(Stopped.Of("It speaks.")));
        writer.Say(Writer.Test(TestKind.Crow, 0));
        Assert.True(writer.Log.IsStopped);

        writer.Say(Writer.Work());
        Assert.False(writer.Log.IsStopped);
        Assert.NotNull(writer.Log.Stop);
    }

    [Fact]
    public void The_last_verdict_that_stands_is_the_verdict()
    {
        writer.Say(Writer.Value(Verdict.Of(VerdictKind.Improved)));
        var second = writer.Say(Writer.Value(Verdict.Of(VerdictKind.NeedsPlayingIn)));
        Assert.Equal(VerdictKind.NeedsPlayingIn, writer.Log.Verdict!.Now.VerdictKind);

        writer.Undo(second);
        Assert.Equal(VerdictKind.Improved, writer.Log.Verdict!.Now.VerdictKind);
    }

    [Fact]
    public void A_log_is_about_one_reed()
    {
        writer.Say(Writer.Note("one"));
        var other = writer.Entries[0].StampedWith(new EntryStamp(
            new EntryId(Writer.Number(10, 50)), new ReedId(Writer.Number(3, 2)), 1, new(Writer.Number(20, 50)), default, Writer.Ada));

        Assert.Throws<ArgumentException>(() => BenchLog.Fold([.. writer.Entries, other]));
    }

    private IEnumerable<EntryStanding> Standings() => writer.Log.History.Select(line => line.Standing);
}
