using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>How long a reed is played in its first days is the teacher’s to say: where that was said, no other minutes stand beside it.</summary>
public sealed class LetterOwnPaceTests
{
    [Theory]
    [InlineData("Give it twenty minutes a day for a week before the concert.")]
    [InlineData("Don't play it longer than five minutes a day before the next lesson.")]
    [InlineData("Give it half an hour each day before the exam.")]
    [InlineData("Let it have no more than five minutes twice a day before the recital.")]
    [InlineData("Give it a little every day before the concert.")]
    public void Where_the_teacher_said_how_long_no_other_minutes_are_advised(string words) => Assert.DoesNotContain("ten minutes", Care(words), StringComparison.Ordinal);

    [Theory]
    [InlineData("Let it rest a day before the concert.")]
    [InlineData("Give it a day off before the lesson.")]
    [InlineData("Give it a rest before the next rehearsal.")]
    public void A_rest_before_a_day_leaves_the_first_days_as_they_are(string words) => Assert.Contains("ten minutes", Care(words), StringComparison.Ordinal);

    [Fact]
    public void A_rest_before_a_day_is_put_behind_the_first_days()
    {
        Assert.Contains("comes after them, right before you need it", Care("Let it rest a day before the concert."), StringComparison.Ordinal);
        Assert.DoesNotContain("right before you need it", Care("Give it half an hour each day before the exam.") + Care("It is easy to play now."), StringComparison.Ordinal);
    }

    private static string Care(string words)
    {
        var scene = new LetterScene(1, new Guid(2, 7, 7, new byte[8]), form => form.Questions = null) { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Domain.Bench.Test.Of(TestKind.SoftestStart, 3));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, words));
        return LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.Care).Text;
    }
}
