using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was only suspected in one reed is no likeness for what is certain in another.</summary>
public sealed class LetterOnlySuspectedTests
{
    private const string Likeness = "(?i)(as|in) (in )?reeds? one|here too|here as well|this one (too|as well)|once more|again|about reed one";

    [Theory]
    [InlineData(Certainty.Suspected, Certainty.Certain, false)]
    [InlineData(Certainty.Certain, Certainty.Certain, true)]
    [InlineData(Certainty.Suspected, Certainty.Suspected, true)]
    public void A_fault_is_like_that_of_an_earlier_reed_where_it_is_as_certain_there(Certainty first, Certainty second, bool isLike)
    {
        var scene = new LetterScene(2, new Guid(26, 1, 4, new byte[8]), form => form.Questions = null) { Thread = LetterThread.Nothing };
        foreach (var (number, certainty) in new[] { (1, first), (2, second) })
        {
            scene.Arrive(number);
            scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), certainty: certainty));
            scene.Log(number, Verdict.Of(VerdictKind.Improved));
        }

        var told = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-2-story").Text;
        Assert.Contains("corners of the tip", told, StringComparison.Ordinal);
        if (isLike)
        {
            Assert.Matches(Likeness, told);
        }
        else
        {
            Assert.DoesNotMatch(Likeness, told);
        }
    }
}
