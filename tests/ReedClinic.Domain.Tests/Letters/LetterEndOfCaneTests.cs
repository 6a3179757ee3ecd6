using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Nothing great is promised of a reed whose cane is at its end, and no names are strung with commas.</summary>
public sealed class LetterEndOfCaneTests
{
    private const int Seeds = 60;
    private const string Promise = "out of (it|this reed|this one)|the difference|what has changed|the change|paid off|has gained";

    [Theory]
    [InlineData("worn", null, null)]
    [InlineData(null, "the cane was getting tired", null)]
    [InlineData(null, null, "let it rest; its cane is at its end")]
    public void A_good_deal_more_is_not_promised_of_cane_at_its_end(string? fault, string? stop, string? words) =>
        Assert.All(Stories(fault, stop, words), story => Assert.DoesNotMatch(Promise, story));

    [Fact]
    public void Of_any_other_reed_it_may_be_said() =>
        Assert.Contains(Stories(null, "every start was clean", null), story => story.Contains("a good deal more", StringComparison.Ordinal));

    [Fact]
    public void Behind_three_reeds_nothing_is_strung_with_commas() => Assert.All(Enumerable.Range(0, Seeds), seed =>
    {
        (Certainty, FindingEnding?)[] cases = [(Certainty.Certain, null), (Certainty.Certain, FindingEnding.Gone), (Certainty.Suspected, null)];
        foreach (var (certainty, ending) in cases)
        {
            var scene = new LetterScene(5, new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]));
            for (var number = 1; number <= 5; number++)
            {
                scene.Arrive(number);
            }

            for (var number = 1; number <= 4; number++)
            {
                var found = scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), certainty: certainty));
                if (ending is { } end)
                {
                    scene.Log(number, FindingEnded.Of(found, end));
                }
            }

            scene.Thread = new LetterThread(new("tip-corners-thick"), null, "In four of the five reeds.");
            var letter = LetterComposer.Compose(scene.Material);
            Assert.DoesNotMatch("two, three and four,|one, two and three,", letter.Blocks.Single(block => block.Key == "lesson").Text);
            Assert.DoesNotContain("one, two and three", letter.Blocks.Single(block => block.Key == "reed-4-story").Text, StringComparison.Ordinal);
        }
    });

    private static IEnumerable<string> Stories(string? fault, string? stop, string? words)
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var scene = new LetterScene(1, new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]));
            scene.Arrive(1);
            if (fault is not null)
            {
                scene.Log(1, Finding.Of(new(fault), FindingCharacter.Fault, new Place(Zone.WholeReed)));
            }

            scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));
            if (stop is not null)
            {
                scene.Log(1, Stopped.Of(stop));
            }

            scene.Log(1, Verdict.Of(VerdictKind.Improved, words));
            yield return LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;
        }
    }
}
