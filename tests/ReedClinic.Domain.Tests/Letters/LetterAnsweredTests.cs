using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What a student said or marked is answered by what bears on it; all else is asked back, and the teacher is told.</summary>
public sealed class LetterAnsweredTests
{
    private const string AskedBack = "(tell me|let me know|write to me) (how (it|they) (is|are)|whether it is still so)";

    [Theory]
    [InlineData("It wobbles in the oboe", "cork-loose", Zone.Cork)]
    [InlineData("It sounds pinched", "opening-narrow", Zone.Opening)]
    [InlineData("It dies at the end of long notes", "heart-thin", Zone.HeartCentre)]
    [InlineData("My teacher says it's too bright", "brighter-than-liked", Zone.WholeReed)]
    [InlineData("I bite", "opening-wide", Zone.Opening)]
    [InlineData("It sounds choked", "thread-too-high", Zone.Thread)]
    [InlineData("It was lovely in autumn", "worn", Zone.WholeReed)]
    [InlineData("It squeaks", "tip-long", Zone.Rooftop)]
    [InlineData("The tip looks frilly", "tip-wavy", Zone.TipEdge)]
    [InlineData("It changes from day to day", "side-leak", Zone.SideEdges)]
    [InlineData("The slurs have a bump in them", "step-abrupt", Zone.Transition)]
    [InlineData("It smells of cellar", null, Zone.Inside)]
    [InlineData("Something about it", null, Zone.Inside)]
    public void A_complaint_is_answered_only_by_what_bears_on_it(string bothers, string? bearing, Zone zone) => Assert.All(Enumerable.Range(1, 8), seed =>
    {
        var scene = Scene(1, seed, bothers);
        scene.Log(1, Finding.Of(new("bark-island"), FindingCharacter.Fault, new Place(Zone.HeartCentre)));

        Assert.DoesNotContain("bark", Answer(scene), StringComparison.Ordinal);
        Assert.Matches(AskedBack, Answer(scene));
        Assert.Contains(Notices(scene), gap => gap.Kind == GapKind.UnansweredComplaint);

        if (bearing is not null)
        {
            var kind = FindingCatalogue.Find(new(bearing))!;
            scene.Log(1, Finding.Of(kind.Id, kind.Usually, new Place(zone)));
            Assert.DoesNotMatch(AskedBack + "|bark", Answer(scene));
            Assert.DoesNotContain(Notices(scene), gap => gap.Kind == GapKind.UnansweredComplaint);
        }
    });

    [Theory]
    [InlineData("The same.", true)]
    [InlineData("Exactly the same", true)]
    [InlineData("The same, and it whistles", true)]
    [InlineData("The same as reed one", true)]
    [InlineData("The same as the first", true)]
    [InlineData("Same problem", true)]
    [InlineData("The same trouble again", true)]
    [InlineData("Ditto", true)]
    [InlineData("The same as the one before", true)]
    [InlineData("The same problem as with reed one", true)]
    [InlineData("The same as before: it squeaks", false)]
    [InlineData("The same problem as in spring", false)]
    [InlineData("The same as the first time", false)]
    [InlineData("The same reed played well last week", false)]
    [InlineData("The same knife was used", false)]
    [InlineData("The same as always with me", false)]
    public void What_was_said_of_another_reed_is_taken_over_only_where_it_is_said_to_be_the_same(string bothers, bool same)
    {
        var scene = Scene(2, 1, "It goes flat.", bothers);
        scene.Log(2, Test.Of(TestKind.Effort, 4));

        Assert.Equal(same, Part(scene, "reed-2-story").Contains("its pitch", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Nothing comes out below D", false)]
    [InlineData("None of the notes will come", false)]
    [InlineData("Fine for five minutes, then nothing", false)]
    [InlineData("Nothing, but it smells", false)]
    [InlineData("Nothing but trouble", false)]
    [InlineData("Nothing", true)]
    [InlineData("Nothing bothers me about this one.", true)]
    [InlineData("nothing really, it is nice", true)]
    [InlineData("None.", true)]
    [InlineData("No complaints", true)]
    [InlineData("Fine!", true)]
    [InlineData("It’s fine", true)]
    [InlineData("All is well", true)]
    [InlineData("–", true)]
    public void Only_who_says_that_nothing_is_the_matter_is_taken_to_say_so(string bothers, bool nothing)
    {
        var scene = Scene(1, 1, bothers);
        scene.Log(1, Finding.Of(new("bark-island"), FindingCharacter.Fault, new Place(Zone.HeartCentre)));

        Assert.Equal(!nothing, Notices(scene).Any(gap => gap.Kind == GapKind.UnansweredComplaint));
        Assert.Equal(nothing, Answer(scene).Contains("bark", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("I have played it every day for two weeks", false, "how it changes")]
    [InlineData("Every day it is different", true, "how it changes")]
    [InlineData("It changes every day", true, "how it changes")]
    [InlineData("It is nicely in tune, only the tip is chipped", false, "its pitch")]
    [InlineData("It is hard to keep the low D in tune", true, "its pitch")]
    [InlineData("I can’t play it in tune", true, "its pitch")]
    [InlineData("The intonation is poor", true, "its pitch")]
    public void Nothing_is_asked_back_of_which_nobody_complained(string bothers, bool asked, string what)
    {
        var scene = Scene(1, 1, bothers);
        scene.Log(1, Test.Of(TestKind.Effort, 4));

        Assert.Equal(asked, Part(scene, "reed-1-story").Contains(what, StringComparison.Ordinal));
        Assert.Equal(asked, Notices(scene).Any(gap => gap.Words.Contains(what, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_reed_that_is_named_is_the_one_that_is_meant()
    {
        var scene = Scene(3, 1, "It goes flat.", "Too open for me.", "The same as reed 1.");
        scene.Log(3, Test.Of(TestKind.Effort, 4));

        Assert.Contains("its pitch", Part(scene, "reed-3-story"), StringComparison.Ordinal);
        Assert.DoesNotContain("the opening", Part(scene, "reed-3-story"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Too open for me.", null)]
    [InlineData("The same.", "its pitch")]
    public void What_was_said_of_a_reed_that_did_not_come_is_not_taken_over(string missing, string? taken)
    {
        var scene = Scene(3, 1, "It goes flat.", missing, "The same.");
        scene.Arrive(2, new ReedArrival(Presence.Missing));
        scene.Log(3, Test.Of(TestKind.Effort, 4));

        Assert.DoesNotContain("the opening", Part(scene, "reed-3-story"), StringComparison.Ordinal);
        Assert.Equal(taken is not null, Part(scene, "reed-3-story").Contains("its pitch", StringComparison.Ordinal));
        Assert.Contains(Notices(scene), gap => gap.Kind == GapKind.UnansweredComplaint && gap.Reed == scene.Reed(3).Id);
    }

    [Fact]
    public void Each_mark_on_the_scales_is_answered_or_asked_back() => Assert.All(Enumerable.Range(1, 8), seed =>
    {
        var scene = Scene(1, seed, reed => (reed.Bothers, reed.Intonation, reed.Opening, reed.HighNotes, reed.Effort) = ("It smells of cellar", "-1", "2", "-2", "0"));
        scene.Log(1, Test.Of(TestKind.TuningNote, 1));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.TuningNote, 2));

        var text = Part(scene, "reed-1-story");
        Assert.Matches("“Intonation”[^.]*“a little flat”[^.]*a little flat[^.]*in tune", text);
        Assert.Matches("the opening( \\([^)]*\\))?, the high notes and what you wrote of it[^.]*how they are", text);
        Assert.DoesNotContain("how hard", text, StringComparison.Ordinal);
        var gap = Assert.Single(Notices(scene), gap => gap.Kind == GapKind.UnansweredComplaint);
        Assert.Contains("“too open” under “Opening” and “they sag” under “High notes”", gap.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("Intonation", gap.Words, StringComparison.Ordinal);

        scene.Log(1, Finding.Of(new("opening-wide"), FindingCharacter.Fault, new Place(Zone.Opening)));
        scene.Log(1, Test.Of(TestKind.HighSteadiness, 0));
        Assert.DoesNotContain("scales", Assert.Single(Notices(scene), one => one.Kind == GapKind.UnansweredComplaint).Words, StringComparison.Ordinal);
        Assert.Matches("whether it is still so|how it is now", Part(scene, "reed-1-story"));
    });

    [Fact]
    public void What_was_said_and_marked_is_answered_once()
    {
        var scene = Scene(1, 1, reed => (reed.Bothers, reed.Intonation) = ("It goes flat.", "-2"));
        scene.Log(1, Test.Of(TestKind.TuningNote, 0));

        Assert.Single(Regex.Matches(Part(scene, "reed-1"), "the tuning note was flat"));
    }

    [Fact]
    public void What_one_test_answers_is_told_once_however_often_it_was_said_and_marked() => Assert.All(Enumerable.Range(1, 8), seed =>
    {
        var scene = Scene(1, seed, reed => (reed.Bothers, reed.Response, reed.SoftPlaying) = ("Soft notes don't start.", "2", "2"));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 0));

        Assert.Single(Regex.Matches(Part(scene, "reed-1"), "would not start softly"));
        Assert.DoesNotContain(Notices(scene), gap => gap.Kind == GapKind.UnansweredComplaint);
    });

    [Fact]
    public void A_further_complaint_is_answered_by_its_name_and_nothing_is_named_twice_in_one_breath() => Assert.All(Enumerable.Range(1, 8), seed =>
    {
        var scene = Scene(1, seed, "The low notes come late, and it is too open.");
        scene.Log(1, Test.Of(TestKind.LowResponse, 1));
        scene.Log(1, Test.Of(TestKind.Opening, 4));
        scene.Log(1, Adjustment.Of(new("open-windows"), new Place(Zone.Windows)));
        scene.Log(1, Test.Of(TestKind.LowResponse, 3));
        scene.Log(1, Test.Of(TestKind.Opening, 2));

        var text = Regex.Replace(Part(scene, "reed-1-story"), @" \([^)]*\)", "");
        Assert.Matches("the low notes were late[^.]*(work|end) they spoke at once", text);
        Assert.Matches("(As for|As to|Then to|Then about|Now to|Now about) the opening: .*it was very (wide|large)", text);
        Assert.DoesNotMatch("the opening[^.]*the opening", text);
    });

    [Fact]
    public void Of_a_reed_that_cannot_be_saved_nothing_is_asked_back()
    {
        var scene = Scene(1, 1, reed => (reed.Bothers, reed.Intonation) = ("The low notes come late.", "-2"));
        scene.Log(1, Test.Of(TestKind.LowResponse, 1));
        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved));

        Assert.DoesNotContain("its pitch", Part(scene, "reed-1"), StringComparison.Ordinal);
        Assert.DoesNotContain(Notices(scene), gap => gap.Kind == GapKind.UnansweredComplaint);
    }

    [Fact]
    public void With_a_plan_the_letter_says_what_to_send_next_time()
    {
        var scene = Scene(1, 1, "Nothing");
        Assert.Matches("by the plan|follows the plan", Part(scene, "closing"));

        scene.Thread = LetterThread.Nothing;
        Assert.DoesNotMatch("by the plan|follows the plan", Part(scene, "closing"));
    }

    [Theory]
    [InlineData("It goes flat.", "how it is")]
    [InlineData("The high notes sag.", "how they are")]
    [InlineData("It goes flat and is too open.", "how they are")]
    public void What_is_asked_back_agrees_in_number(string bothers, string asked) => Assert.All(Enumerable.Range(1, 8), seed =>
    {
        var scene = Scene(1, seed, bothers);
        scene.Log(1, Test.Of(TestKind.Seal, 3));

        Assert.Contains(asked, Part(scene, "reed-1-story"), StringComparison.Ordinal);
    });

    [Theory]
    [InlineData(VerdictKind.Improved, null, "The letter leaves “improved” out", true)]
    [InlineData(VerdictKind.GoodOnArrivalRefined, null, "The letter leaves “good on arrival, refined” out", true)]
    [InlineData(VerdictKind.Improved, "Thinning the corners helped.", "it also tells of work: “Thinning the corners helped.”", false)]
    public void Of_a_verdict_that_is_left_out_the_teacher_is_told_just_that(VerdictKind verdict, string? words, string says, bool mayGo)
    {
        var scene = Scene(1, 1, "Nothing");
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
        scene.Log(1, Verdict.Of(verdict, words));

        var gap = Assert.Single(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.WorkNotInTheLog);
        Assert.Contains(says, gap.Words, StringComparison.Ordinal);
        Assert.Equal(mayGo, gap.IsToldOnly);
        Assert.Equal(mayGo, !gap.Words.Contains("tells of work", StringComparison.Ordinal));
    }

    private static LetterScene Scene(int reeds, int seed, params string[] bothers) => Scene(reeds, seed, (reed, index) => reed.Bothers = bothers[index]);

    private static LetterScene Scene(int reeds, int seed, Action<ReedForm> change) => Scene(reeds, seed, (reed, _) => change(reed));

    private static LetterScene Scene(int reeds, int seed, Action<ReedForm, int> change)
    {
        var scene = new LetterScene(reeds, new Guid(seed, 3, 9, new byte[8]), form =>
        {
            foreach (var (reed, index) in form.Reeds.Select((reed, index) => (reed, index)))
            {
                reed.Questions = null;
                change(reed, index);
            }
        });
        for (var number = 1; number <= reeds; number++)
        {
            scene.Arrive(number, new ReedArrival(Presence.Here, Fitness: Fitness.Fit));
        }

        return scene;
    }

    // What stands right behind the student’s own words.
    private static string Answer(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Paragraphs[0].Sentences[1].Text;

    private static IEnumerable<LetterGap> Notices(LetterScene scene) => LetterEdits.Gaps(LetterComposer.Compose(scene.Material), scene.Material);

    private static string Part(LetterScene scene, string key) =>
        string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Where(block => block.Key.StartsWith(key, StringComparison.Ordinal)).Select(block => block.Text));
}
