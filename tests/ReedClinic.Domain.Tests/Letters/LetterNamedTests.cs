using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter doesn’t say that something wasn’t tried beside words of the teacher’s that name it, nor “the same” where a later remark names it.</summary>
public sealed class LetterNamedTests
{
    private const string Untried = "(?i)no (separate )?test of|can['’]t (say|tell you) anything yet|can say nothing yet|nothing to tell you yet|wrote nothing down|made no note|have no note|wrote down nothing|noted nothing";

    [Theory]
    [InlineData("The high notes drop", "It plays soft as butter. High A sags. Better: A holds.")]
    [InlineData("The low notes come late", "low D is free now, the rest follows")]
    [InlineData("It sounds flat", "the pitch has come up a good deal")]
    public void What_words_beside_the_verdict_name_is_not_called_untried(string bothers, string words)
    {
        var scene = Scene(bothers);
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, words));

        Assert.DoesNotMatch(Untried, Text(scene));
        Assert.Matches("(?i)(as for) .*how (it is|they are)", Text(scene));
        var gap = Assert.Single(Gaps(scene), one => one.Kind == GapKind.UnansweredComplaint);
        Assert.Contains("words at the bench name it: “" + words.TrimEnd('.'), gap.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("and the letter says so", gap.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("High A sags a little")]
    [InlineData("top notes want watching")]
    public void Nor_what_the_words_of_a_finding_name(string words)
    {
        var scene = Scene("The high notes drop");
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.WholeReed), words: words));

        Assert.DoesNotMatch(Untried, Text(scene));
    }

    [Fact]
    public void What_nothing_names_is_asked_back_as_before()
    {
        var scene = Scene("The high notes drop");
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        scene.Log(1, Note.Of("by the window, warm today"));

        Assert.Matches(Untried, Text(scene));
    }

    [Theory]
    [InlineData("solo bump's gone, low D comes every time now, starts pp", true)]
    [InlineData("softly now, every time", true)]
    [InlineData("by the window, warm today", false)]
    public void What_a_later_remark_names_is_told_as_it_came_and_the_teacher_is_warned(string note, bool isNamed)
    {
        var scene = Scene("It starts with a bump");
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
        scene.Log(1, Note.Of(note));

        Assert.Equal(!isNamed, System.Text.RegularExpressions.Regex.IsMatch(Text(scene), "(?i)the same|I met that too|and met it too"));
        var gap = Gaps(scene).SingleOrDefault(one => one.Kind == GapKind.UnansweredComplaint);
        Assert.Equal(isNamed, gap is not null);
        Assert.True(!isNamed || gap!.Words.Contains(note, StringComparison.Ordinal));
    }

    private static LetterScene Scene(string bothers)
    {
        var scene = new LetterScene(1, new Guid(1, 8, 8, new byte[8]), form =>
        {
            form.Questions = null;
            foreach (var reed in form.Reeds)
            {
                (reed.Bothers, reed.Questions) = (bothers, null);
            }
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        return scene;
    }

    private static string Text(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;

    private static IReadOnlyList<LetterGap> Gaps(LetterScene scene) => LetterEdits.AllGaps(LetterComposer.Compose(scene.Material), scene.Material);
}
