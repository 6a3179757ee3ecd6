using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What the common lesson says of a fault that was put right at the bench, and of one that wasn't.</summary>
public sealed class LetterLessonTests
{
    private const int Seeds = 40;

    [Fact]
    public void What_was_put_right_here_is_told_as_it_was_when_they_came_and_as_a_lesson_for_the_next_reed() => ForEach(
        [FindingEnding.Gone, FindingEnding.Gone, FindingEnding.Gone],
        lesson =>
        {
            Assert.Equal("What they had in common", lesson.Heading);
            Assert.Matches("(?i)when they (came|arrived)|on arrival", lesson.Text);
            Assert.Matches("put (that |it )?right|set that right", lesson.Text);
            Assert.Matches("next reed|next one|make next", LastOf(lesson).Text);
            Assert.DoesNotMatch(StillThere, lesson.Text);
            Assert.DoesNotMatch("still so|as it was", lesson.Text);
        });

    [Fact]
    public void What_is_only_better_is_not_said_to_be_gone() => ForEach(
        [FindingEnding.Better, FindingEnding.Better, FindingEnding.Better],
        lesson =>
        {
            Assert.Matches("not quite (put right|as it should be)|not all of it|as far as was safe|not the whole of it", LastOf(lesson).Text);
            Assert.DoesNotMatch(StillThere, lesson.Text);
        });

    [Fact]
    public void Where_the_reeds_differ_each_is_told() => ForEach(
        [FindingEnding.Gone, FindingEnding.Better, FindingEnding.LeftOnPurpose],
        lesson =>
        {
            Assert.Matches("In reed one (I|that)\\b.*right.*; in reed two it is better", lesson.Text);
            Assert.Matches("In reed three it is (still|as it was)", lesson.Text);
            Assert.Matches("next reed|next one|make next", LastOf(lesson).Text);
        });

    [Fact]
    public void What_is_as_it_was_is_told_as_it_is() => ForEach(
        [FindingEnding.Unchanged, FindingEnding.LeftOnPurpose, null],
        lesson =>
        {
            Assert.Equal("What they have in common", lesson.Heading);
            Assert.Matches(StillThere, lesson.Text);
            Assert.DoesNotMatch("(?i)when they (came|arrived)|on arrival|right here|next reed you scrape", lesson.Text);
        });

    [Fact]
    public void What_was_worked_on_and_tested_good_is_past_although_nobody_said_how_it_ended() => ForEach(
        [null, null, null],
        lesson =>
        {
            Assert.Matches("(?i)when they (came|arrived)|on arrival", lesson.Text);
            Assert.Matches("tested better|out better", LastOf(lesson).Text);
            Assert.DoesNotMatch(StillThere, lesson.Text);
        },
        worked: true);

    [Fact]
    public void The_sentence_rests_on_the_fault_and_on_its_ending() => ForEach(
        [FindingEnding.Gone, FindingEnding.Gone, FindingEnding.Gone],
        lesson => Assert.Equal(6, LastOf(lesson).From.Count));

    /// <summary>The page counts the reeds that were looked at for it; the letter names those that have it, as its heading does, so that no two counts can quarrel.</summary>
    [Fact]
    public void A_letter_names_the_reeds_and_does_not_call_those_unseen_that_were_not_looked_at_for_it()
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var scene = new LetterScene(3, new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]));
            for (var number = 1; number <= 3; number++)
            {
                scene.Arrive(number);
                scene.Log(number, Test.Of(TestKind.SoftestStart, 0));
            }

            scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
            scene.Thread = new LetterThread(new("tip-corners-thick"), null, EvidenceSentence.For(new Tally(1, 1, 3), default));
            var lesson = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "lesson");

            Assert.Equal("What to take from reed one", lesson.Heading);
            Assert.Matches("(?i)in reed one", lesson.Text);
            Assert.DoesNotMatch("looked at|the one reed|of three", lesson.Text);
        }
    }

    private const string StillThere = @"\b(corners|outer ends) of the tip are\b";

    private static LetterSentence LastOf(LetterBlock lesson) => lesson.Paragraphs[^1].Sentences[^1];

    private static void ForEach(FindingEnding?[] endings, Action<LetterBlock> holds, bool worked = false)
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var scene = new LetterScene(3, new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]));
            for (var number = 1; number <= 3; number++)
            {
                scene.Arrive(number);
                var found = scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
                Work(scene, number, found, worked || endings[number - 1] is FindingEnding.Gone or FindingEnding.Better);
                if (endings[number - 1] is { } ending)
                {
                    scene.Log(number, FindingEnded.Of(found, ending));
                }
            }

            holds(LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "lesson"));
        }
    }

    private static void Work(LetterScene scene, int number, EntryId found, bool worked)
    {
        scene.Log(number, Test.Of(TestKind.SoftestStart, 0));
        if (worked)
        {
            scene.Log(number, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2), found));
            scene.Log(number, Test.Of(TestKind.SoftestStart, TestScale.Of(TestKind.SoftestStart).Good));
        }
    }
}
