using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was noted after a step isn’t told as what came with the reed.</summary>
public sealed class LetterSeenLaterTests
{
    private const string OnArrival = "(?i)(on arrival|at first|when (it|they) (came|arrived))[^.;]*corners|corners[^.;]*(on arrival|at first|when (it|they) (came|arrived))";

    [Theory]
    [InlineData(true, null)]
    [InlineData(false, null)]
    [InlineData(true, KnownBy.Plaque)]
    [InlineData(false, KnownBy.Plaque)]
    public void What_was_noted_after_a_step_is_not_told_as_found_on_arrival(bool isGone, KnownBy? by) => Assert.All(Enumerable.Range(1, 20), seed =>
    {
        var text = Told(seed, first: false, isGone, by);

        Assert.DoesNotMatch(OnArrival, text);
        Assert.Matches("(?i)(later|while I worked|in the course of the work)[^.]*corners", text);
    });

    [Fact]
    public void What_came_with_the_reed_is_told_so() => Assert.Contains(Enumerable.Range(1, 20), seed =>
        System.Text.RegularExpressions.Regex.IsMatch(Told(seed, first: true, isGone: true, null), OnArrival));

    private static string Told(int seed, bool first, bool isGone, KnownBy? by)
    {
        var scene = new LetterScene(1, new Guid(seed, 7, 7, new byte[8]), form => form.Reeds[0].Bothers = "Nothing.")
        {
            Thread = new(new FindingKindId("tip-corners-thick"), null, "In the one reed of this batch."),
        };
        scene.Arrive(1);
        var early = first ? Found(scene, by) : default;
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        var found = first ? early : Found(scene, by);
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2), found));
        scene.Log(1, Domain.Bench.Test.Of(TestKind.LowResponse, 3));
        if (isGone)
        {
            scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));
        }

        var blocks = LetterComposer.Compose(scene.Material).Blocks;
        return blocks.Single(block => block.Key == "reed-1-story").Text + "\n" + blocks.Single(block => block.Key == "lesson").Text;
    }

    private static EntryId Found(LetterScene scene, KnownBy? by) => scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), knownBy: by ?? KnownBy.NotSaid));
}
