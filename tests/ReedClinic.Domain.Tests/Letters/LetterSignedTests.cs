using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>No sentence stands in a letter that its teacher would not sign.</summary>
public sealed class LetterSignedTests
{
    [Theory]
    [InlineData("The crack was wrong,")]
    [InlineData("the crack was wrong, it is a scratch in the bark")]
    [InlineData("No crack after all.")]
    [InlineData("my mistake")]
    [InlineData("I misheard")]
    [InlineData("Wrong reed,")]
    public void A_finding_that_was_taken_back_is_gone_with_its_end(string words)
    {
        var scene = Scene();
        var crack = scene.Log(1, Finding.Of(new("tip-cracked"), FindingCharacter.Fault, new Place(Zone.TipEdge)));
        scene.Log(1, FindingEnded.Of(crack, FindingEnding.Gone, words));
        scene.Log(1, Test.Of(TestKind.Seal, 3));

        var letter = LetterComposer.Compose(scene.Material);
        Assert.DoesNotMatch("(?i)crack|split|wrong|mistake|misheard|scratch", Text(letter));
        Assert.Empty(letter.Reeds[0].Marks);
    }

    [Theory]
    [InlineData("It took two passes,", "It took two passes.")]
    [InlineData("The step was wrong, now it is right", "The step was wrong, now it is right.")]
    [InlineData("I thinned the wrong corner first ;", "I thinned the wrong corner first.")]
    public void A_remark_on_an_end_is_a_whole_sentence(string words, string says)
    {
        var scene = Scene();
        var step = scene.Log(1, Finding.Of(new("step-abrupt"), FindingCharacter.Fault, new Place(Zone.Transition)));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2), step));
        scene.Log(1, FindingEnded.Of(step, FindingEnding.Gone, words));

        var text = Text(LetterComposer.Compose(scene.Material));
        Assert.Contains(says, text, StringComparison.Ordinal);
        Assert.DoesNotMatch("[,;] ?\\.", text);
    }

    [Theory]
    [InlineData("Leave it, she should play it in an hour a day first.", "she should")]
    [InlineData("Ines wants it dark", "Ines wants")]
    [InlineData("The student said it is fine.", "student said")]
    [InlineData("They should practise on it.", "They should")]
    [InlineData("Good as it is for his lips", "his lips")]
    public void What_speaks_of_the_student_is_told_to_the_teacher_and_stands_neither_in_the_letter_nor_on_the_drawing(string words, string part)
    {
        var scene = Scene();
        var corners = scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), words: words));
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.HeartCentre), words: words));
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        scene.Log(1, Risk.Of(words));
        scene.Log(1, Adjustment.Of(AdjustmentKindId.SomethingElse, new Place(Zone.TipCorners), words: words));
        scene.Log(1, FindingEnded.Of(corners, FindingEnding.Better, words));
        scene.Log(1, LeaveAlone.Of(new Place(Zone.HeartCentre), words));
        scene.Log(1, Stopped.Of(words + " Every stroke gave less."));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, words));

        var letter = LetterComposer.Compose(scene.Material);
        Assert.DoesNotContain(part, Text(letter), StringComparison.Ordinal);
        Assert.DoesNotContain(letter.Reeds[0].Marks, mark => (mark.Words + mark.Detail).Contains(part, StringComparison.Ordinal));
        Assert.DoesNotContain(letter.Reeds[0].Marks, mark => mark.Words.Length == 0);
        Assert.DoesNotContain(Sentences(letter), sentence => sentence.Trim('.', ' ').Length == 0);
        var gap = Assert.Single(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.SpokenOfTheStudent);
        Assert.True(gap.IsToldOnly);
        Assert.Contains(part, gap.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Ask your teacher, she knows this cane.")]
    [InlineData("The blades are alike, and they should close together.")]
    [InlineData("They want more time in the water")]
    [InlineData("You should play it in first.")]
    public void What_speaks_of_anybody_or_anything_else_stays(string words)
    {
        var scene = Scene();
        scene.Log(1, LeaveAlone.Of(new Place(Zone.HeartCentre), words));

        Assert.Contains(words.TrimEnd('.'), Text(LetterComposer.Compose(scene.Material)), StringComparison.Ordinal);
        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.SpokenOfTheStudent);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_sentence_of_the_parcel_that_is_left_out_is_told_to_the_teacher_where_the_letter_would_have_held_it(bool chosen)
    {
        var scene = Scene();
        scene.Batch.NoteOnArrival("The box was wet. She should pack it in foam.", chosen);

        var text = Text(LetterComposer.Compose(scene.Material));
        Assert.Equal(chosen, text.Contains("The box was wet.", StringComparison.Ordinal));
        Assert.DoesNotContain("foam", text, StringComparison.Ordinal);
        Assert.Equal(
            chosen ? ["“She should pack it in foam.”"] : [],
            LetterComposer.Gaps(scene.Material).Where(gap => gap is { Kind: GapKind.SpokenOfTheStudent, Reed: null, IsToldOnly: true })
                .Select(gap => System.Text.RegularExpressions.Regex.Match(gap.Words, "“.*”").Value));
    }

    private static LetterScene Scene(int reeds = 1, int seed = 1, Action<ReedForm>? change = null, string? questions = null)
    {
        var scene = new LetterScene(reeds, new Guid(seed, 8, 8, new byte[8]), form =>
        {
            form.Questions = questions;
            foreach (var reed in form.Reeds)
            {
                (reed.Bothers, reed.Questions) = ("Nothing", null);
                change?.Invoke(reed);
            }
        })
        { Thread = LetterThread.Nothing };
        for (var number = 1; number <= reeds; number++)
        {
            scene.Arrive(number);
        }

        return scene;
    }

    private static IEnumerable<string> Sentences(LetterDraft letter) => letter.Blocks.SelectMany(block => block.Paragraphs).SelectMany(paragraph => paragraph.Sentences).Select(sentence => sentence.Text);

    private static string Text(LetterDraft letter) => string.Join("\n", letter.Blocks.Select(block => block.Text));
}
