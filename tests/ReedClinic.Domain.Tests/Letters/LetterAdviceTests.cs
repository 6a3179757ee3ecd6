using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was written by hand against the letter's own advice is told before it goes, and nothing is locked by it.</summary>
public sealed class LetterAdviceTests
{
    private static readonly AgeAnswer?[] Ages = [null, AgeAnswer.OldEnough, AgeAnswer.Younger];

    [Theory]
    [InlineData("Scrape the heart yourself.", true)]
    [InlineData("If it is still stiff, thin the corners a little.", true)]
    [InlineData("You can take the knife to it after a week.", true)]
    [InlineData("Play it for a week, then clip it.", true)]
    [InlineData("Scrape the heart with me in your next lesson.", false)]
    [InlineData("Don’t scrape it.", false)]
    [InlineData("I scraped the heart a little.", false)]
    [InlineData("Leave the heart alone and play it often.", false)]
    [InlineData("You asked: “Shall I thin it myself?”", false)]
    [InlineData("Scrape the corners yourself if it does not speak.", true)]
    [InlineData("Thin it until no step is left.", true)]
    [InlineData("If it does not speak, scrape the corners.", true)]
    [InlineData("I scraped the heart a little, and you can thin the tip.", true)]
    [InlineData("Please don’t scrape, thin or clip it yourself.", false)]
    [InlineData("Don’t scrape the heart or thin the tip yourself.", false)]
    [InlineData("You need not thin it yourself.", false)]
    [InlineData("You can take nothing off: cut nothing yourself.", false)]
    [InlineData("I scraped the heart, clipped the tip, and cut the corners a little.", false)]
    public void A_knife_on_a_reed_that_comes_back_is_told(string words, bool told) => Assert.All(Ages, age =>
    {
        var gaps = Edited("reed-1-story", words, age);
        Assert.Equal(told, gaps.Count == 1);
        Assert.All(gaps, gap => Assert.Equal((GapKind.WordsAgainstTheAdvice, true, "reed-1-story"), (gap.Kind, gap.IsToldOnly, gap.Part)));
    });

    [Theory]
    [InlineData("plan", "Scrape the corners on your own.", AgeAnswer.Younger, true)]
    [InlineData("plan", "Scrape the corners on your own.", AgeAnswer.OldEnough, false)]
    [InlineData("plan", "Scrape the corners twice.", AgeAnswer.Younger, false)]
    [InlineData("reed-1-story", "On your next reed, scrape the corners sooner.", AgeAnswer.OldEnough, false)]
    [InlineData("reed-1-story", "On your next reed, scrape the corners sooner.", AgeAnswer.Younger, true)]
    [InlineData("plan", "Scrape the corners yourself if it does not speak.", AgeAnswer.Younger, true)]
    [InlineData("plan", "Thin the corners until no step is left, on your own.", AgeAnswer.Younger, true)]
    [InlineData("plan", "Don’t scrape the corners on your own.", AgeAnswer.Younger, false)]
    [InlineData("plan", "Scrape the heart thin.", AgeAnswer.OldEnough, true)]
    public void For_the_next_reed_a_knife_is_told_where_nobody_is_beside_it_or_it_takes_what_carries_a_reed(string part, string words, AgeAnswer age, bool told) =>
        Assert.Equal(told, Edited(part, words, age).Any(gap => gap.Kind == GapKind.WordsAgainstTheAdvice));

    [Theory]
    [InlineData("stroke", "Hold the knife upright, and go lightly.", true)]
    [InlineData("stroke", "Hold the knife upright, with your mother and me beside you.", false)]
    [InlineData("stroke", "", false)]
    [InlineData("cautions", "Mind the dust.", true)]
    [InlineData("cautions", "", true)]
    public void A_caution_that_was_taken_out_is_told(string part, string words, bool told) => Assert.All(Ages, age =>
        Assert.Equal(told, Edited(part, words, age).Any(gap => gap is { Kind: GapKind.CautionTakenOut, IsToldOnly: true } && gap.Part == part)));

    [Fact]
    public void What_nobody_changed_is_not_told() => Assert.All(Ages, age =>
    {
        var material = Scene().Material with { Age = age };
        Assert.DoesNotContain(LetterEdits.AllGaps(LetterComposer.Compose(material), material), IsOfAdvice);
    });

    private static bool IsOfAdvice(LetterGap gap) => gap.Kind is GapKind.WordsAgainstTheAdvice or GapKind.CautionTakenOut;

    private static IReadOnlyList<LetterGap> Edited(string part, string words, AgeAnswer? age)
    {
        var material = Scene().Material with { Age = age };
        var composed = LetterComposer.Compose(material);
        Assert.Contains(composed.Blocks, block => block.Key == part);
        return [.. LetterEdits.AllGaps(composed.EditedTo(new Dictionary<string, string> { [part] = words }, composed), material).Where(IsOfAdvice)];
    }

    private static LetterScene Scene()
    {
        var scene = new LetterScene(2, new Guid(1, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]));
        for (var number = 1; number <= 2; number++)
        {
            scene.Arrive(number);
            scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        }

        return scene;
    }
}
