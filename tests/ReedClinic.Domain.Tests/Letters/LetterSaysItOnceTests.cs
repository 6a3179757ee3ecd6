using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was asked, suspected or found isn’t said once more in other words that contradict it.</summary>
public sealed class LetterSaysItOnceTests
{
    private const string Asked = "Is it too open?";

    [Fact]
    public void A_question_that_is_the_whole_complaint_is_quoted_once_and_not_asked_back() => Assert.All(Seeds(), seed =>
    {
        var scene = new LetterScene(1, seed, form => (form.Questions, form.Reeds[0].Bothers) = (null, Asked));
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        var question = Assert.Single(scene.Batch.Questions);
        question.AnswerWith("For a beginner, yes", DateTimeOffset.UnixEpoch);

        var text = string.Join('\n', LetterComposer.Compose(scene.Material).Blocks.Where(block => block.Reed is not null).Select(block => block.Text));
        Assert.Equal(2, text.Split(Asked).Length);
        Assert.DoesNotMatch("(?i)tell me|let me know|write to me", text);
        Assert.Matches("(?i)(question|asked|words)( itself| is this)?: for a beginner, yes", text);
    });

    [Fact]
    public void What_a_test_shows_is_not_called_uncertain_beside_it() => Assert.All(Seeds(), seed =>
    {
        var scene = new LetterScene(2, seed, form => form.Reeds[0].Bothers = form.Reeds[1].Bothers = "Too open for me");
        foreach (var number in (int[])[1, 2])
        {
            scene.Arrive(number);
            scene.Log(number, Test.Of(TestKind.Opening, 4));
            scene.Log(number, Finding.Of(new("opening-wide"), FindingCharacter.Fault, new Place(Zone.Opening), certainty: Certainty.Suspected));

            var story = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == $"reed-{number}-story").Text;
            Assert.Matches(@"opening( \([^)]*\))? was very (wide|large)", story);
            Assert.DoesNotMatch("(?i)not certain|not sure|can’t be sure|perhaps|maybe|may be|possible", story);
            Assert.Contains("fits", story, StringComparison.Ordinal);
        }
    });

    [Fact]
    public void The_lesson_tells_what_became_of_what_was_suspected() => Assert.All(Seeds(), seed =>
    {
        var scene = new LetterScene(2, seed) { Thread = new(new("tip-corners-thick"), null, null) };
        foreach (var number in (int[])[1, 2])
        {
            scene.Arrive(number);
            var found = scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), certainty: number == 1 ? Certainty.Suspected : Certainty.Certain));
            if (number == 1)
            {
                scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));
            }
        }

        Assert.Matches("reed one.*no sign of it", LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "lesson").Text);
    });

    private static IEnumerable<Guid> Seeds() => Enumerable.Range(1, 16).Select(seed => new Guid(seed, 0, 0, [1, 2, 3, 4, 5, 6, 7, 8]));
}
