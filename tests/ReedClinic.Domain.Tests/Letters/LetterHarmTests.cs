using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What may harm somebody is met where the student wrote of it, and what ends a reed is told with its why.</summary>
public sealed class LetterHarmTests
{
    private const string NoKnife = "Please take no knife to a reed that comes back from me";

    [Theory]
    [InlineData("May I take a little off the corners?", "Yes, a stroke or two is fine.", true)]
    [InlineData("Can I sandpaper the tip?", "Sure", true)]
    [InlineData("Should I file it a bit?", "You can, gently.", true)]
    [InlineData("Is it okay to sand the back?", "Take two strokes off each side.", true)]
    [InlineData("May I take a little off the corners?", "No, please leave it.", false)]
    [InlineData("May I take a little off the corners?", "No problem, take a stroke or two off.", true)]
    [InlineData("May I take a little off the corners?", "No harm in one light stroke.", true)]
    [InlineData("May I take a little off the corners?", "No worries", true)]
    [InlineData("May I take a little off the corners?", "Not a problem.", true)]
    [InlineData("Is it dangerous to scrape it?", "No, go ahead.", true)]
    [InlineData("May I take a little off the corners?", "Not the heart, but you may try the corners.", true)]
    [InlineData("May I take a little off the corners?", "No, never take a stroke off it.", false)]
    [InlineData("May I take a little off the corners?", "Please don’t scrape, thin, cut or sand it.", false)]
    [InlineData("May I take a little off the corners?", "No, try another week first.", false)]
    [InlineData("May I take a little off the corners?", "I don’t think you should.", false)]
    [InlineData("May I take a little off the corners?", "Don’t worry, leave it to me.", false)]
    [InlineData("May I take a little off the corners?", "Yes, on your next reed.", false)]
    [InlineData("How will I know when to stop scraping?", "When the last stroke made no difference", false)]
    [InlineData("How many days do I wait after scraping?", "Two or three, if you can bear it", false)]
    [InlineData("Does it need breaking in?", "Yes, a few days.", null)]
    [InlineData("Can I send a sound file with it?", "Yes, you can.", null)]
    public void An_answer_that_gives_leave_beside_the_caution_is_asked_about_and_locks_nothing(string question, string answer, bool? clashes)
    {
        var scene = Scene("Nothing", questions: question);
        scene.Batch.Questions[0].AnswerWith(answer, scene.Batch.SubmittedAt);

        Assert.Equal(clashes is not null, LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "answers").Text.Contains(NoKnife, StringComparison.Ordinal));
        var gaps = Gaps(scene, GapKind.AnswerAgainstTheCaution);
        Assert.Equal(clashes == true ? 1 : 0, gaps.Count);
        Assert.All(gaps, gap =>
        {
            Assert.True(gap is { IsToldOnly: true, Part: "answers" });
            Assert.Contains(answer.TrimEnd('.'), gap.Words, StringComparison.Ordinal);
            Assert.Contains(NoKnife, gap.Words, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData("It is flat. Why? Should I clip it?", "It is flat. Why?|Should I clip it?")]
    [InlineData("Too open, or is that me? It leaks.", "Too open, or is that me?")]
    [InlineData("The heart still thick?", "The heart still thick?")]
    [InlineData("Flat?", "")]
    public void Every_question_mark_of_a_complaint_is_a_question(string bothers, string asked) =>
        Assert.Equal(asked, string.Join('|', Scene(bothers).Batch.Questions.Select(question => question.Text)));

    [Theory]
    [InlineData("How long do I soak it? Which one comes first?", "How long do I soak it?|Which one comes first?")]
    [InlineData("I have had these for years. Are any of them still good?", "I have had these for years. Are any of them still good?")]
    [InlineData("Should I soak it longer? Or not at all?", "Should I soak it longer? Or not at all?")]
    [InlineData("Is it too old?! I hope not.", "Is it too old?! I hope not.")]
    public void Every_question_of_a_line_is_one_to_answer(string line, string asked) =>
        Assert.Equal(asked, string.Join('|', Scene("Nothing", questions: line).Batch.Questions.Select(question => question.Text)));

    [Theory]
    [InlineData("My lip bleeds after a page", "hurt, bleed or feel numb", "ask a doctor or a dentist")]
    [InlineData("I had the flu when I last played it", "is or was ill", "a doctor and your school’s own rules")]
    [InlineData("It smells and has black spots", "mould, dirt or a smell", "your school’s own rules")]
    public void What_a_student_writes_of_harm_has_its_caution_in_that_reeds_part_and_a_notice(string bothers, string of, string whom)
    {
        foreach (var age in new AgeAnswer?[] { null, AgeAnswer.Younger, AgeAnswer.OldEnough })
        {
            var scene = Scene(bothers, reeds: 2);
            scene.Log(1, Test.Of(TestKind.SoftestStart, 3));
            scene.Log(1, Verdict.Of(VerdictKind.Improved));
            scene.Log(2, Test.Of(TestKind.SoftestStart, 3));
            scene.Log(2, Verdict.Of(VerdictKind.Improved));
            var letter = LetterComposer.Compose(scene.Material with { Age = age });
            var use = letter.Blocks.Single(block => block.Key == "reed-1-use").Text;

            Assert.Contains(of, use, StringComparison.Ordinal);
            Assert.Contains(whom, use, StringComparison.Ordinal);
            Assert.Contains("don’t play", use, StringComparison.Ordinal);
            Assert.Contains("parent or guardian", use, StringComparison.Ordinal);
            Assert.Equal(age is not AgeAnswer.Younger, use.Contains("if you are not grown up yet", StringComparison.Ordinal));
            Assert.DoesNotMatch("(this one|this reed|to play|it) first|in turn", use);
            Assert.DoesNotContain(letter.Blocks.Where(block => block.Key != "reed-1-use"), block => block.Text.Contains(of, StringComparison.Ordinal));
            var gap = Assert.Single(Gaps(scene, GapKind.SaidOfHarm));
            Assert.True(gap is { IsToldOnly: true, Part: "reed-1-use" });
            Assert.Contains(bothers, gap.Words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_is_asked_of_all_reeds_has_its_caution_with_the_answers()
    {
        var scene = Scene("Nothing", questions: "My gums bleed, is that the reeds?");
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3));

        Assert.Contains("don’t play these reeds, or any other, while that lasts", LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "answers").Text, StringComparison.Ordinal);
        Assert.Equal("answers", Assert.Single(Gaps(scene, GapKind.SaidOfHarm)).Part);
        Assert.Empty(Gaps(Scene("The low notes are late"), GapKind.SaidOfHarm));
    }

    [Fact]
    public void A_reed_given_up_without_a_why_is_asked_about_and_the_answer_is_read()
    {
        foreach (var seed in Enumerable.Range(1, 20))
        {
            var scene = Scene("It is flat", seed: seed);
            scene.Log(1, Test.Of(TestKind.Seal, 3));
            scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved));
            Assert.Matches("(?i)sorry|pity|regret", Text(scene));
            Assert.Matches("(?i)risks", Text(scene));
            var gap = Assert.Single(Gaps(scene, GapKind.GivenUpWithoutWhy));
            Assert.False(gap.IsToldOnly);

            scene.Waived = new Dictionary<string, string> { [gap.Key] = "the cane gave way where the staple ends" };
            Assert.Contains("The cane gave way where the staple ends.", Text(scene), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("said")]
    [InlineData("stopped")]
    [InlineData("found")]
    public void A_why_that_the_log_holds_is_told_and_not_asked(string how)
    {
        var scene = Scene("It is flat");
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        if (how == "found")
        {
            scene.Log(1, Finding.Of(new("body-cracked"), FindingCharacter.Fault, new Place(Zone.Windows)));
        }
        else if (how == "stopped")
        {
            scene.Log(1, Stopped.Of("every stroke took more than it gave"));
        }

        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved, how == "said" ? "Its heart is gone" : null));

        Assert.Empty(Gaps(scene, GapKind.GivenUpWithoutWhy));
        Assert.Matches(how switch { "said" => "Its heart is gone", "stopped" => "every stroke took more", _ => "(?i)the crack in the cane" }, Text(scene));
    }

    /// <summary>Which of several faults decided it, only the teacher knows.</summary>
    [Theory]
    [InlineData(new[] { "tip-thin" }, null, "What decided it: the tip that is too thin.")]
    [InlineData(new[] { "tip-thin" }, FindingEnding.Better, null)]
    [InlineData(new[] { "tip-corner-broken", "heart-thin" }, null, "What decided it: the broken corner and the heart that is too thin.")]
    [InlineData(new[] { "tip-cracked" }, FindingEnding.Better, null)]
    public void What_may_have_decided_it_is_proposed_to_the_teacher_and_not_said(string[] faults, FindingEnding? ended, string? proposed)
    {
        var scene = Scene("It is flat");
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        foreach (var fault in faults)
        {
            var found = scene.Log(1, Finding.Of(new(fault), FindingCharacter.Fault, new Place(Zone.TipEdge)));
            if (ended is { } ending)
            {
                scene.Log(1, FindingEnded.Of(found, ending));
            }
        }

        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved));

        Assert.Equal(proposed, Assert.Single(Gaps(scene, GapKind.GivenUpWithoutWhy)).Proposed);
        Assert.DoesNotMatch("(?i)decided it|the reason is|is the reason|stands against it|can't be put back|mends that", Text(scene));
    }

    [Fact]
    public void Of_a_broken_corner_and_a_crack_the_crack_is_the_reason_and_the_teachers_words_come_before_it()
    {
        var scene = Scene("It is flat");
        scene.Log(1, Finding.Of(new("tip-corner-broken"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        scene.Log(1, Finding.Of(new("body-cracked"), FindingCharacter.Fault, new Place(Zone.Windows)));
        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved));
        Assert.Empty(Gaps(scene, GapKind.GivenUpWithoutWhy));
        Assert.Matches("(?i)the crack in the cane", Text(scene));
        Assert.DoesNotMatch("(?i)the broken corner (is|decided)|is the broken corner", Text(scene));

        scene.Waived = new Dictionary<string, string> { ["given-up-one"] = "the wood is spent" };
        Assert.Contains("The wood is spent.", Text(scene), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, true, "(leave|allowed)[^.]*risks")]
    [InlineData(true, false, null)]
    [InlineData(false, false, "risks[^.]*(I took none|did not use)")]
    public void Leave_to_take_risks_is_told_as_used_only_where_a_risk_was_named(bool work, bool risk, string? said)
    {
        var scene = Scene("It is flat");
        if (risk)
        {
            scene.Log(1, Risk.Of("the corner may break"));
        }

        if (work)
        {
            scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));
        }

        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved, "Its heart is gone"));
        Assert.Equal(said is not null, System.Text.RegularExpressions.Regex.IsMatch(Text(scene), said ?? "(?i)risk"));
    }

    [Fact]
    public void Leave_to_take_risks_is_told_only_where_it_was_given()
    {
        var scene = Scene("It is flat", change: reed => reed.Permission = "SafeChangesOnly");
        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved, "Its heart is gone"));
        Assert.DoesNotMatch("risk", Text(scene));
    }

    private static List<LetterGap> Gaps(LetterScene scene, GapKind kind) => [.. LetterComposer.Gaps(scene.Material).Where(gap => gap.Kind == kind)];

    private static LetterScene Scene(string bothers, int reeds = 1, int seed = 1, string? questions = null, Action<ReedForm>? change = null)
    {
        var scene = new LetterScene(reeds, new Guid(seed * 40503, 9, 9, new byte[8]), form =>
        {
            form.Questions = questions;
            foreach (var (reed, index) in form.Reeds.Select((reed, index) => (reed, index)))
            {
                (reed.Bothers, reed.Questions) = (index == 0 ? bothers : "Nothing", null);
                change?.Invoke(reed);
            }
        })
        { Thread = LetterThread.Nothing };
        for (var number = 1; number <= reeds; number++)
        {
            scene.Arrive(number);
        }

        return scene;
    }

    private static string Text(LetterScene scene) => string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text));
}
