using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter calls a place by one name, calls a suspicion one, and says once how a finding ended.</summary>
public sealed class LetterOnceSaidTests
{
    [Fact]
    public void What_is_only_suspected_is_so_in_the_list_the_drawing_and_the_lesson()
    {
        var scene = Suspected();
        scene.Thread = new(new FindingKindId("tip-corners-thick"), null, "In reed one.");

        var draft = LetterComposer.Compose(scene.Material);
        Assert.All([Assert.Single(draft.Reeds[0].Marks), Assert.Single(draft.LessonMarks)], mark =>
        {
            Assert.True(mark.Suspected);
            Assert.Equal("Suspected", ReedSketch.Name(mark));
        });
        var drawn = LetterPictures.Reed(draft, draft.Reeds[0])!;
        Assert.Contains(drawn.Parts.OfType<SketchPath>(), path => path.Ink == SketchInk.FaultSuspected);
        Assert.DoesNotContain(drawn.Parts.OfType<SketchPath>(), path => path.Ink == SketchInk.Fault);
        Assert.Contains("suspected: corners of the tip: too thick", drawn.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lesson_that_one_reed_shows_for_certain_is_found()
    {
        var scene = Suspected();
        scene.Arrive(2);
        scene.Log(2, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        scene.Thread = new(new FindingKindId("tip-corners-thick"), null, "In two reeds.");

        Assert.Equal("Found", ReedSketch.Name(Assert.Single(LetterComposer.Compose(scene.Material).LessonMarks)));
    }

    [Fact]
    public void A_place_has_one_name_in_sentences_and_on_drawings() => Assert.All(Enum.GetValues<Zone>().Where(zone => zone != Zone.WholeReed), zone =>
        Assert.Equal("the " + new Place(zone).SayPlainly(), LetterPlaces.Name(zone)));

    [Fact]
    public void Another_name_that_somebody_typed_is_told_once()
    {
        var scene = new LetterScene(2);
        foreach (var number in new[] { 1, 2 })
        {
            scene.Arrive(number);
            scene.Log(number, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.Rooftop), words: $"The rooftop leans on tag {number}"));
        }

        var text = All(scene);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(text, "“rooftop”"));
        Assert.Contains("the line between heart and tip", text, StringComparison.Ordinal);
        Assert.Contains("The rooftop leans on tag 1. ", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("corners not thick any more", false)]
    [InlineData("the corners are better", false)]
    [InlineData("gone, and the left one took longest because of a knot", true)]
    public void How_a_finding_ended_is_said_once(string typed, bool typedIsTold)
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Bothers = "It smells of cellar");
        scene.Arrive(1);
        var found = scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone, typed));

        var story = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;
        Assert.Equal(typedIsTold, story.Contains(typed[1..], StringComparison.Ordinal));
        Assert.Equal(!typedIsTold, System.Text.RegularExpressions.Regex.IsMatch(story, "no longer so|put right|in order now|; (by now|now|today),? "));
    }

    [Fact]
    public void Where_the_complaint_was_answered_with_its_end_the_end_is_not_told_again()
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Bothers = "It gapes, too wide for me");
        scene.Arrive(1);
        var found = scene.Log(1, Finding.Of(new("opening-wide"), FindingCharacter.Fault, new Place(Zone.Opening)));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));

        var story = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(story, "no longer so|put right|in order now|; (by now|now|today),? "));
    }

    [Fact]
    public void A_comparison_does_not_name_its_own_place_again()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), FindingShape.Comparison, Relation.ThickerThan, new Place(Zone.TipSides)));

        Assert.Contains("(thicker than the sides of the tip)", All(scene), StringComparison.Ordinal);
    }

    [Fact]
    public void A_complaint_of_which_there_is_no_test_is_asked_about_and_not_passed_over()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.Opening, 2));
        Assert.Matches("(nothing|anything|no note|no (separate )?test).*(tell me|let me know|write to me)", All(scene));

        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved));
        Assert.Matches("(wrote nothing down|(made|have) no note|noted nothing|wrote down nothing)", All(scene));
        Assert.DoesNotMatch("nothing[^.]*(tell me|let me know|write to me)", All(scene));
    }

    [Fact]
    public void What_was_tried_before_the_last_work_is_no_gain_of_how_the_reed_plays_now()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.LowResponse, 0));
        scene.Log(1, Test.Of(TestKind.TonguedStarts, 0));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));
        scene.Log(1, Test.Of(TestKind.LowResponse, 3));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(null, 0.1m)));
        scene.Log(1, Test.Of(TestKind.TonguedStarts, 3));

        var draft = LetterComposer.Compose(scene.Material);
        Assert.DoesNotMatch("low notes", draft.Blocks.Single(block => block.Key == "reed-1-now").Text);
        Assert.Matches("(?i)tongued", draft.Blocks.Single(block => block.Key == "reed-1-now").Text);
        Assert.DoesNotMatch("(after the work|after my work|by the end) the low notes", draft.Blocks.Single(block => block.Key == "reed-1-story").Text);
    }

    private static LetterScene Suspected()
    {
        var scene = new LetterScene(2);
        scene.Arrive(1);
        scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), certainty: Certainty.Suspected));
        return scene;
    }

    private static string All(LetterScene scene) => string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text));
}
