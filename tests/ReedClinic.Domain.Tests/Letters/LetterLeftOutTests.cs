using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases.Words;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What isn’t said to a student as it stands takes nothing with it that they should know.</summary>
public sealed class LetterLeftOutTests
{
    [Fact]
    public void Whatever_a_teacher_says_to_stop_in_time_is_not_blunt()
    {
        const string verdict = "Verdict StoppedToProtectIt: ";
        var line = Assert.Single(MoodWords.Table.Split('\n'), line => line.Contains(verdict, StringComparison.Ordinal));
        var phrases = line[(line.IndexOf(verdict, StringComparison.Ordinal) + verdict.Length)..].Split(", ");

        Assert.True(phrases.Length > 50);
        Assert.Empty(phrases.SelectMany(BenchTalk.In));
    }

    [Theory]
    [InlineData("Stop, not worth the risk")]
    [InlineData("Improved. More scraping is not worth a cracked tip.")]
    [InlineData("Another stroke is not worth it")]
    [InlineData("I stopped before it was ruined")]
    [InlineData("One more clip would have ruined it")]
    [InlineData("There is no point in opening it further: it is in tune")]
    [InlineData("the low D is lazy")]
    [InlineData("a nasty crack, watch it")]
    [InlineData("terribly thin already")]
    [InlineData("an ugly noise at the start")]
    [InlineData("mould inside: throw it away, don’t play it")]
    [InlineData("the cane is too old")]
    public void What_is_true_and_needed_is_not_blunt(string words) => Assert.Empty(BenchTalk.In(words));

    [Theory]
    [InlineData("not worth saving")]
    [InlineData("It is not worth it.")]
    [InlineData("this one is not worth my time")]
    [InlineData("there is no point in saving it")]
    [InlineData("no use")]
    [InlineData("somebody has ruined it")]
    [InlineData("an ugly tip")]
    [InlineData("lazy work")]
    [InlineData("terribly made")]
    [InlineData("throw it away")]
    public void What_is_blunt_stays_so(string words) => Assert.Single(BenchTalk.In(words));

    [Theory]
    [InlineData("both corners are tender, they must rest", true)]
    [InlineData("the blades are full: they should soak longer", true)]
    [InlineData("the low notes can wait, they need to rest", true)]
    [InlineData("the opening is wide so that the player can close it", true)]
    [InlineData("they should soak it longer", false)]
    [InlineData("the player should rest it", false)]
    [InlineData("tell the player", false)]
    [InlineData("they should practise more", false)]
    public void What_is_of_the_reed_is_not_of_the_student(string words, bool isOfTheReed) => Assert.Equal(isOfTheReed, !SpokenOf.In(words, "Ines Kestrel").Any());

    [Theory]
    [InlineData("it may end in the bin", "it may come to harm")]
    [InlineData("she may tear the corner", "it may come to harm")]
    [InlineData("the corner may be ruined", "the corner may be ruined")]
    public void A_risk_that_happened_is_told_however_it_was_named(string words, string says)
    {
        var scene = Scene();
        var risk = scene.Log(1, Risk.Of(words, Zone.TipCorners));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
        scene.Log(1, RiskClosed.Of(risk, RiskOutcome.Happened, "The corner is torn."));
        scene.Log(1, Test.Of(TestKind.Seal, 3));

        var text = Text(scene);
        Assert.Matches($"risk[^.]*\\({says}\\)[^.]* (happen|come about)", text);
        Assert.Contains("The corner is torn.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_test_that_was_said_bluntly_was_made_all_the_same()
    {
        var scene = Scene();
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
        scene.Log(1, Test.Of(TestKind.Depth, words: "a hopeless joke"));
        scene.Log(1, Test.Of(TestKind.Crow, 0, LetterScene.Done(SaidPitch.Read("C", Tuning.Standard))));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, words: "horrible still"));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, words: "horrible still"));
        scene.Log(1, Test.Of(TestKind.Seal, words: "a hopeless joke"));

        var text = Text(scene);
        Assert.DoesNotMatch("(?i)after the last (work|thing)|horrible|joke|“it was tried”", text);
        var row = Assert.Single(LetterComposer.Compose(scene.Material).Blocks.SelectMany(block => block.Rows));
        Assert.Equal("it was tried", row.Now);
        var log = scene.Material.Logs[scene.Reed(1).Id];
        var told = LetterLog.ToTheStudent(log, scene.Student);
        Assert.Equal(log.Passes.Count, told.Passes.Count);
        Assert.False(LetterTried.IsGood(told, scene.Batch.CrowTarget));
    }

    [Theory]
    [InlineData("the slope was wrong, I blended it", FindingEnding.Gone)]
    [InlineData("the tip was a mistake, I evened it", FindingEnding.Gone)]
    [InlineData("there was no seal, I wound it again", FindingEnding.Gone)]
    [InlineData("the tying was wrong, it leaks less", FindingEnding.Better)]
    [InlineData("the slope was wrong, it is even", FindingEnding.Gone)]
    [InlineData("there was no need", FindingEnding.LeftOnPurpose)]
    public void A_true_ending_takes_nothing_back(string words, FindingEnding ending)
    {
        var scene = Scene();
        var step = scene.Log(1, Finding.Of(new("step-abrupt"), FindingCharacter.Fault, new Place(Zone.Transition)));
        scene.Log(1, FindingEnded.Of(step, ending, words));
        scene.Log(1, Test.Of(TestKind.Seal, 3));

        Assert.Single(scene.Material.LogOf(scene.Reed(1).Id).Findings);
        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.FindingTakenBack);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_is_taken_back_is_told_to_the_teacher_and_what_was_worked_on_was_there(bool worked)
    {
        var scene = Scene();
        var crack = scene.Log(1, Finding.Of(new("tip-cracked"), FindingCharacter.Fault, new Place(Zone.TipEdge)));
        if (worked)
        {
            scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), forFinding: crack));
        }

        scene.Log(1, FindingEnded.Of(crack, FindingEnding.Gone, "there was no crack"));
        scene.Log(1, Test.Of(TestKind.Seal, 3));

        var gaps = LetterComposer.Gaps(scene.Material).Where(gap => gap.Kind == GapKind.FindingTakenBack).ToList();
        Assert.Equal(worked ? 0 : 1, gaps.Count);
        Assert.All(gaps, gap =>
        {
            Assert.True(gap.IsToldOnly);
            Assert.Equal(scene.Reed(1).Id, gap.Reed);
            Assert.Matches("reed one takes back .*crack.*: “there was no crack”. The letter says nothing of it", gap.Words);
        });
        Assert.Equal(worked ? 1 : 0, scene.Material.LogOf(scene.Reed(1).Id).Findings.Count);
    }

    [Fact]
    public void A_finding_that_was_put_in_better_words_is_told_in_these_and_one_put_in_blunt_words_in_none()
    {
        var scene = Scene();
        var first = scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.TipSides), words: "a hopeless mess"));
        var other = scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.HeartSides), words: "a shadow"));
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.TipSides), words: "a ridge along the left"), insteadOf: first);
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.HeartSides), words: "a botched heart"), insteadOf: other);
        scene.Log(1, Test.Of(TestKind.Seal, 3));

        var lines = LetterComposer.Compose(scene.Material).Reeds[0].Marks.Select(mark => mark.Words + mark.Detail).ToList();
        Assert.Contains(lines, line => line.Contains("a ridge along the left", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.Contains("shadow", StringComparison.Ordinal));
        Assert.DoesNotMatch("shadow|mess|botched", Text(scene));
    }

    [Fact]
    public void A_verdict_that_was_tried_and_judged_anew_is_told_no_more()
    {
        var scene = Scene();
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
        scene.Log(1, Verdict.Of(VerdictKind.NeedsPlayingIn, "The low D is late."));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3), 5);
        scene.Log(1, Verdict.Of(VerdictKind.Improved, "The low D speaks at once."), 6);

        Assert.DoesNotContain("The low D is late.", Text(scene), StringComparison.Ordinal);
    }

    [Fact]
    public void A_verdict_of_another_day_stays_over_when_a_slip_in_it_is_mended()
    {
        var scene = Scene();
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3));
        var monday = scene.Log(1, Verdict.Of(VerdictKind.NeedsPlayingIn, "The low D is lat."));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, "The low D speaks at once."), 2880);
        scene.Log(1, Verdict.Of(VerdictKind.NeedsPlayingIn, "The low D is late."), 2890, monday);

        Assert.DoesNotContain("The low D is late.", Text(scene), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("I only scraped the tip.", true, false)]
    [InlineData("I scraped this rubbish last year already.", false, true)]
    [InlineData("I took it from her.", false, true)]
    public void Work_is_asked_about_where_the_letter_tells_of_it(string words, bool asks, bool isLast)
    {
        var scene = Scene();
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3));
        scene.Log(1, Verdict.Of(VerdictKind.LeftAsItCame, words));
        if (!isLast)
        {
            scene.Log(1, Verdict.Of(VerdictKind.NeedsPlayingIn, "Two days will do."), 1);
        }

        Assert.Equal(asks, LetterComposer.Gaps(scene.Material).Any(gap => gap is { Kind: GapKind.WorkNotInTheLog, IsToldOnly: false }));
    }

    [Theory]
    [InlineData("the left rail is about 0.3 mm too thick from the heart down to the shoulder", "the left rail is about 0.3 mm too thick from the heart down…")]
    [InlineData("not the corners themselves, but the strip behind them that runs to the middle", "not the corners themselves, but the strip behind them that…")]
    [InlineData("the right rail reads about 42, and the left one reads something like 47 or so", "the right rail reads about 42, and the left one reads…")]
    [InlineData("the left rail is thick; it goes on so from the heart down to the shoulder", "the left rail is thick")]
    public void A_long_name_is_cut_where_it_still_says_the_same(string words, string name) => Assert.Equal(name, StoryBlock.Short(words));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Once_the_part_about_a_reed_is_put_in_other_words_nothing_is_left_to_put_so(bool edited)
    {
        var scene = Scene();
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, "What a mess. She should rest."));
        var letter = LetterComposer.Compose(scene.Material);
        letter = edited ? letter.EditedTo(new Dictionary<string, string> { ["reed-1-story"] = "It took more than I had thought." }, letter) : letter;

        Assert.Equal(edited ? 0 : 2, LetterEdits.AllGaps(letter, scene.Material).Count(gap => gap.Kind is GapKind.BluntAtTheBench or GapKind.SpokenOfTheStudent));
        Assert.Contains(LetterEdits.AllGaps(letter, scene.Material), gap => gap.Kind == GapKind.NoCommonLesson);
    }

    private static LetterScene Scene()
    {
        var scene = new LetterScene(1, new Guid(1, 8, 8, new byte[8]), form =>
        {
            form.Questions = null;
            foreach (var reed in form.Reeds)
            {
                (reed.Bothers, reed.Questions) = ("Nothing", null);
            }
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        return scene;
    }

    private static string Text(LetterScene scene) => string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text));
}
