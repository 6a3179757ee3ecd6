using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter never says what the log doesn't.</summary>
public sealed class LetterTruthTests
{
    [Fact]
    public void What_was_asked_about_a_missing_reed_is_answered_with_the_rest()
    {
        var scene = new LetterScene();
        scene.Arrive(1);
        scene.Arrive(2, new ReedArrival(Presence.Missing));
        scene.Arrive(3);
        scene.Batch.Questions.Single(question => question.Reed == scene.Reed(2).Id).AnswerWith("I can say once I have seen it", scene.Batch.SubmittedAt);

        Assert.Contains("I can say once I have seen it.", Text(scene, "answers"), StringComparison.Ordinal);
    }

    [Fact]
    public void Harm_done_at_the_bench_is_never_told_as_found_on_arrival()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Finding.Of(
            new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), arose: Arose.CausedByTheWork));

        var story = Text(scene, "reed-1-story");

        Assert.Contains("This came about at my bench", story, StringComparison.Ordinal);
        foreach (var opening in new[] { "when it came", "On the first day", "at first", "When it arrived" })
        {
            Assert.DoesNotContain(opening, story, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Work_without_a_test_after_it_is_not_said_to_have_been_tried()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(null, 0.1m)));

        Assert.Contains("I worked on it in one small pass.", Text(scene, "reed-1-story"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_letter_about_no_reed_or_one_reed_speaks_of_no_others(int here)
    {
        for (var seed = 0; seed < 12; seed++)
        {
            var scene = new LetterScene(1);
            if (here == 1)
            {
                scene.Arrive(1);
            }

            var letter = string.Join("\n", LetterComposer.Compose(scene.Material).Blocks
                .Where(block => block.Key is "greeting" or "lesson").Select(block => $"{block.Heading} {block.Text}"));
            foreach (var wrong in new[] { "no reeds", "your reeds", "side by side", "have in common" })
            {
                Assert.DoesNotContain(wrong, letter.Replace("None of your reeds has", "", StringComparison.Ordinal).Replace("In all three reeds", "", StringComparison.OrdinalIgnoreCase), StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Whoever_is_under_eighteen_is_told_about_knives_in_every_letter()
    {
        var scene = new LetterScene(1) { Thread = LetterThread.Nothing };
        scene.Arrive(1);

        Assert.Contains("Under eighteen", Text(scene, "cautions"), StringComparison.Ordinal);
    }

    private static string Text(LetterScene scene, string key) =>
        LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == key).Text;
}
