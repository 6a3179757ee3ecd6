using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What bothers the student is taken up first of all that is said of a reed.</summary>
public sealed partial class LetterComplaintTests
{
    [Fact]
    public void What_was_found_and_became_of_the_complaint_stands_before_thread_and_overlap()
    {
        var scene = Scene("Too open for me.");
        scene.Log(1, Test.Of(TestKind.Opening, 4));
        scene.Log(1, Adjustment.Of(new("close-press"), new Place(Zone.Opening)));
        scene.Log(1, Test.Of(TestKind.Opening, 2));

        var (answer, rest) = First(scene);
        Assert.Contains("opening was very", answer.Text, StringComparison.Ordinal);
        Assert.Matches("(work|end) it was (right|as it should be)", answer.Text);
        Assert.Equal(2, answer.From.Count);
        Assert.Contains(rest, sentence => sentence.Text.Contains("overlap", StringComparison.Ordinal) || sentence.Text.Contains("thread", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Too open for me.", 4, "too|the same|it too")]
    [InlineData("Too open for me.", 2, "otherwise|did not show")]
    [InlineData("It is too closed.", 4, "otherwise|did not show")]
    [InlineData("The low notes keep me waiting", 1, null)]
    [InlineData("It smells of cellar", 2, "let me know|tell me|write to me")]
    [InlineData("It smells of cellar", 4, "let me know|tell me|write to me")]
    public void What_the_test_says_of_it_is_said(string bothers, int opening, string? says)
    {
        var scene = Scene(bothers);
        scene.Log(1, Test.Of(TestKind.Opening, opening));

        var (answer, _) = First(scene);
        Assert.Equal(says?.StartsWith("let me", StringComparison.Ordinal) == false, answer.Text.Contains("opening was", StringComparison.Ordinal));
        Assert.Matches(says ?? "(?i)not", answer.Text);
        Assert.NotEmpty(answer.From);
    }

    [Theory]
    [InlineData(FindingEnding.Gone, "no longer so")]
    [InlineData(FindingEnding.Unchanged, "as it was|not changed")]
    [InlineData(FindingEnding.LeftOnPurpose, "on purpose")]
    [InlineData(null, "(found|noticed|met|agree|bear)")]
    public void What_was_found_of_it_is_said_with_its_end(FindingEnding? ending, string says)
    {
        var scene = Scene("It gapes, too wide for me");
        var found = scene.Log(1, Finding.Of(new("opening-wide"), FindingCharacter.Fault, new Place(Zone.Opening)));
        if (ending is { } known)
        {
            scene.Log(1, FindingEnded.Of(found, known));
        }

        var (answer, _) = First(scene);
        Assert.Matches(says, answer.Text);
        Assert.Contains(found, answer.From);
    }

    [Fact]
    public void Where_nothing_bothers_what_was_found_is_told_once()
    {
        var scene = Scene("Nothing");
        var found = scene.Log(1, Finding.Of(new("dirty-inside"), FindingCharacter.Fault, new Place(Zone.Inside)));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));

        var (answer, _) = First(scene);
        Assert.Matches("caught (inside|between the blades)", answer.Text);
        Assert.Matches("put right|no longer|in order|now", answer.Text);
        Assert.Single(LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Paragraphs.SelectMany(paragraph => paragraph.Sentences), sentence => sentence.From.Contains(found));
    }

    [Fact]
    public void A_complaint_is_answered_from_the_tests_that_bear_on_it_where_its_own_was_not_made()
    {
        var scene = Scene("Fuzzy too, and a little flat by the end of a rehearsal.");
        scene.Log(1, Test.Of(TestKind.Crow, pitch: Pitch("B +30")));
        scene.Log(1, Test.Of(TestKind.TonguedStarts, 1));
        scene.Log(1, Adjustment.Of(new("clip"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.Crow, pitch: Pitch("C")));
        scene.Log(1, Test.Of(TestKind.TonguedStarts, 3));

        var text = Text(scene);
        Assert.Matches("tongued notes were unsure.*they were clean every time.*70 cents below C.*it stood at C", Explained().Replace(text, ""));
        Assert.DoesNotMatch("wrote nothing down|made no note|have no note|(noted|wrote down) nothing", text);
    }

    [Fact]
    public void Where_something_became_better_the_letter_does_not_say_that_nothing_was_written_down()
    {
        var scene = Scene("The low notes keep me waiting");
        scene.Log(1, Test.Of(TestKind.SoftestStart, 0));
        scene.Log(1, Adjustment.Of(new("clip"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 2));

        Assert.DoesNotMatch("wrote nothing down|made no note|have no note|(noted|wrote down) nothing", Text(scene));
    }

    [Fact]
    public void Nothing_is_made_up_for_a_reed_without_a_log() => Assert.DoesNotContain("opening", Text(Scene("Too open for me.")), StringComparison.Ordinal);

    [Theory]
    [InlineData("It goes flat. Why does it do that? I gave up.", "Why does it do that?")]
    [InlineData("Stuffy, and why is it so much worse in the evening?", "Stuffy, and why is it so much worse in the evening?")]
    [InlineData("Too open?", "Too open?")]
    [InlineData("I wonder why it is flat.", "I wonder why it is flat.")]
    [InlineData("I wondered why it is flat.", null)]
    public void A_question_within_a_complaint_is_to_be_answered(string bothers, string? asked)
    {
        var scene = Scene(bothers);

        var questions = scene.Batch.Questions.Where(question => question.Reed == scene.Reed(1).Id).Select(question => question.Text);
        Assert.Equal(asked is null ? [] : [asked], questions);
        Assert.Equal(asked is not null, LetterComposer.Gaps(scene.Material).Any(gap => gap.Kind == GapKind.UnansweredQuestion && gap.Reed is not null));
    }

    [Fact]
    public void One_place_against_another_keeps_its_word()
    {
        var scene = Scene("It is lopsided");
        scene.Log(1, Finding.Of(
            new("left-right-uneven"), FindingCharacter.Fault, new Place(Zone.TipCorners, Sides: Sides.Left), FindingShape.Comparison, Relation.ThickerThan, new Place(Zone.TipCorners, Sides: Sides.Right)));

        Assert.Contains("(at the corners of the tip, the left thicker than the right)", Text(scene), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Nothing, it is my best one.")]
    [InlineData("Nothing, it is my best one. The response is quick.")]
    [InlineData("Nothing. It is never flat, and the low notes are easy.")]
    public void Nothing_is_answered_as_no_complaint(string bothers)
    {
        var scene = Scene(bothers);
        scene.Log(1, Test.Of(TestKind.TonguedStarts, 3));

        Assert.DoesNotMatch("(?i)believe|take your word|cause|comes from|explain|tried just that|looked into|otherwise|did not show|as for|tell me", Text(scene));
    }

    [Theory]
    [InlineData("Well, it sounds like a duck.", "explain")]
    [InlineData("Nothing, really, but it feels odd", "explain")]
    [InlineData("Nothing much. It goes flat after a page.", "pitch")]
    [InlineData("Nothing, it is my best one, but the low notes are late", "low notes")]
    [InlineData("Well, it is flat", "pitch")]
    public void What_takes_a_nothing_back_is_answered(string bothers, string says)
    {
        var scene = Scene(bothers);
        scene.Log(1, Test.Of(TestKind.TonguedStarts, 3));

        Assert.Matches(says, Text(scene));
        Assert.Matches("(?i)tell me|let me know|write to me", Text(scene));
    }

    [Fact]
    public void Of_two_opposite_complaints_each_is_answered()
    {
        var scene = Scene("Too open at first, and it closes up when I play");
        scene.Log(1, Test.Of(TestKind.Opening, 4));
        scene.Log(1, Finding.Of(new("closes-in-play"), FindingCharacter.Fault, new Place(Zone.Opening)));
        Assert.Matches("opening was.*how it closes: I (found|noticed|met) it too", Explained().Replace(Text(scene), ""));
        Assert.Single(OpeningWas().Matches(Explained().Replace(Text(scene), "")));
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, false)]
    [InlineData(null, true)]
    public void What_is_sharp_is_asked_back_where_only_the_flat_side_was_met(int? tuning, bool asked)
    {
        var scene = Scene("Flat low down, sharp on top");
        scene.Log(1, tuning is { } step ? Test.Of(TestKind.TuningNote, step) : Test.Of(TestKind.Seal, 3));

        Assert.Equal(asked, Text(scene).Contains("what is sharp", StringComparison.Ordinal));
        Assert.Equal(asked, LetterEdits.Gaps(LetterComposer.Compose(scene.Material), scene.Material).Any(gap => gap.Kind == GapKind.UnansweredComplaint));
    }

    private static LetterScene Scene(string bothers)
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Bothers = bothers);
        scene.Arrive(1, new ReedArrival(Presence.Here, "pencil dot", WindingHand.Left, Overlap.UpperToTheLeft, true, null, Fitness.Fit));
        return scene;
    }

    private static (LetterSentence Answer, IReadOnlyList<LetterSentence> More) First(LetterScene scene)
    {
        var said = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Paragraphs[0].Sentences;
        Assert.Contains("“", said[0].Text, StringComparison.Ordinal);
        return (said[1] with { Text = Explained().Replace(said[1].Text, "") }, [.. said.Skip(2)]);
    }

    private static SaidPitch Pitch(string text) => LetterScene.Done(SaidPitch.Read(text, Tuning.Standard));

    private static string Text(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;

    [GeneratedRegex("opening was")]
    private static partial Regex OpeningWas();

    // A word of the trade is explained in brackets where it is met first.
    [GeneratedRegex(@" \([^)]*\)")]
    private static partial Regex Explained();
}
