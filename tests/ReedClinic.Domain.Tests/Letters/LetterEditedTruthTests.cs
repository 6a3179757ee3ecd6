using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was changed by hand is held against the log where it plainly says the opposite.</summary>
public sealed class LetterEditedTruthTests
{
    [Theory]
    [InlineData("No cane was taken from it.", true)]
    [InlineData("I like it. I took no cane from this reed.", true)]
    [InlineData("This time nothing was scraped.", true)]
    [InlineData("I left the cane alone.", true)]
    [InlineData("I didn’t scrape this one.", true)]
    [InlineData("No cane was taken from the heart.", false)]
    [InlineData("Nothing was taken from its windows.", false)]
    [InlineData("I did not scrape it any further.", false)]
    [InlineData("You asked: “Is it true that no cane was taken?”", false)]
    [InlineData("I thinned the corners and left it there.", false)]
    public void That_nothing_was_taken_is_asked_about_where_the_log_holds_work(string words, bool asked)
    {
        var gaps = Gaps(words, worked: true);

        Assert.Equal(asked, gaps.Count == 1);
        Assert.All(gaps, gap => Assert.Equal((GapKind.WordsAgainstTheLog, "edited-one"), (gap.Kind, gap.Key)));
        Assert.All(gaps, gap => Assert.Contains("log holds work", gap.Words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("I thinned the corners, and it helped.", true)]
    [InlineData("Thin the corners when it is wet.", false)]
    [InlineData("No cane was taken from it.", false)]
    public void Work_that_the_log_does_not_hold_is_asked_about(string words, bool asked) => Assert.Equal(asked, Gaps(words, worked: false).Count == 1);

    [Fact]
    public void What_was_not_changed_by_hand_is_not_asked_about()
    {
        var material = Scene(worked: true).Material;

        Assert.DoesNotContain(LetterEdits.Gaps(LetterComposer.Compose(material), material), gap => gap.Kind == GapKind.WordsAgainstTheLog);
    }

    private static IReadOnlyList<LetterGap> Gaps(string words, bool worked)
    {
        var material = Scene(worked).Material;
        var composed = LetterComposer.Compose(material);
        return LetterEdits.Gaps(composed.EditedTo(new Dictionary<string, string> { ["reed-1-story"] = words }, composed), material);
    }

    private static LetterScene Scene(bool worked)
    {
        var scene = new LetterScene(2);
        Array.ForEach([1, 2], number => scene.Arrive(number));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
        if (worked)
        {
            scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));
        }

        return scene;
    }
}
