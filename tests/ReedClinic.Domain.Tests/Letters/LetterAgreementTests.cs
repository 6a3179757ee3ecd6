using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What the student agreed to since is told as agreed.</summary>
public sealed class LetterAgreementTests
{
    [Theory]
    [InlineData("AdviseOnly", "clean-inside", "advice only; I did work on it, ")]
    [InlineData("SafeChangesOnly", "thin-spine", "safe changes only; I did take some cane away, ")]
    public void Work_that_was_agreed_on_is_no_gap_and_is_told_as_agreed(string permission, string kind, string told)
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Permission = permission);
        scene.Arrive(1);
        var work = scene.Log(1, Adjustment.Of(new(kind), new Place(Zone.TipCorners), words: Agreement.With("a nudge")));

        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.WorkBeyondTheWish);
        Assert.Equal([work], Sentence(scene, told + "(and|which) we have agreed on( it)? since.").From);

        var more = scene.Log(1, Adjustment.Of(new("clip"), new Place(Zone.TipEdge)));

        Assert.Single(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.WorkBeyondTheWish);
        Assert.Equal([more], Sentence(scene, told.Split(';')[0] + "[,;] (and|and yet|all the same|even so) " + told.Split("; ")[1].TrimEnd(',', ' ') + "[.]").From);
        Assert.Equal([work], Sentence(scene, "of the work went .*, and we have agreed on it since.").From);
    }

    [Theory]
    [InlineData("AdviseOnly", "clean-inside", "advice only, and I went further than that without asking you first: I did work on it; ")]
    [InlineData("SafeChangesOnly", "thin-spine", "safe changes only, and I went further than that without asking you first: I did take some cane away; ")]
    public void What_was_done_without_being_agreed_is_told_so_kindly_and_claims_no_agreement(string permission, string kind, string told)
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Permission = permission);
        scene.Arrive(1);
        var work = scene.Log(1, Adjustment.Of(new(kind), new Place(Zone.TipCorners), words: Agreement.With("a nudge", agreed: false)));

        Assert.Equal([work], Sentence(scene, told + "(please|do) tell me if you would rather .*[.]").From);
        Assert.DoesNotMatch("(?i)agreed", Text(scene, "reed-1-story"));
        Assert.Single(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.WorkBeyondTheWish);

        scene.Log(1, Adjustment.Of(new("clip"), new Place(Zone.TipEdge), words: Agreement.With(null)));
        Assert.Single(Sentence(scene, "went (further|beyond).*, and we have agreed on it since.").From);
    }

    [Fact]
    public void What_was_typed_for_the_log_to_say_that_it_was_agreed_is_not_run_together_in_the_letter()
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Permission = "AdviseOnly");
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new("something-else"), new Place(Zone.Rails), words: "eased the rails Agreed with the student since."));

        var letter = LetterComposer.Compose(scene.Material);

        Assert.Contains(" I eased the rails. ", Text(scene, "reed-1-story"), StringComparison.Ordinal);
        Assert.DoesNotContain(Agreement.Since, Text(scene, "reed-1-story"), StringComparison.Ordinal);
        Assert.Equal("eased the rails", Assert.Single(letter.Reeds[0].Marks, mark => mark.Kind == MarkKind.Worked).Words);
    }

    private static LetterSentence Sentence(LetterScene scene, string told) => Assert.Single(
        LetterComposer.Compose(scene.Material).Blocks.SelectMany(block => block.Paragraphs).SelectMany(paragraph => paragraph.Sentences),
        sentence => Regex.IsMatch(sentence.Text, told + "$"));

    private static string Text(LetterScene scene, string key) =>
        LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == key).Text;
}
