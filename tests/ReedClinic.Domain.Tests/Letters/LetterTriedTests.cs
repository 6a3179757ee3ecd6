using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was tried before the last work isn't told as how the reed plays now, and only a reed that plays well is sent to be played first.</summary>
public sealed class LetterTriedTests
{
    private const string Among = @"(?i)\bfirst\b|\bturns?\b|\bothers?\b|\brests\b";

    [Fact]
    public void A_reed_that_was_clipped_and_not_tried_again_is_told_so_in_table_caption_and_gap()
    {
        var scene = Clipped();

        var draft = LetterComposer.Compose(scene.Material);
        var now = draft.Blocks.Single(block => block.Key == "reed-1-now");
        Assert.Equal("high first, then low as well; at C (last tried before the last cut)", Assert.Single(now.Rows).Now);
        Assert.Matches("(?i)after the last", now.Text);
        Assert.EndsWith(". After the last work it was not heard again", draft.Reeds[0].Crow!.Sentence, StringComparison.Ordinal);
        var gap = Assert.Single(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.NotTriedSinceTheWork);
        Assert.Equal(scene.Reed(1).Id, gap.Reed);
    }

    [Fact]
    public void A_reed_that_was_tried_again_is_told_as_it_plays_now()
    {
        var scene = Clipped();
        scene.Log(1, Test.Of(TestKind.Crow, 0, Pitch("C")));

        var draft = LetterComposer.Compose(scene.Material);
        var now = draft.Blocks.Single(block => block.Key == "reed-1-now");
        Assert.Equal("high first, then low as well; at C", Assert.Single(now.Rows).Now);
        Assert.DoesNotMatch("(?i)after the last", now.Text);
        Assert.DoesNotContain("not heard again", draft.Reeds[0].Crow!.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.NotTriedSinceTheWork);
    }

    [Fact]
    public void A_test_that_was_not_repeated_stands_as_from_before_where_another_was()
    {
        var scene = Clipped();
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3));

        var rows = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-now").Rows;
        Assert.Equal([true, false], rows.Select(row => row.Now!.EndsWith(" (last tried before the last cut)", StringComparison.Ordinal)));
        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.NotTriedSinceTheWork);
    }

    [Fact]
    public void Neither_a_reed_a_semitone_flat_nor_one_that_nobody_played_is_sent_to_be_played()
    {
        var scene = new LetterScene(3);
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number);
        }

        scene.Log(1, Test.Of(TestKind.Crow, 0, Pitch("B")));
        scene.Log(1, Verdict.Of(VerdictKind.LeftAsItCame));
        scene.Log(2, Verdict.Of(VerdictKind.LeftAsItCame));
        scene.Log(3, Test.Of(TestKind.SoftestStart, 0));
        scene.Log(3, Verdict.Of(VerdictKind.Improved));
        Assert.DoesNotContain(LetterComposer.Compose(scene.Material).Blocks, block => block.Kind == BlockKind.ReedUse);

        scene.Log(3, Test.Of(TestKind.SoftestStart, 3));
        var use = Assert.Single(LetterComposer.Compose(scene.Material).Blocks, block => block.Kind == BlockKind.ReedUse);
        Assert.Equal(scene.Reed(3).Id, use.Reed);
        Assert.Matches(Among, use.Text);
    }

    [Fact]
    public void A_reed_that_was_soaked_before_it_was_tried_is_told_as_tried_when_it_came()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new("soak"), new Place(Zone.WholeReed), new Amount(Words: "three minutes")));
        scene.Log(1, Test.Of(TestKind.Crow, 3, Pitch("C -20")));
        Assert.DoesNotMatch("(?i)soaked|one pass", Story(scene));

        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.Crow, 0, Pitch("C")));
        scene.Log(1, Adjustment.Of(new("soak"), new Place(Zone.WholeReed)));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));

        var row = Assert.Single(LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-now").Rows);
        Assert.NotNull(row.Before);
        Assert.DoesNotContain("before the last work", row.Now, StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)(zero|two) pass", Story(scene));
        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.NotTriedSinceTheWork);
    }

    private static string Story(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;

    private static LetterScene Clipped()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.Crow, 3, Pitch("C -20")));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.Crow, 0, Pitch("C")));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Stopped.Of("every stroke was giving less"));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));
        return scene;
    }

    private static SaidPitch Pitch(string text) => LetterScene.Done(SaidPitch.Read(text, Tuning.Standard));
}
