using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Playing is only spoken of where there is a reed for playing, and as many are spoken of as there are.</summary>
public sealed class LetterPlayableTests
{
    private const string Among = @"\bfirst\b|\bothers?\b|\bturns?\b";

    private static readonly LetterThread NoLesson = LetterThread.Nothing;

    [Theory]
    [InlineData(Fitness.Mould, VerdictKind.ReturnedUnplayed)]
    [InlineData(Fitness.Fit, VerdictKind.NotToBeSaved)]
    public void A_letter_about_reeds_that_are_not_for_playing_sends_nobody_to_play_them(Fitness fitness, VerdictKind verdict) => Each(seed =>
    {
        for (var reeds = 1; reeds <= 2; reeds++)
        {
            var scene = new LetterScene(reeds, Batch(seed)) { Thread = NoLesson };
            for (var number = 1; number <= reeds; number++)
            {
                scene.Arrive(number, new ReedArrival(Presence.Here, Fitness: fitness));
                scene.Log(number, Verdict.Of(verdict));
            }

            Assert.DoesNotMatch(@"(?i)\bplay (it|them)\b|\bwith (it|them)\b|\b(it|they) (feels?|plays?)\b|\byou like (it|them)\b", Text(scene, "closing"));
            Assert.DoesNotMatch("how to (play|look after|take care of|treat)", Text(scene, "greeting"));
        }
    });

    [Theory]
    [InlineData(Fitness.Mould, VerdictKind.ReturnedUnplayed)]
    [InlineData(Fitness.Fit, VerdictKind.NotToBeSaved)]
    public void One_reed_for_playing_is_neither_first_nor_has_it_others(Fitness fitness, VerdictKind verdict) => Each(seed =>
    {
        var scene = Good(2, seed, but: 2);
        scene.Arrive(2, new ReedArrival(Presence.Here, Fitness: fitness));
        scene.Log(2, Verdict.Of(verdict));

        Assert.DoesNotMatch(Among, Uses(scene));
        Assert.DoesNotMatch(@"\b(them|they)\b", Text(scene, "closing"));
    });

    [Fact]
    public void Two_reeds_for_playing_are_this_one_and_the_other()
    {
        Each(seed =>
        {
            var uses = Uses(Good(2, seed));
            Assert.Matches(@"\bfirst\b", uses);
            Assert.Matches(@"\bthe other\b", uses);
            Assert.DoesNotMatch(@"\bothers\b|\bnone\b|\ball of them\b|\bthe other one\b", uses);
        });
        Each(seed =>
        {
            var scene = Good(3, seed, but: 1);
            scene.Arrive(1, new ReedArrival(Presence.Here, Fitness: Fitness.Mould));
            Assert.Matches(@"\bthe other one that is for playing\b", Uses(scene));
            Assert.DoesNotMatch(@"\bothers\b|\bnone\b|\ball of them\b", Uses(scene));
        });
    }

    [Fact]
    public void Of_three_reeds_for_playing_one_is_first_and_another_takes_turns_with_the_others() => Each(seed =>
    {
        var uses = Uses(Good(3, seed));
        Assert.Matches(@"\bfirst\b", uses);
        Assert.Matches(@"\bothers\b", uses);
    });

    [Fact]
    public void What_the_student_wrote_is_praised_only_where_enough_was_written()
    {
        const string Praise = "so clearly|so much about|so well";
        var enough = 0;
        Each(seed =>
        {
            LetterScene Saying(string words)
            {
                var scene = new LetterScene(1, Batch(seed), form => form.Reeds[0].Bothers = words) { Thread = NoLesson };
                scene.Arrive(1);
                return scene;
            }

            Assert.DoesNotMatch(Praise, Text(Saying("Too hard"), "greeting"));
            enough += Regex.Count(Text(Saying("It is hard to blow, and the low notes only come when I push"), "greeting"), Praise);
        });
        Assert.InRange(enough, 1, 40);
    }

    [Fact]
    public void Time_spent_with_a_reed_is_told_only_where_it_was_tried()
    {
        var tried = 0;
        Each(seed =>
        {
            LetterScene Scene(bool test)
            {
                var scene = new LetterScene(1, Batch(seed)) { Thread = NoLesson };
                scene.Arrive(1);
                if (test)
                {
                    scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
                }

                return scene;
            }

            Assert.DoesNotMatch(@"\btime (with|over)\b", Text(Scene(false), "greeting"));
            tried += Regex.Count(Text(Scene(true), "greeting"), @"\btime (with|over)\b");
        });
        Assert.InRange(tried, 1, 40);
    }

    [Fact]
    public void A_question_that_is_left_open_is_not_taken_up_as_if_it_were_answered() => Each(seed =>
    {
        var scene = new LetterScene(1, Batch(seed));
        scene.Arrive(1);
        scene.Waived = LetterComposer.Gaps(scene.Material).Where(gap => gap.Kind == GapKind.UnansweredQuestion).ToDictionary(gap => gap.Key, _ => "ask me again in spring");

        Assert.DoesNotMatch(@"(?i)\b(what I think|to answer|let me answer|here is|now to|on to)\b", Text(scene, "answers"));
    });

    [Theory]
    [InlineData("tip-wavy")]
    [InlineData("centre-closes-first")]
    [InlineData("closes-in-play")]
    public void One_time_does_not_stand_behind_another(string kind) => Each(seed =>
    {
        var scene = new LetterScene(1, Batch(seed)) { Thread = NoLesson };
        scene.Arrive(1);
        var found = scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new(FindingCatalogue.Find(new(kind))!.Zone)));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));

        Assert.DoesNotMatch("(wet|soaked|lightly|played|playing) (when it|on arrival|at first)", Text(scene, "reed-1-story"));
    });

    [Fact]
    public void One_hour_is_not_some_hours_and_several_places_are_not_one() => Each(seed =>
    {
        var scene = new LetterScene(1, Batch(seed), form => form.Reeds[0].HoursPlayed = "1") { Thread = NoLesson };
        scene.Arrive(1);
        scene.Log(1, LeaveAlone.Of(new(Domain.Reeds.Zone.TipCorners), "they are right"));

        Assert.DoesNotMatch("some one hour", Text(scene, "reed-1-story"));
        Assert.DoesNotMatch("corners of the tip .*as it is", Text(scene, "reed-1-use"));
    });

    private static void Each(Action<int> seed) => Enumerable.Range(1, 40).ToList().ForEach(seed);

    private static Guid Batch(int seed) => new(seed * 40503, 7, 0x7c3d, new byte[8]);

    private static LetterScene Good(int reeds, int seed, int but = 0)
    {
        var scene = new LetterScene(reeds, Batch(seed)) { Thread = NoLesson };
        foreach (var number in Enumerable.Range(1, reeds).Where(number => number != but))
        {
            scene.Arrive(number);
            scene.Log(number, Test.Of(TestKind.SoftestStart, 3));
            scene.Log(number, Verdict.Of(VerdictKind.Improved));
        }

        return scene;
    }

    private static string Uses(LetterScene scene) => string.Join(
        '\n', LetterComposer.Compose(scene.Material).Blocks.Where(block => block.Kind == BlockKind.ReedUse).Select(block => block.Text));

    private static string Text(LetterScene scene, string key) =>
        LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == key).Text;
}
