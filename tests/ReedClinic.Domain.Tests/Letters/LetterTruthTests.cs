using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
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

        Assert.Contains("at my bench", story, StringComparison.Ordinal);
        foreach (var opening in new[] { "when it came", "On arrival", "When it arrived" })
        {
            Assert.DoesNotContain(opening, story, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Work_without_a_test_after_it_is_not_said_to_have_been_tried()
    {
        for (var seed = 0; seed < 24; seed++)
        {
            var scene = new LetterScene(1);
            scene.Arrive(1);
            scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(null, 0.1m)));

            Assert.Contains("one pass", Text(scene, "reed-1-story"), StringComparison.Ordinal);
            Assert.DoesNotMatch(@"\btests?\b|\btried\b|\btrying\b", Text(scene, "reed-1-story"));
        }
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
    public void Whoever_is_not_grown_up_is_told_about_knives_in_every_letter()
    {
        var scene = new LetterScene(1) { Thread = LetterThread.Nothing };
        scene.Arrive(1);

        Assert.Contains("If you are not grown up yet", Text(scene, "cautions"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_question_that_was_left_open_is_told_with_the_reason()
    {
        var scene = new LetterScene();
        Array.ForEach([1, 2, 3], number => scene.Arrive(number));
        var gaps = LetterComposer.Gaps(scene.Material).Where(gap => gap.Kind == GapKind.UnansweredQuestion).ToList();
        scene.Waived = gaps.ToDictionary(gap => gap.Key, gap => gap.Reed is null ? "I want to hear them in your hall first" : "ask me again in spring!");

        Assert.Contains("Which one should I play first?", Text(scene, "answers"), StringComparison.Ordinal);
        Assert.Matches("(open|answer yet|open for now): I want to hear them in your hall first.$", Text(scene, "answers"));
        Assert.Matches("(open|answer yet|open for now): ask me again in spring!$", Text(scene, "reed-2-answers"));
    }

    [Theory]
    [InlineData("AdviseOnly", "clean-inside", "advice only[,;] (and|and yet|all the same|even so) I did work on it.$")]
    [InlineData("SafeChangesOnly", "thin-spine", "safe changes only[,;] (and|and yet|all the same|even so) I did take some cane away.$")]
    [InlineData("SafeChangesOnly", "something-else", "safe changes only[,;] (and|and yet|all the same|even so) I did work on it.$")]
    public void Work_beyond_the_wish_is_a_gap_and_is_told_with_its_reason(string permission, string kind, string told)
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Permission = permission);
        scene.Arrive(1);
        var work = scene.Log(1, Adjustment.Of(new(kind), new Place(Zone.TipCorners), words: "a nudge"));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));

        var gap = Assert.Single(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.WorkBeyondTheWish);
        Assert.Equal(scene.Reed(1).Id, gap.Reed);
        scene.Waived = new Dictionary<string, string> { [gap.Key] = "it would have split on the first evening" };

        var sentences = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story")
            .Paragraphs.SelectMany(paragraph => paragraph.Sentences).ToList();
        Assert.Equal([work], Assert.Single(sentences, sentence => Regex.IsMatch(sentence.Text, told)).From);
        Assert.Equal([work], Assert.Single(sentences, sentence => sentence.Text == "It would have split on the first evening.").From);
        Assert.DoesNotContain(sentences, sentence => sentence.Text.Contains("kept that in mind", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Work_whose_wording_was_mended_later_was_done_when_it_was_first_written_down(bool workFirst)
    {
        var scene = new LetterScene(2);
        Array.ForEach([1, 2], number => scene.Arrive(number));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1), minute: 1);
        var work = scene.Log(1, Adjustment.Of(new("blend"), new Place(Zone.Transition)), minute: workFirst ? 2 : 4);
        scene.Log(2, Test.Of(TestKind.SoftestStart, 1), minute: 3);
        scene.Log(1, Adjustment.Of(new("blend"), new Place(Zone.Transition), new Amount(2)), minute: 5, insteadOf: work);

        Assert.Equal(
            !workFirst,
            Regex.IsMatch(Text(scene, "greeting"), "efore I (touched|worked on|changed) any|as they came|just as they were|as you sent them"));
    }

    [Theory]
    [InlineData("AdviseOnly", "soak")]
    [InlineData("SafeChangesOnly", "clean-inside")]
    [InlineData("TakeRisks", "thin-corners")]
    public void Work_within_the_wish_is_no_gap(string permission, string kind)
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Permission = permission);
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new(kind), new Place(Zone.WholeReed)));

        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.WorkBeyondTheWish);
        Assert.DoesNotMatch(@"I did (work|take)\b", Text(scene, "reed-1-story"));
    }

    [Fact]
    public void Nothing_is_told_of_light_or_finger_or_trials_that_the_log_does_not_know()
    {
        for (var seed = 0; seed < 24; seed++)
        {
            var scene = new LetterScene();
            Array.ForEach([1, 2, 3], number => scene.Arrive(number));
            Array.ForEach([1, 2, 3], number => scene.Log(number, Finding.Of(new("tip-long"), FindingCharacter.Fault, new Place(Zone.Rooftop))));
            var letter = LetterComposer.Compose(scene.Material).Blocks.Where(block => block.Key is "greeting" or "lesson" || block.Reed is not null);
            Assert.All(letter, block => Assert.DoesNotMatch("light and finger|against the light|side by side|close look|tried them|played them", block.Text));
        }
    }

    [Theory]
    [InlineData(0, "What to take from these reeds")]
    [InlineData(1, "What to take from reed one")]
    [InlineData(2, "What they have in common")]
    public void Only_what_two_reeds_have_is_called_common(int having, string heading)
    {
        var scene = new LetterScene();
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number);
            if (number <= having)
            {
                scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
            }
        }

        Assert.Equal(heading, LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "lesson").Heading);
    }

    [Fact]
    public void The_work_is_told_in_the_order_of_the_log_with_a_stop_in_its_place()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new("define-tip"), new Place(Zone.Rooftop), forTheSakeOf: Zone.HeartCentre));
        scene.Log(1, Adjustment.Of(new("blend"), new Place(Zone.Transition), new Amount(4)));
        scene.Log(1, Stopped.Of("it was late"));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Adjustment.Of(new("blend"), new Place(Zone.Transition, Blades.Upper)));
        scene.Log(1, Stopped.Of("nothing more to win"));

        Assert.Matches(
            @"I (set the tip|made the step).*, which makes the middle of the heart\b.* stronger by comparison\. "
            + @".*\bI (also |then )?(smoothed|let the heart run).* \(four strokes\)\. .*stopped.*: it was late\. "
            + @".*\bI (cut|shortened it).* \(twice\) and (smoothed|let the heart run).* \(upper blade\)\. .*: nothing more to win\.",
            Text(scene, "reed-1-story"));
    }

    [Fact]
    public void Two_stops_before_the_last_work_are_told_as_two()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        foreach (var why in new[] { "it was late", "the cane was wet" })
        {
            scene.Log(1, Adjustment.Of(new("blend"), new Place(Zone.Transition)));
            scene.Log(1, Stopped.Of(why));
        }

        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));

        var story = Text(scene, "reed-1-story");
        Assert.Matches("(at first|for the time being|for a while): it was late. (Later|At a later time|When I came back to it|Another time) I (smoothed|let)", story);
        Assert.Matches("(again|Again|Once more).*: the cane was wet. (Later|At a later time|When I came back to it|Another time) I (cut|shortened)", story);
    }

    [Fact]
    public void What_the_student_wrote_is_quoted_as_it_was_written()
    {
        var scene = new LetterScene(2, change: form =>
        {
            form.Reeds[0].Bothers = "Soft notes don't start. I wait!";
            form.Reeds[1].Bothers = "Dull";
            form.Reeds[0].Likes = "The middle.";
        });
        scene.Arrive(1);
        scene.Arrive(2);

        Assert.Contains("“Soft notes don't start. I wait!”", Text(scene, "reed-1-story"), StringComparison.Ordinal);
        Assert.Contains("“The middle.”", Text(scene, "reed-1-story"), StringComparison.Ordinal);
        Assert.Contains("“Dull”.", Text(scene, "reed-2-story"), StringComparison.Ordinal);
        Assert.DoesNotContain("kept that in mind", Text(scene, "reed-1-story"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_kind_of_finding_can_be_said_inside_a_sentence() => Assert.All(FindingCatalogue.All, kind =>
    {
        var scene = new LetterScene(2) { Thread = LetterThread.Nothing };
        for (var number = 1; number <= 2; number++)
        {
            scene.Arrive(number);
            scene.Log(number, Finding.Of(kind.Id, kind.Usually, new Place(kind.Zone)));
        }

        var again = Text(scene, "reed-2-story");
        Assert.DoesNotMatch(": " + kind.Name, again);
        Assert.Matches(
            @"(?i)\b(is|are|has|have|was|don’t|doesn’t|meet|close|escapes|gets|closes|falls|begins|goes|runs|lean|sit|stand|stands|sounds|ripples|reaches|drops)\b",
            again[again.LastIndexOf('”')..]);
    });

    [Fact]
    public void Only_tests_that_were_tried_again_stand_in_the_table()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.Opening, 2));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3));

        var now = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-now");

        Assert.Equal(["softest start"], now.Rows.Select(row => row.Test));
        Assert.Matches(@"(?i)the opening (\(.*\) )?was (right|as it should be).*not (try|tried|come back|repeat)", now.Text);
    }

    [Fact]
    public void A_lesson_that_no_reed_has_is_not_said_to_have_been_found()
    {
        for (var seed = 0; seed < 12; seed++)
        {
            var scene = new LetterScene(1) { Thread = new LetterThread(new FindingKindId("tip-thick")) };
            scene.Arrive(1);

            Assert.DoesNotMatch("(?i)I (found|noticed|saw|met)", Text(scene, "lesson"));
            Assert.Contains(": when ", Text(scene, "lesson"), StringComparison.Ordinal);
        }
    }

    private static string Text(LetterScene scene, string key) =>
        LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == key).Text;
}
