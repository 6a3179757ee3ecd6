using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A thing is said once in a letter, and an answer that falls short is told to the teacher.</summary>
public sealed class LetterSaidOnceTests
{
    [Fact]
    public void What_a_fault_does_is_told_with_the_reed_and_not_with_the_lesson_again() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        scene.Thread = new LetterThread(new FindingKindId("tip-corners-thick"), null, "In both reeds.");
        for (var number = 1; number <= 2; number++)
        {
            scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        }

        Assert.Single(Regex.Matches(Text(scene), "soft(est)? (starts? fuzzy|starts fuzzy)|very softest starts|puff of air"));
        Assert.Matches("corners of the tip", Block(scene, "lesson"));
    });

    [Fact]
    public void A_taste_that_is_shared_is_told_with_the_mark_and_not_again() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, opening: "1");
        scene.Log(1, Finding.Of(new("more-open-than-liked"), FindingCharacter.Taste, new Place(Zone.Opening)));

        Assert.Single(Regex.Matches(Block(scene, "reed-1-story"), "more open than I would"));
        Assert.DoesNotMatch("(found|noticed|met) it too", Block(scene, "reed-1-story"));
    });

    [Theory]
    [InlineData("Which one should I play first, and how long should I soak it?", "Begin with number two.", true)]
    [InlineData("Which one should I play first, and how long should I soak it?", "Number two. Three minutes will do.", false)]
    [InlineData("How long will it last? And may I lend it?", "About two weeks", true)]
    [InlineData("How many days should I wait between scraping and playing?", "Two or three days", false)]
    public void An_answer_to_half_a_question_is_told_to_the_teacher(string question, string answer, bool told) => Assert.Equal(told, Short(question, answer).Count > 0);

    [Theory]
    [InlineData("Which one should I play first?", "Begin with number one", true)]
    [InlineData("Which one should I play first?", "Begin with reed 1", true)]
    [InlineData("Which one should I play first?", "Begin with number two", false)]
    public void An_answer_that_sends_them_to_a_reed_that_is_given_up_is_told_to_the_teacher(string question, string answer, bool told)
    {
        var gaps = Short(question, answer);

        Assert.Equal(told, gaps.Count > 0);
        Assert.All(gaps, gap => Assert.True(gap is { IsToldOnly: true, Part: "answers" } && gap.Words.Contains("reed one can’t be saved", StringComparison.Ordinal)));
    }

    private static IEnumerable<int> Seeds => Enumerable.Range(1, 25);

    private static List<LetterGap> Short(string question, string answer)
    {
        var scene = Scene(1, question);
        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved, "The cane is cracked."));
        scene.Batch.Questions.ToList().ForEach(asked => asked.AnswerWith(answer, scene.Batch.SubmittedAt));
        return [.. LetterComposer.Gaps(scene.Material).Where(gap => gap.Kind == GapKind.AnswerFallsShort)];
    }

    private static LetterScene Scene(int seed, string? question = null, string? opening = null)
    {
        var scene = new LetterScene(2, new Guid(seed, 3, 3, new byte[8]), form =>
        {
            form.Questions = question;
            form.Reeds.ToList().ForEach(reed => (reed.Bothers, reed.Opening, reed.Questions) = ("Nothing", opening, null));
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        scene.Arrive(2);
        return scene;
    }

    private static string Text(LetterScene scene) => string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text));

    private static string Block(LetterScene scene, string key) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == key).Text;
}
