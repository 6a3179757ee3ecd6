using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>How a reed is to be played is said in one way; where the teacher said it, in theirs.</summary>
public sealed class LetterOneAdviceTests
{
    private const string OfPlaying =
        @"(?i)concert|everyday|daily practice|\bten minutes\b|three days|first three|day four|the fourth|a week\b|in turn|takes? turns|\bturns\b(?! out)|play it in|a few days|day or two|some days|(it|them) for a while|quiet practice|day's rest|share the work|now and then|few minutes|this one first|others rest";

    [Theory]
    [InlineData("Let it rest a day before you perform.")]
    [InlineData("Don't save it: play it every morning.")]
    [InlineData("You can play it at once, as long as you like")]
    [InlineData("It needs another month of playing")]
    [InlineData("Keep it for lessons every morning.")]
    [InlineData("Good for a quarter of an hour at home.")]
    [InlineData("Give it two nights, then use it.")]
    public void Where_the_teacher_said_how_a_reed_is_played_the_letter_adds_nothing(string words) => Each(seed =>
    {
        foreach (var (verdict, use) in Verdicts)
        {
            var scene = Scene(1, seed, use);
            Work(scene, 1);
            scene.Log(1, Verdict.Of(verdict, words));

            Assert.DoesNotMatch(OfPlaying, BesideTheStory(scene));
            Assert.Contains(words.TrimEnd('.'), Text(scene), StringComparison.OrdinalIgnoreCase);
        }
    });

    [Theory]
    [InlineData("I like this one a good deal")]
    [InlineData("It is still the easiest reed that you have made.")]
    [InlineData("The pitch is up where you need it.")]
    [InlineData("Keep off its heart")]
    [InlineData("It is a joy to play")]
    [InlineData("I let it dry overnight before I tried it")]
    public void What_says_nothing_of_playing_takes_no_advice_away(string words)
    {
        var scene = Scene(1, 1, ReedUse.Concert);
        Work(scene, 1);
        scene.Log(1, Verdict.Of(VerdictKind.Improved, words));

        Assert.Matches("concert", Text(scene, "reed-1-use"));
    }

    [Fact]
    public void A_reason_to_leave_a_place_alone_and_an_answer_about_the_reed_are_advice_as_well()
    {
        foreach (var answered in new[] { true, false })
        {
            var scene = Scene(1, 3, ReedUse.Concert, answered ? "Is this one worth keeping for the wind band?" : null);
            Work(scene, 1);
            if (!answered)
            {
                scene.Log(1, LeaveAlone.Of(new Place(Zone.TipCorners), "play it for a month before you touch them"));
            }

            scene.Batch.Questions.ToList().ForEach(question => question.AnswerWith("Yes, it carries.", scene.Batch.SubmittedAt));
            scene.Log(1, Verdict.Of(VerdictKind.Improved));

            // What it is for says nothing of its first days.
            Assert.DoesNotMatch("concert", Text(scene));
            Assert.Equal(answered, Regex.IsMatch(Text(scene), "ten minutes|the fourth|day four"));
        }
    }

    [Fact]
    public void An_answer_to_all_that_says_how_long_is_the_only_one() => Each(seed =>
    {
        var scene = new LetterScene(2, Batch(seed), form => form.Questions = "How long should I play them at first?\nHow long should I soak a reed?") { Thread = LetterThread.Nothing };
        for (var number = 1; number <= 2; number++)
        {
            scene.Arrive(number);
            Work(scene, number);
            scene.Log(number, Verdict.Of(number == 1 ? VerdictKind.Improved : VerdictKind.NeedsPlayingIn));
        }

        scene.Batch.Questions[^2].AnswerWith("Half an hour each evening", scene.Batch.SubmittedAt);
        scene.Batch.Questions[^1].AnswerWith("One minute is enough for these", scene.Batch.SubmittedAt);

        Assert.DoesNotMatch(OfPlaying + "|three to five", BesideTheStory(scene));
    });

    [Fact]
    public void A_reed_with_its_own_advice_is_neither_among_turns_nor_in_the_first_days() => Each(seed =>
    {
        foreach (var verdict in new[] { VerdictKind.NeedsPlayingIn, VerdictKind.StoppedToProtectIt })
        {
            var scene = Scene(3, seed, ReedUse.Practice);
            for (var number = 1; number <= 3; number++)
            {
                Work(scene, number);
                scene.Log(number, Verdict.Of(number == 2 ? verdict : VerdictKind.Improved));
            }

            Assert.DoesNotMatch(@"\bothers?\b|in turn|turns", Text(scene, "reed-1-use") + Text(scene, "reed-3-use") + Text(scene, "care"));
            Assert.Matches(@"first", Text(scene, "reed-1-use"));
            Assert.DoesNotMatch(@"(ten minutes|three days|fourth|day four)[^.]*\beach reed|\beach reed[^.]*(ten minutes|three (easy|gentle|quiet)|three days|fourth|day four)", Text(scene, "care"));
            Assert.DoesNotMatch("week|some days|while", Text(scene, "closing"));
        }
    });

    [Fact]
    public void What_is_given_up_is_not_played_any_more_and_not_only_now() => Each(seed =>
    {
        var scene = Scene(1, seed, ReedUse.Practice);
        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved));
        Assert.DoesNotMatch(@"play it now", Text(scene));
    });

    [Fact]
    public void No_date_is_made_up_for_a_concert() => Each(seed =>
    {
        var scene = Scene(1, seed, ReedUse.Concert);
        Work(scene, 1);
        scene.Log(1, Verdict.Of(VerdictKind.Improved));
        Assert.DoesNotMatch("week before|the concert", Text(scene, "reed-1-use"));
        Assert.Matches("ten minutes", Text(scene, "care"));
        Assert.DoesNotMatch("ten minutes|week|some days", Text(scene, "closing"));
    });

    private static readonly (VerdictKind, ReedUse)[] Verdicts =
    [
        (VerdictKind.Improved, ReedUse.Concert), (VerdictKind.Improved, ReedUse.Practice), (VerdictKind.NeedsPlayingIn, ReedUse.Practice), (VerdictKind.StoppedToProtectIt, ReedUse.Practice),
        (VerdictKind.AsGoodAsThisCaneGets, ReedUse.Practice),
    ];

    private static void Each(Action<int> seed) => Enumerable.Range(1, 30).ToList().ForEach(seed);

    private static Guid Batch(int seed) => new(seed * 40503, 7, 0x7c3d, new byte[8]);

    private static LetterScene Scene(int reeds, int seed, ReedUse use, string? question = null)
    {
        var scene = new LetterScene(reeds, Batch(seed), form =>
        {
            form.Questions = null;
            foreach (var reed in form.Reeds)
            {
                (reed.Bothers, reed.Questions, reed.UsedFor) = ("It tastes of tea", question, use == ReedUse.Practice ? null : use.ToString());
            }
        })
        { Thread = LetterThread.Nothing };
        for (var number = 1; number <= reeds; number++)
        {
            scene.Arrive(number);
        }

        return scene;
    }

    private static void Work(LetterScene scene, int number)
    {
        scene.Log(number, Test.Of(TestKind.SoftestStart, 1));
        scene.Log(number, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));
        scene.Log(number, Test.Of(TestKind.SoftestStart, 2));
    }

    // What the reed is used for and its verdict are told in its story.
    private static string BesideTheStory(LetterScene scene) =>
        string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Where(block => block.Kind != BlockKind.ReedStory).Select(block => block.Text));

    private static string Text(LetterScene scene) => string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text));

    private static string Text(LetterScene scene, string key) =>
        LetterComposer.Compose(scene.Material).Blocks.SingleOrDefault(block => block.Key == key)?.Text ?? "";
}
