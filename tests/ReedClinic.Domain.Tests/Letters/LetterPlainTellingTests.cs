using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter claims only what is so now, says it once, and in one plain word for each thing.</summary>
public sealed class LetterPlainTellingTests
{
    private static readonly int[] Seeds = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

    [Fact]
    public void What_was_worked_on_since_or_tested_right_since_is_told_as_what_was_so_when_it_came()
    {
        Assert.All(Seeds, seed =>
        {
            var scene = Scene(1, seed);
            scene.Log(1, Finding.Of(new("opening-wide"), FindingCharacter.Fault, new Place(Zone.Opening)));
            scene.Log(1, Finding.Of(new("tip-corner-broken"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
            scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
            scene.Log(1, Finding.Of(new("heart-thick"), FindingCharacter.Fault, new Place(Zone.HeartCentre)));
            scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
            scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(null, 0.1m)));
            scene.Log(1, Test.Of(TestKind.Opening, 2));

            var story = Story(scene);
            Assert.DoesNotMatch("opening is|(?<!the two )corners? (of the tip )?(is|are) (missing|chipped|broken|still|thick|not)|corner is missing", story);
            Assert.Matches("opening was", story);
            Assert.DoesNotMatch("heart (was|had)|in the heart (was|were)", story);
        });
    }

    [Theory]
    [InlineData(FindingEnding.Unchanged)]
    [InlineData(FindingEnding.LeftOnPurpose)]
    public void What_is_said_to_stay_is_told_as_it_is(FindingEnding ending)
    {
        var scene = Scene();
        var wide = scene.Log(1, Finding.Of(new("opening-wide"), FindingCharacter.Fault, new Place(Zone.Opening)));
        scene.Log(1, Adjustment.Of(new("close-press"), new Place(Zone.Opening)));
        scene.Log(1, FindingEnded.Of(wide, ending));

        Assert.Contains("opening is", Story(scene), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("tip-corners-thick", Zone.TipCorners, Blades.Upper, Sides.Left, "the left corner of the upper blade is")]
    [InlineData("tip-corners-thick", Zone.TipCorners, Blades.Both, Sides.Right, "the right corner of the tip is")]
    [InlineData("heart-sides-thick", Zone.HeartSides, Blades.Lower, Sides.Right, "the right side of the heart is")]
    [InlineData("heart-thick", Zone.HeartCentre, Blades.Upper, Sides.Left, "(on the left of the upper blade)")]
    public void A_place_on_one_side_is_named_as_one_would_say_it(string kind, Zone zone, Blades blades, Sides sides, string says)
    {
        Assert.All(Seeds, seed =>
        {
            var scene = Scene(1, seed);
            scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(zone, blades, sides)));

            var story = Story(scene);
            Assert.Contains(says, story, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotMatch("two (corners|sides)|blade, on the", story);
        });
    }

    [Fact]
    public void A_place_to_leave_alone_is_named_by_its_side()
    {
        var scene = Scene();
        scene.Log(1, LeaveAlone.Of(new Place(Zone.TipCorners, Blades.Upper, Sides.Left), "it is thin enough"));

        Assert.Contains("the left corner of the upper blade", Text(LetterComposer.Compose(scene.Material)), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_tuning_note_is_told_once()
    {
        var scene = Scene();
        scene.Log(1, Test.Of(TestKind.TuningNote, 1, LetterScene.Done(SaidPitch.Read("A", Tuning.Standard))));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(null, 0.1m)));
        scene.Log(1, Test.Of(TestKind.TuningNote, 2, LetterScene.Done(SaidPitch.Read("A", Tuning.Standard))));

        var row = Assert.Single(LetterComposer.Compose(scene.Material).Blocks.SelectMany(block => block.Rows));
        Assert.Equal(("a little flat", "in tune"), (row.Before, row.Now));
    }

    [Fact]
    public void What_the_beginning_praises_is_not_praised_again_for_each_reed()
    {
        Assert.All(Seeds, seed =>
        {
            var scene = Scene(3, seed);
            for (var number = 1; number <= 3; number++)
            {
                scene.Log(number, Finding.Of(new("spine-intact"), FindingCharacter.Strength, new Place(Zone.Spine)));
                scene.Log(number, Test.Of(TestKind.Seal, 3));
            }

            var letter = LetterComposer.Compose(scene.Material);
            Assert.Contains("spine", letter.Blocks.Single(block => block.Kind == BlockKind.DoneWell).Text, StringComparison.Ordinal);
            Assert.DoesNotContain(letter.Blocks, block => block.Kind == BlockKind.ReedStory && block.Text.Contains("spine", StringComparison.Ordinal));
        });
    }

    [Fact]
    public void For_the_sake_of_what_is_said_with_what_that_does()
    {
        Assert.All(Seeds, seed =>
        {
            var scene = Scene(2, seed);
            for (var number = 1; number <= 2; number++)
            {
                scene.Log(number, Adjustment.Of(new("take-heart-sides"), new Place(Zone.HeartSides), new Amount(2), null, Zone.HeartCentre));
                scene.Log(number, Test.Of(TestKind.Seal, 3));
            }

            var text = Text(LetterComposer.Compose(scene.Material));
            Assert.DoesNotMatch("in mind|thinking of", text);
            Assert.Equal(1, Regex.Count(text, "stronger"));
        });
    }

    [Fact]
    public void One_thing_has_one_plain_word_in_text_key_and_table()
    {
        var scene = Scene();
        scene.Log(1, Finding.Of(new("spine-intact"), FindingCharacter.Strength, new Place(Zone.Spine)));
        scene.Log(1, Finding.Of(new("tip-falls-to-sides"), FindingCharacter.Strength, new Place(Zone.TipSides)));
        scene.Log(1, Test.Of(TestKind.Crow, 1));
        scene.Log(1, Test.Of(TestKind.LowResponse, 1));
        scene.Log(1, Test.Of(TestKind.Edge, 1));
        scene.Log(1, Test.Of(TestKind.Opening, 3));
        scene.Log(1, Adjustment.Of(new("blend"), new Place(Zone.Transition), new Amount(4)));
        scene.Log(1, Test.Of(TestKind.Crow, 0));
        scene.Log(1, Test.Of(TestKind.LowResponse, 2));
        scene.Log(1, Test.Of(TestKind.Edge, 2));
        scene.Log(1, Test.Of(TestKind.Opening, 2));

        var letter = LetterComposer.Compose(scene.Material);
        Assert.Equal(
            ["spine: whole", "sides of the tip: thinner than its middle", "slope from heart to tip: smoothed, 4 strokes"],
            letter.Reeds[0].Marks.Select(ReedSketch.Say));
        Assert.Equal(
            ["crow, high and low at once, high first, then low as well", "edge of the sound, a little covered, right", "low notes, late, speak with a little care", "opening, a little wide, right"],
            letter.Blocks.SelectMany(block => block.Rows).Select(row => $"{row.Test}, {row.Before}, {row.Now}").Order());
        Assert.Single(Regex.Matches(Text(letter), "“edge” (means|stands for|is)"));
    }

    private static LetterScene Scene(int reeds = 1, int seed = 1)
    {
        var scene = new LetterScene(reeds, new Guid(seed, 8, 8, new byte[8]), form =>
        {
            form.Questions = null;
            foreach (var reed in form.Reeds)
            {
                (reed.Bothers, reed.Questions) = ("Nothing", null);
            }
        })
        { Thread = LetterThread.Nothing };
        for (var number = 1; number <= reeds; number++)
        {
            scene.Arrive(number);
        }

        return scene;
    }

    private static string Story(LetterScene scene) => Regex.Replace(LetterComposer.Compose(scene.Material).Blocks.First(block => block.Kind == BlockKind.ReedStory).Text, @" \((?!on )[^)]*\)", "");

    private static string Text(LetterDraft letter) => string.Join("\n", letter.Blocks.Select(block => block.Text));
}
