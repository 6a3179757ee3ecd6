using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What only whoever stands at the bench can read isn’t put into a letter: the teacher is asked to say it.</summary>
public sealed class LetterShorthandTests
{
    [Theory]
    [InlineData("L corner worse, R ok", null)]
    [InlineData("heart v thick, esp. L", null)]
    [InlineData("R is thicker", null)]
    [InlineData("tip ok", null)]
    [InlineData("crow up w/ clip -> stop", null)]
    [InlineData("Wire a touch loose. L ok.", "The wire is a touch loose.")]
    [InlineData("It is ok now.", "It is ok now.")]
    [InlineData("The low D is late.", "The low D is late.")]
    public void Shorthand_of_the_bench_is_left_out_and_listed(string words, string? told) => Assert.All(Enumerable.Range(1, 10), seed =>
    {
        var scene = new LetterScene(1, new Guid(seed, 4, 4, new byte[8]), form => (form.Questions, form.Reeds[0].Bothers) = (null, "Nothing")) { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        scene.Log(1, Finding.Of(new("heart-thick"), FindingCharacter.Fault, new Place(Zone.HeartCentre)));
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.WholeReed), words: words));
        scene.Log(1, Verdict.Of(VerdictKind.LeftAsItCame, words));

        var letter = LetterComposer.Compose(scene.Material);
        var story = letter.Blocks.Single(block => block.Key == "reed-1-story").Text;
        var gap = LetterComposer.Gaps(scene.Material).SingleOrDefault(one => one.Kind == GapKind.ShorthandAtTheBench);

        Assert.Contains("heart", story, StringComparison.Ordinal);
        Assert.Contains(told ?? "", story, StringComparison.Ordinal);
        if (told is null || words.Contains("L ok", StringComparison.Ordinal))
        {
            Assert.DoesNotMatch(@"\bL\b|\bR\b|\bok\b|esp|w/", story + string.Join(' ', letter.Reeds.SelectMany(reed => reed.Marks).Select(mark => mark.ToString())));
            Assert.Contains(words.Split(". ")[^1].TrimEnd('.'), gap!.Words, StringComparison.Ordinal);
            Assert.True(gap.IsToldOnly);
        }
        else
        {
            Assert.Null(gap);
        }
    });

    [Theory]
    [InlineData("Left corner chipped on both blades.", true)]
    [InlineData("Left corner chipped, old", false)]
    public void That_both_blades_have_it_is_said_in_the_words_of_the_letter(string words, bool isOurs)
    {
        var scene = new LetterScene(1, change: form => (form.Questions, form.Reeds[0].Bothers) = (null, "Nothing")) { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        scene.Log(1, Finding.Of(new("tip-corner-broken"), FindingCharacter.Fault, new Place(Zone.TipCorners, Sides: Sides.Left), words: words));

        var letter = LetterComposer.Compose(scene.Material);
        var story = letter.Blocks.Single(block => block.Key == "reed-1-story").Text;

        Assert.Equal(isOurs, story.Contains("on both blades.", StringComparison.Ordinal));
        Assert.NotEqual(isOurs, story.Contains("orner chipped", StringComparison.Ordinal));
        Assert.Equal((Blades.Both, Sides.Left), Assert.Single(letter.Reeds[0].Marks.Select(mark => (mark.Place.Blades, mark.Place.Sides))));
    }
}
