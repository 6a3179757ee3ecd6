using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was measured is told as it was measured.</summary>
public sealed class LetterAsMeasuredTests
{
    [Fact]
    public void A_clip_that_was_measured_is_told_by_its_measure_and_by_no_hair()
    {
        for (var seed = 0; seed < 8; seed++)
        {
            var measured = Letter(seed, new Amount(Millimetres: 0.2m));
            Assert.Contains("0.2 mm", Story(measured), StringComparison.Ordinal);
            Assert.DoesNotContain("hair", Story(measured) + LetterPictures.CrowTold(measured, measured.Reeds[0]), StringComparison.Ordinal);
            Assert.Contains("hair", Story(Letter(seed, default)), StringComparison.Ordinal);
        }
    }

    private static string Story(LetterDraft letter) => letter.Blocks.Single(block => block.Key == "reed-1-story").Text;

    private static LetterDraft Letter(int seed, Amount amount)
    {
        var scene = new LetterScene(1, new Guid(seed, 7, 7, new byte[8]), form => form.Questions = null) { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        scene.Log(1, Domain.Bench.Test.Of(TestKind.Crow, 3, LetterScene.Done(SaidPitch.Read("B", Tuning.Standard))));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), amount));
        scene.Log(1, Domain.Bench.Test.Of(TestKind.Crow, 0, LetterScene.Done(SaidPitch.Read("C", Tuning.Standard))));
        return LetterComposer.Compose(scene.Material);
    }
}
