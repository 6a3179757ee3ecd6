using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was allowed, what was done and what was said of it go together in one letter.</summary>
public sealed class LetterPromiseTests
{
    // What the intake says of safe changes: small steps that are unlikely to spoil the reed, and stopping early.
    [Theory]
    [InlineData("thin-corners", 2, true, true)]
    [InlineData("thin-corners", 2, false, true)]
    [InlineData("thin-corners", 12, true, false)]
    [InlineData("clip-hair", null, true, true)]
    [InlineData("clip", null, true, false)]
    [InlineData("thin-spine", 1, true, false)]
    public void Small_steps_are_safe_changes_and_anything_more_is_explained(string kind, int? strokes, bool tried, bool within)
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Permission = "SafeChangesOnly");
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
        scene.Log(1, Adjustment.Of(new(kind), new Place(Zone.TipEdge), new Amount(strokes)));
        if (tried)
        {
            scene.Log(1, Test.Of(TestKind.SoftestStart, 3));
        }

        Assert.Equal(within ? 0 : 1, LetterComposer.Gaps(scene.Material).Count(gap => gap.Kind == GapKind.WorkBeyondTheWish));
        if (within && !tried)
        {
            Assert.DoesNotMatch("(test|tried) (it )?after each pass|safe changes", Text(scene, "reed-1-story"));
        }
        else if (within)
        {
            Assert.Matches("(safe changes|Safe changes).*(small steps|little at a time)", Text(scene, "reed-1-story"));
            Assert.DoesNotMatch("I did take|no cane", Text(scene, "reed-1-story"));
        }
    }

    [Theory]
    [InlineData("C +40", null, 1)]
    [InlineData("C +20", null, 0)]
    [InlineData("C +20", "C +40", 0)]
    [InlineData("C +40", "C +20", 1)]
    public void A_clip_of_a_hair_is_explained_where_the_crow_was_sharp_when_it_was_asked_about_at_the_bench(string crow, string? corrected, int gaps)
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Permission = "SafeChangesOnly");
        scene.Arrive(1);
        var heard = scene.Log(1, Test.Of(TestKind.Crow, pitch: LetterScene.Done(SaidPitch.Read(crow, Tuning.Standard))));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        if (corrected is not null)
        {
            scene.Log(1, Test.Of(TestKind.Crow, pitch: LetterScene.Done(SaidPitch.Read(corrected, Tuning.Standard))), insteadOf: heard);
        }

        Assert.Equal(gaps, LetterComposer.Gaps(scene.Material).Count(gap => gap.Kind == GapKind.WorkBeyondTheWish));
    }

    [Fact]
    public void How_much_is_not_said_twice()
    {
        foreach (var words in new[] { "a hair", "by a hair", "no more than a hair", "a hair’s breadth" })
        {
            var scene = new LetterScene(1);
            scene.Arrive(1);
            scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(Words: words)));
            var letter = LetterComposer.Compose(scene.Material);

            Assert.DoesNotContain("hair)", letter.Blocks.Single(block => block.Key == "reed-1-story").Text, StringComparison.Ordinal);
            Assert.Equal("a hair cut off", Assert.Single(letter.Reeds[0].Marks).Words);
        }

        var more = Assert.IsType<Outcome<Adjustment>.Done>(Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(2, Words: "a good bit"))).Value;
        Assert.Equal("2 strokes, a good bit", more.AmountBeside());
    }

    [Fact]
    public void What_was_tried_only_at_the_beginning_is_not_told_of_each_reed_in_the_same_words()
    {
        var scene = new LetterScene();
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number);
            scene.Log(number, Test.Of(TestKind.Opening, 2));
            scene.Log(number, Test.Of(TestKind.SoftestStart, 1));
            scene.Log(number, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
            scene.Log(number, Test.Of(TestKind.SoftestStart, 3));
        }

        Assert.Matches(@"the opening (\(.*\) )?was .*(did|have) not .*(again|repeat|come back)", Text(scene, "reed-1-now").Replace("The opening", "the opening", StringComparison.Ordinal));
        Assert.All(["reed-2-now", "reed-3-now"], key => Assert.Matches("(?i)the opening was (right|as it should be)", Text(scene, key)));
        Assert.All(["reed-2-now", "reed-3-now"], key => Assert.DoesNotMatch(@"not .*(again|repeat|come back)|\(right\)", Text(scene, key)));
    }

    [Fact]
    public void A_test_of_a_reed_that_was_not_worked_on_is_not_put_into_the_past()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.Opening, 2));

        Assert.DoesNotMatch("(?i)when it (came|arrived)|on arrival", Text(scene, "reed-1-story"));
    }

    [Theory]
    [InlineData("verdict improved", true)]
    [InlineData("Verdict: improved.", true)]
    [InlineData("improved", true)]
    [InlineData("verdict good on arrival", true)]
    [InlineData("improved by the second pass", false)]
    public void A_line_that_only_names_the_verdict_gives_no_reason(string typed, bool isNone)
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new("blend"), new Place(Zone.Transition)));
        scene.Log(1, Stopped.Of(typed));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, typed));

        Assert.Equal(!isNone, Text(scene, "reed-1-story").Contains(typed.TrimEnd('.'), StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("Perhaps you stop too early.", false)]
    [InlineData("Perhaps you stop a little short.", false)]
    [InlineData("Don’t stop too soon.", false)]
    [InlineData("Perhaps you don’t stop soon enough.", true)]
    [InlineData("Perhaps your hand doesn’t stop early.", true)]
    [InlineData("Stop sooner.", true)]
    [InlineData("You should stop sooner.", true)]
    [InlineData("Perhaps your hand likes one side.", true)]
    public void Whoever_may_stop_too_soon_is_not_told_to_stop(string habit, bool stops)
    {
        var scene = LetterScene.Usual();
        scene.Thread = scene.Thread with { HabitSentence = habit };

        Assert.Equal(stops, Text(scene, "plan").Contains("Stop ", StringComparison.Ordinal));
    }

    [Fact]
    public void One_pitch_has_one_name()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.Crow, 1, Assert.IsType<Outcome<SaidPitch>.Done>(SaidPitch.Read("C6 +20", Tuning.Standard)).Value));
        scene.Log(1, Adjustment.Of(new("blend"), new Place(Zone.Transition)));
        scene.Log(1, Test.Of(TestKind.Crow, 0, Assert.IsType<Outcome<SaidPitch>.Done>(SaidPitch.Read("C", Tuning.Standard)).Value));

        var row = Assert.Single(LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-now").Rows);
        Assert.Equal("high and low at once; 20 cents above C", row.Before);
        Assert.Equal("high first, then low as well; at C", row.Now);
        Assert.Contains("a hundredth of a semitone", Text(scene, "reed-1-now"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(VerdictKind.LeftAsItCame, "I thinned the corners and that was all.", true)]
    [InlineData(VerdictKind.LeftAsItCame, "Thinning the corners helped.", true)]
    [InlineData(VerdictKind.GoodOnArrivalRefined, null, true)]
    [InlineData(VerdictKind.LeftAsItCame, "The scraping is yours, and good.", false)]
    [InlineData(VerdictKind.Improved, null, true)]
    public void A_letter_that_would_tell_of_work_and_of_none_asks_the_teacher(VerdictKind verdict, string? words, bool asks)
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Verdict.Of(verdict, words));

        var gaps = LetterComposer.Gaps(scene.Material).Where(gap => gap.Kind == GapKind.WorkNotInTheLog).ToList();
        Assert.Equal(asks ? 1 : 0, gaps.Count);
        Assert.All(gaps, gap => Assert.Equal(scene.Reed(1).Id, gap.Reed));
        Assert.DoesNotMatch("(?i)the work (was|has)|what I did|what was done|by the work", Text(scene, "reed-1-story"));

        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.WorkNotInTheLog);
    }

    [Fact]
    public void A_place_is_named_for_whoever_does_not_know_the_words_of_the_trade()
    {
        Assert.Equal("slope from heart to tip, upper blade", new Place(Zone.Transition, Blades.Upper).SayPlainly());
        Assert.Equal("line between heart and tip", new Place(Zone.Rooftop).SayPlainly());
        Assert.All(Enum.GetValues<Zone>(), zone => Assert.DoesNotMatch("rooftop|transition|\\beye\\b", new Place(zone).SayPlainly()));
    }

    private static string Text(LetterScene scene, string key) =>
        LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == key).Text;
}
