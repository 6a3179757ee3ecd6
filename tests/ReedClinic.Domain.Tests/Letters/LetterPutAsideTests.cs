using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A reed that was put aside and not taken up again.</summary>
public sealed class LetterPutAsideTests
{
    private static readonly string[] NotTakenUp = ["come back to it", "taken it up again"];

    [Theory]
    [InlineData(null, "put it aside|put this one aside", "")]
    [InlineData("it needs a dry day", "put it aside|put this one aside", "it needs a dry day.")]
    [InlineData("Ask Maren, corners", "put it aside|put this one aside", "")]
    public void That_a_reed_was_put_aside_is_said_and_told_to_the_teacher(string? why, string said, string reason)
    {
        var scene = Scene();
        scene.Log(1, Verdict.Of(VerdictKind.Improved));
        scene.Log(1, Parked.Of(why));

        var story = Story(scene);
        Assert.Matches(said, story);
        Assert.Contains(NotTakenUp, words => story.Contains(words, StringComparison.Ordinal));
        Assert.Contains(reason, story, StringComparison.Ordinal);
        Assert.DoesNotContain("Ask Maren", story, StringComparison.Ordinal);
        var gap = Assert.Single(LetterComposer.Gaps(scene.Material), one => one.Kind == GapKind.PutAside);
        Assert.StartsWith("Reed one was put aside for now", gap.Words, StringComparison.Ordinal);
        Assert.Contains(why ?? "", gap.Words, StringComparison.Ordinal);
        Assert.False(gap.IsToldOnly);
    }

    [Fact]
    public void Without_a_verdict_it_is_one_gap_that_says_both()
    {
        var scene = Scene();
        scene.Log(1, Parked.Of());

        var gap = Assert.Single(LetterComposer.Gaps(scene.Material), one => one.Reed == scene.Reed(1).Id && one.Kind is GapKind.PutAside or GapKind.ReedWithoutVerdict);
        Assert.EndsWith("was put aside for now and has no verdict.", gap.Words, StringComparison.Ordinal);
        Assert.Matches("aside", Story(scene));
    }

    [Fact]
    public void What_was_taken_up_again_is_no_longer_aside()
    {
        var scene = Scene();
        scene.Log(1, Parked.Of("it needs a dry day"));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));

        Assert.DoesNotContain("aside", Story(scene), StringComparison.Ordinal);
        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), one => one.Kind == GapKind.PutAside);
    }

    [Fact]
    public void Without_a_verdict_it_comes_home_as_it_is_may_be_played_gently_and_what_comes_next_is_said()
    {
        var scene = Scene();
        scene.Log(1, Parked.Of());

        Assert.Matches(@"parcel (just |)as it is now", Story(scene));
        var use = Use(scene);
        Assert.Matches("(play|played)[^.]*gently", use);
        Assert.Contains("next", use, StringComparison.Ordinal);
        Assert.DoesNotContain("for a few days", Story(scene), StringComparison.Ordinal);
        Assert.DoesNotContain("first", use, StringComparison.Ordinal);
        Assert.DoesNotContain(LetterComposer.Compose(scene.Material).Blocks, block => block.Kind == BlockKind.Care && block.Text.Contains("first days", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_its_reason_tells_of_rest_that_goes_before_and_nothing_says_play_it_gently()
    {
        var scene = Scene();
        scene.Log(1, Parked.Of("it needs another day to rest"));

        Assert.DoesNotContain("gently", Use(scene), StringComparison.Ordinal);
        Assert.Matches("(?i)before you play it", Use(scene));
    }

    [Theory]
    [InlineData(VerdictKind.NotToBeSaved)]
    [InlineData(VerdictKind.StoppedToProtectIt)]
    public void A_verdict_says_itself_whether_it_may_be_played(VerdictKind verdict)
    {
        var scene = Scene();
        scene.Log(1, Verdict.Of(verdict));
        scene.Log(1, Parked.Of());

        Assert.DoesNotContain("gently", Use(scene), StringComparison.Ordinal);
    }

    [Fact]
    public void What_has_mould_is_not_to_be_played_though_it_was_put_aside()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1, new ReedArrival(Presence.Here, Fitness: Fitness.Mould));
        scene.Log(1, Parked.Of());

        Assert.DoesNotContain("gently", Use(scene), StringComparison.Ordinal);
        Assert.DoesNotContain("as it is now", Story(scene), StringComparison.Ordinal);
    }

    private static string Use(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.SingleOrDefault(block => block.Key == "reed-1-use")?.Text ?? "";

    private static string Story(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;

    private static LetterScene Scene()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Domain.Bench.Test.Of(TestKind.LowResponse, 1));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Domain.Bench.Test.Of(TestKind.LowResponse, 3));
        return scene;
    }
}
