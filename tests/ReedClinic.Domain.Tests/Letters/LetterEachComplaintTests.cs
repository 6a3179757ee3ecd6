using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Whatever is complained of is answered or asked back, and each thing once.</summary>
public sealed partial class LetterEachComplaintTests
{
    [Theory]
    [InlineData("My lips get so tired with this one and the high A is flat!!")]
    [InlineData("My lips are very tired after it, and the high A is flat.")]
    [InlineData("The high A is flat, and it makes my lips tired.")]
    public void Tired_lips_are_asked_back_beside_an_answer_about_pitch_and_named_to_the_teacher(string bothers)
    {
        var scene = Scene(bothers);
        scene.Log(1, Crow("B -20"));

        Assert.Matches("(test|nothing) (of|about) [^.]*how tiring it is", Story(scene));
        Assert.Contains("how tiring it is", Bothers(scene), StringComparison.Ordinal);
        Assert.Contains("the high notes", Bothers(scene), StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_to_the_second_of_two_names_what_it_answers()
    {
        var scene = Scene("My lips get so tired with this one and the high A is flat!!");
        scene.Log(1, Crow("B -20"));

        Assert.Matches("(?i)(for|to|about) its pitch: [^.]*its crow", Story(scene));
    }

    [Fact]
    public void A_soft_start_that_was_not_tried_is_told_once_though_it_is_marked_on_a_scale_too()
    {
        var scene = Scene("It doesn’t start softly, only with a thump.", scales: true);
        scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), knownBy: KnownBy.Plaque));

        Assert.Equal(1, Untried().Count(Story(scene)));
        Assert.Single(Gaps(scene), gap => gap.Words.Contains("soft starts", StringComparison.Ordinal) || gap.Words.Contains("the beginnings of notes", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("low notes growl", true)]
    [InlineData("the low notes growl too", true)]
    [InlineData("low notes don’t growl", false)]
    [InlineData("low notes come easily", false)]
    [InlineData("low notes growl no more", false)]
    public void What_was_remarked_of_it_when_it_came_is_told_as_met_where_it_says_just_that(string note, bool met)
    {
        var scene = Scene("My low D growls.");
        scene.Log(1, Note.Of(note));
        scene.Log(1, Crow("C"));

        Assert.Equal(met, Met().IsMatch(Story(scene)));
        Assert.Contains("the low notes", Story(scene), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_remarked_only_after_the_work_is_not_told_of_when_it_came()
    {
        var scene = Scene("My low D growls.");
        scene.Log(1, Crow("C"));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Note.Of("low notes growl"));

        Assert.DoesNotMatch(Met(), Story(scene));
    }

    [Fact]
    public void A_crow_that_answered_a_complaint_is_not_told_once_more_in_another_way()
    {
        var scene = Scene("The high A is flat.");
        scene.Log(1, Crow("B -20"));

        var letter = string.Join('\n', LetterComposer.Compose(scene.Material).Blocks.Where(block => block.Reed is not null).Select(block => block.Text));
        Assert.Contains("120 cents", letter, StringComparison.Ordinal);
        Assert.DoesNotContain("20 cents flat", letter, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lesson_without_words_of_the_teacher_and_without_what_became_of_it_leads_to_what_can_be_done()
    {
        var scene = Scene("It is heavy.");
        scene.Thread = new(new FindingKindId("tip-corners-thick"));
        scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));

        Assert.Matches("what to do (about it|next time), (comes next|follows|you can read below)", LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.Lesson).Text);

        scene.Thread = new(new FindingKindId("tip-corners-thick"), "Thin the corners before the middle.");
        Assert.DoesNotContain("what to do", LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.Lesson).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_crow_that_answered_a_complaint_and_was_worked_on_is_told_in_one_way_throughout()
    {
        var scene = Scene("The high A is flat.");
        scene.Log(1, Crow("B -20"));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Crow("B +40"));

        var parts = LetterComposer.Compose(scene.Material).Blocks.Where(block => block.Reed is not null).ToList();
        Assert.DoesNotMatch("a B\\b|cents (flat|sharp)", string.Join('\n', parts.Select(part => part.Text).Concat(parts.SelectMany(part => part.Rows).SelectMany(row => new[] { row.Before, row.Now }))));
        Assert.Equal(("120 cents below C", "60 cents below C"), parts.SelectMany(part => part.Rows).Where(row => row.Test == "crow").Select(row => (row.Before, row.Now)).Single());

        var once = Scene("It is heavy.");
        once.Log(1, Crow("B -20"));
        Assert.DoesNotContain("cents flat", string.Join('\n', LetterComposer.Compose(once.Material).Blocks.Select(part => part.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_second_complaint_whose_near_test_was_told_the_letter_says_that_it_was_not_tried()
    {
        var scene = Scene("Tongued notes are heavy. Soft notes come in with a bump.");
        scene.Log(1, Domain.Bench.Test.Of(TestKind.TonguedStarts, 0));

        Assert.Matches("no separate test of soft starts", Story(scene));
        Assert.Contains(Gaps(scene), gap => gap.Kind == GapKind.NotTriedSinceTheWork && gap.Words.Contains("soft starts", StringComparison.Ordinal));
    }

    private static string Story(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;

    private static string Bothers(LetterScene scene) => Assert.Single(Gaps(scene), gap => gap.Kind == GapKind.UnansweredComplaint).Words;

    private static IEnumerable<LetterGap> Gaps(LetterScene scene) => LetterComposer.Gaps(scene.Material).Concat(LetterEdits.Gaps(LetterComposer.Compose(scene.Material), scene.Material));

    private static Outcomes.Outcome<Domain.Bench.Test> Crow(string pitch) => Domain.Bench.Test.Of(TestKind.Crow, null, LetterScene.Done(SaidPitch.Read(pitch, Tuning.Standard)));

    private static LetterScene Scene(string bothers, bool scales = false)
    {
        var scene = new LetterScene(1, change: form =>
        {
            form.Reeds[0].Bothers = bothers;
            if (scales)
            {
                form.Reeds[0].Response = "1";
            }
        });
        scene.Arrive(1);
        return scene;
    }

    [GeneratedRegex("no (separate )?test of|nothing down about|no note about")]
    private static partial Regex Untried();

    [GeneratedRegex("I (noticed|met|found) the same when it (came|arrived)")]
    private static partial Regex Met();
}
