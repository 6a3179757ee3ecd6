using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What a teacher struck out when the drafts were read.</summary>
public sealed class LetterStruckOutTests
{
    private const int Seeds = 40;

    [Fact]
    public void Of_a_single_reed_nothing_is_said_of_these() => Assert.All(
        Enumerable.Range(1, Seeds).Select(seed => InventedBatch.Of(seed).Scene).Where(scene => scene.Batch.Reeds.Count(reed => reed.IsHere) == 1),
        scene => Assert.DoesNotMatch(@"one of these|with these\b", LetterComposer.Compose(scene.Material).Blocks[^1].Text));

    [Fact]
    public void Where_nothing_was_worked_on_nothing_has_changed() => Assert.All(
        Enumerable.Range(1, 4 * Seeds).Select(seed => InventedBatch.Of(seed).Scene).Where(scene => !scene.Batch.Reeds.Any(reed => scene.Material.LogOf(reed.Id).Live<Adjustment>().Any())),
        scene => Assert.DoesNotMatch("has changed|is different now", LetterComposer.Compose(scene.Material).Blocks[^1].Text));

    [Fact]
    public void What_is_said_of_a_fault_and_its_end_has_one_semicolon_at_most() => Assert.All(Endings(Sides.Both), story =>
        Assert.DoesNotMatch("(corners|outer ends) of the tip[^.]*;[^.]*;", story));

    [Fact]
    public void One_corner_that_was_put_right_is_one_corner() => Assert.All(Endings(Sides.Left), story => Assert.DoesNotContain("the corners are", story, StringComparison.Ordinal));

    [Fact]
    public void What_a_student_marked_as_too_open_is_not_called_their_taste() => Assert.All(Enumerable.Range(0, Seeds), seed =>
    {
        var scene = new LetterScene(1, Seed(seed), form => form.Reeds[0].Opening = "2");
        scene.Arrive(1);
        scene.Log(1, Finding.Of(new("more-open-than-liked"), FindingCharacter.Taste, new Place(Zone.Opening)));

        var story = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;

        Assert.DoesNotMatch("taste counts|yours counts|you like|you who|decide|no fault|not a fault|own choice", story);
        Assert.Matches("agree|alike", story);
    });

    [Theory]
    [InlineData("Don't touch the heart.", false)]
    [InlineData("Not the rails, leave them alone.", false)]
    [InlineData("hands off, please", false)]
    [InlineData("it holds the pitch", true)]
    [InlineData("Don't touch it, it holds the pitch.", true)]
    [InlineData("Leave it because it is the core.", true)]
    [InlineData("not the corners please", false)]
    [InlineData("leave the left side of the heart as it is for now", false)]
    [InlineData("Keep your knife off the spine and the heart!", false)]
    [InlineData("no more strokes here", false)]
    [InlineData("Leave the heart alone it is thin already", true)]
    [InlineData("keep off the heart it carries the sound", true)]
    [InlineData("not the corners they are thin enough", true)]
    [InlineData("don’t touch the heart that is where it speaks", true)]
    [InlineData("no knife here it leaks already", true)]
    public void Beside_a_place_to_leave_alone_only_a_reason_is_told(string words, bool told)
    {
        var scene = new LetterScene(1, Seed(1));
        scene.Arrive(1);
        scene.Log(1, LeaveAlone.Of(new Place(Zone.HeartCentre), words));

        var use = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-use").Paragraphs[0];

        Assert.Equal(told ? 2 : 1, use.Sentences.Count(sentence => sentence.From.Count > 0));
    }

    [Fact]
    public void That_nothing_changed_is_said_once() => Assert.All(Enumerable.Range(0, Seeds), seed =>
    {
        var scene = new LetterScene(1, Seed(seed));
        scene.Arrive(1);
        var found = scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Unchanged, "No change."));

        Assert.DoesNotContain("No change", LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text, StringComparison.Ordinal);
    });

    private static IEnumerable<string> Endings(Sides sides) => Enumerable.Range(0, Seeds).Select(seed =>
    {
        var scene = new LetterScene(1, Seed(seed));
        scene.Arrive(1);
        var found = scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners, Blades.Both, sides)));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners, Blades.Both, sides), new Amount(2), found));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));
        return LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;
    });

    private static Guid Seed(int seed) => new(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]);
}
