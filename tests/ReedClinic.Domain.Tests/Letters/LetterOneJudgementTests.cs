using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Of one thing a letter has one judgement, the latest, and every complaint is met by an answer or by a question.</summary>
public sealed class LetterOneJudgementTests
{
    [Theory]
    [InlineData("It is just dull.")]
    [InlineData("It smells of cellar")]
    public void What_is_right_now_is_not_nearly_right_as_well(string bothers) => Assert.All(Enumerable.Range(1, 20), seed =>
    {
        var scene = Scene(1, seed, bothers);
        scene.Log(1, Test.Of(TestKind.Edge, 1));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.Edge, 2));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));

        var text = Part(scene, "reed-1");
        Assert.DoesNotMatch("nearer to right|nearly the edge|closer to right", text);
        Assert.Single(Regex.Matches(text, @"the edge of the sound (\([^)]*\) )?(is|was) right"));
    });

    [Fact]
    public void What_is_the_same_as_on_the_reed_before_is_asked_back_and_the_teacher_is_told()
    {
        var scene = Scene(2, 1, "Soft notes don't start.", "The same, and it feels stiff.");
        scene.Log(2, Test.Of(TestKind.Effort, 4));

        Assert.Matches("(?i)soft starts", Part(scene, "reed-2"));
        var gap = Assert.Single(Gaps(scene), gap => gap.Kind == GapKind.UnansweredComplaint && gap.Reed == scene.Reed(2).Id);
        Assert.Contains("soft starts", gap.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("how hard", gap.Words, StringComparison.Ordinal);

        scene.Waived = new Dictionary<string, string> { [gap.Key] = "my lip was tired that day" };
        Assert.Contains("my lip was tired that day.", Part(scene, "reed-2"), StringComparison.Ordinal);

        scene.Log(2, Test.Of(TestKind.SoftestStart, 0));
        Assert.DoesNotContain(Gaps(scene), one => one.Kind == GapKind.UnansweredComplaint && one.Reed == scene.Reed(2).Id);
    }

    [Fact]
    public void A_complaint_answered_by_hand_is_not_asked_about()
    {
        var scene = Scene(1, 1, "Soft notes don't start.");
        scene.Log(1, Test.Of(TestKind.Effort, 4));
        var letter = LetterComposer.Compose(scene.Material);
        var edited = letter.EditedTo(new Dictionary<string, string> { ["reed-1-story"] = "They start now." }, letter);

        Assert.Contains(LetterEdits.Gaps(letter, scene.Material), gap => gap is { Kind: GapKind.UnansweredComplaint, IsToldOnly: true });
        Assert.DoesNotContain(LetterEdits.Gaps(edited, scene.Material), gap => gap.Kind == GapKind.UnansweredComplaint);
    }

    [Theory]
    [InlineData("Nothing much.", false)]
    [InlineData("It smells of cellar", true)]
    public void What_is_not_recognised_and_not_answered_by_a_fault_is_told_to_the_teacher(string bothers, bool told)
    {
        var scene = Scene(1, 1, bothers);
        scene.Log(1, Test.Of(TestKind.Opening, 2));

        Assert.Equal(told, Gaps(scene).Any(gap => gap.Kind == GapKind.UnansweredComplaint));
    }

    [Theory]
    [InlineData("Does it need more scraping?", "A few strokes at the corners.", true)]
    [InlineData("What does it want?", "Thin the corners when you like.", true)]
    [InlineData("Do I need a new case?", "Not yet.", false)]
    public void An_answer_that_speaks_of_scraping_asks_to_play_first_and_warns(string question, string answer, bool warns)
    {
        var scene = new LetterScene(1, change: form => form.Questions = question);
        scene.Arrive(1);
        scene.Batch.Questions[0].AnswerWith(answer, scene.Batch.SubmittedAt);

        var said = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "answers").Paragraphs[^1].Sentences.Select(sentence => sentence.Text).ToList();
        if (!warns)
        {
            Assert.DoesNotContain(SaidCautions.NotYet, said);
            return;
        }

        Assert.Equal([SaidCautions.NotYet, SaidCautions.KnifeBesideAnAnswer], said.TakeLast(2));
    }

    [Fact]
    public void A_fault_of_one_place_is_told_once_and_of_another_place_in_few_words()
    {
        var scene = Scene(1, 1, "It smells of cellar");
        scene.Log(1, Fault("tip-corners-thick", Sides.Both));
        scene.Log(1, Fault("back-thick", Sides.Both));
        scene.Log(1, Fault("back-thick", Sides.Both));
        scene.Log(1, Fault("back-thick", Sides.Left));

        var text = Part(scene, "reed-1");
        Assert.Single(Regex.Matches(text, "(?i)the back\\b"));
        Assert.Matches("the same (was to be seen |showed )?on the left", text);
    }

    [Fact]
    public void That_something_was_not_tried_again_is_said_once() => Assert.All(Enumerable.Range(1, 20), seed =>
    {
        var scene = Scene(1, seed, "It smells of cellar");
        foreach (var kind in new[] { TestKind.Opening, TestKind.Seal, TestKind.Peep, TestKind.Effort, TestKind.Depth, TestKind.Swell, TestKind.Edge })
        {
            scene.Log(1, Test.Of(kind, 1));
        }

        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.Edge, 2));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));

        Assert.Single(Regex.Matches(Part(scene, "reed-1-now"), "(not|n’t) [a-z ]*again|not (come back|repeat)"));
    });

    [Fact]
    public void Rest_after_work_is_for_reeds_that_were_worked_on() => Assert.All(Enumerable.Range(1, 20), seed =>
    {
        var scene = Scene(3, seed, "Soft notes don't start.", "Nothing", "Nothing");
        scene.Log(1, Test.Of(TestKind.SoftestStart, 0));
        Assert.DoesNotMatch("(?i)ten minutes|after (such )?work|scraping|worked on|fourth", Part(scene, "care"));

        scene.Log(2, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(2, Test.Of(TestKind.SoftestStart, 3));
        scene.Log(2, Verdict.Of(VerdictKind.Improved));
        Assert.Matches("ten minutes", Part(scene, "care"));
        Assert.Matches("reed two", Part(scene, "care"));

        scene.Log(2, Verdict.Of(VerdictKind.NeedsPlayingIn));
        Assert.DoesNotContain("ten minutes", Part(scene, "care"), StringComparison.OrdinalIgnoreCase);
    });

    [Fact]
    public void Which_to_play_first_is_said_by_the_teacher_alone()
    {
        var scene = Scene(2, 1, "Nothing", "Nothing");
        scene.Log(2, Test.Of(TestKind.SoftestStart, 3));
        scene.Log(2, Verdict.Of(VerdictKind.LeftAsItCame));
        Assert.Contains("first", Part(scene, "reed-2-use"), StringComparison.Ordinal);

        scene.Batch.Questions[0].AnswerWith("Begin with number one", scene.Batch.SubmittedAt);
        Assert.DoesNotContain("first", Part(scene, "reed-2-use"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reason_with_a_colon_follows_a_whole_sentence() => Assert.All(Enumerable.Range(1, 40), seed => Assert.All([VerdictKind.Improved, VerdictKind.StoppedToProtectIt], verdict =>
    {
        var scene = Scene(1, seed, "Nothing");
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Stopped.Of("Every start was clean: nothing was left to do"));
        scene.Log(1, Verdict.Of(verdict));

        Assert.Matches("I [a-z ]+[.] Every start was clean: nothing was left to do[.]", Part(scene, "reed-1-story"));
        Assert.DoesNotMatch("(?i)(what|this) made me|this is why|reason|in mind", Part(scene, "reed-1-story"));
    }));

    [Fact]
    public void Nothing_is_told_as_better_where_the_log_shows_nothing() => Assert.All(Enumerable.Range(1, 20), seed =>
    {
        var scene = Scene(1, seed, "Nothing");
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));

        Assert.DoesNotMatch("(?i)better|change|more in it|the difference", Part(scene, "reed-1"));
        Assert.Contains(Gaps(scene), gap => gap.Kind == GapKind.WorkNotInTheLog);
    });

    [Fact]
    public void Each_step_of_the_crow_is_told_in_a_whole_sentence()
    {
        var scene = Scene(1, 1, "Nothing");
        scene.Log(1, Test.Of(TestKind.Crow, pitch: Pitch("C -20")));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.Crow, pitch: Pitch("C")));

        var crow = LetterComposer.Compose(scene.Material).Reeds[0].Crow!;
        Assert.Matches("^I [a-z].*, and after that the crow stood 20 cents higher$", crow.Moves[0].Sentence);
    }

    private static Domain.Outcomes.Outcome<Finding> Fault(string kind, Sides sides) => Finding.Of(new(kind), FindingCharacter.Fault, new Place(Zone.Windows, Sides: sides));

    private static SaidPitch Pitch(string text) => LetterScene.Done(SaidPitch.Read(text, Tuning.Standard));

    private static LetterScene Scene(int reeds, int seed, params string[] bothers)
    {
        var scene = new LetterScene(reeds, new Guid(seed, 7, 7, new byte[8]), form =>
        {
            foreach (var (words, index) in bothers.Select((words, index) => (words, index)))
            {
                form.Reeds[index].Bothers = words;
                form.Reeds[index].Questions = null;
            }
        });
        for (var number = 1; number <= reeds; number++)
        {
            scene.Arrive(number, new ReedArrival(Presence.Here, Fitness: Fitness.Fit));
        }

        return scene;
    }

    private static IEnumerable<LetterGap> Gaps(LetterScene scene) =>
        LetterComposer.Gaps(scene.Material).Concat(LetterEdits.Gaps(LetterComposer.Compose(scene.Material), scene.Material));

    private static string Part(LetterScene scene, string key) =>
        string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Where(block => block.Key.StartsWith(key, StringComparison.Ordinal)).Select(block => block.Text));
}
