using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Tests.Bench;
using ReedClinic.Domain.Tests.Bench.Advice;

namespace ReedClinic.Domain.Tests.Diagnosis.Proposals;

/// <summary>The one quiet line at the bench.</summary>
public sealed class QuietStepTests
{
    [Fact]
    public void It_begins_with_what_was_not_checked()
    {
        var scene = new AdviceScene();
        var line = Line(scene)!;

        Assert.Equal((ProposalKind.Look, "next/look-ready-puff", ""), (line.Kind, line.Id.Value, line.MayCost));
        Assert.True(line.Id.IsWellFormed);
    }

    [Fact]
    public void What_was_set_aside_does_not_come_back_on_this_reed_and_in_the_end_there_is_silence()
    {
        var scene = new AdviceScene();
        scene.Effort(4);
        scene.Found("tip-corners-thick");
        HashSet<AdviceId> seen = [];
        while (Line(scene) is { } line)
        {
            Assert.True(seen.Add(line.Id));
            scene.Say(Writer.Value(AdviceSetAside.Of(line.Id)));
            Assert.True(seen.Count < 60);
        }

        Assert.Contains(seen, id => id.Value == "next/stop");
        Assert.Contains(seen, id => id.Value.StartsWith("next/cane-", StringComparison.Ordinal));
    }

    [Fact]
    public void A_step_says_how_little_and_what_it_may_cost_and_is_not_said_again_before_it_was_tried()
    {
        var scene = new AdviceScene();
        scene.Found("tip-corners-thick");
        QuietStep line;
        while ((line = Line(scene)!).Kind != ProposalKind.Cane)
        {
            scene.Say(Writer.Value(AdviceSetAside.Of(line.Id)));
        }

        Assert.NotEmpty(line.HowLittle);
        Assert.EndsWith(".", line.MayCost, StringComparison.Ordinal);
        Assert.DoesNotContain(". ", line.MayCost, StringComparison.Ordinal);
        var kind = line.Proposal.Adjustment!.Value;
        scene.Do(new(kind, line.Proposal.Place!.Value));
        Assert.NotEqual(line.Id, Line(scene)?.Id);
    }

    [Fact]
    public void A_reed_that_is_stopped_or_has_its_verdict_is_left_in_peace()
    {
        var stopped = new AdviceScene();
        stopped.Say(Writer.Value(Stopped.Of()));
        var done = new AdviceScene();
        done.Say(Writer.Value(Verdict.Of(VerdictKind.Improved)));

        Assert.Null(Line(stopped));
        Assert.Null(Line(done));
        done.Say(Writer.Work());
        Assert.NotNull(Line(done));
    }

    private static QuietStep? Line(AdviceScene scene) =>
        QuietStep.Of(ReedEvidence.Of(Catalogue.Shipped, scene.Writer.Log, scene.Reed, scene.Batch), scene.Writer.Log);
}
