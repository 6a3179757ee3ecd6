using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter speaks in sentences, says a long phrase once, and explains where it counts from.</summary>
public sealed class LetterPlainWordsTests
{
    [Fact]
    public void No_test_stands_as_a_key_with_its_word_in_brackets() => ForEach(scene => Assert.All(Parts(scene), part =>
        Assert.DoesNotMatch(@"the [a-z ]+ \((right|a little open|closed|late|unsure|covered|thin|breaks)\)|thread and overlap|overlap and thread", part.Text)));

    [Fact]
    public void What_a_work_is_good_for_and_how_it_was_done_is_said_at_length_once() => ForEach(scene =>
    {
        var letter = string.Join(' ', Parts(scene).Select(part => part.Text));
        Assert.Single(Regex.Matches(letter, "stronger by comparison"));
        Assert.Single(Regex.Matches(letter, "light strokes, all four quarters"));
        Assert.Equal(2, Regex.Count(letter, @"\(as on reed one\)"));
    });

    [Fact]
    public void That_safe_changes_were_wished_for_is_said_once_and_kept_twice() => ForEach(scene =>
    {
        var letter = string.Join(' ', Parts(scene).Select(part => part.Text));
        Assert.Single(Regex.Matches(letter, "(?i)safe changes"));
        Assert.InRange(Regex.Count(letter, "(?i)small steps|a little at a time"), 2, 3);
    });

    [Fact]
    public void A_crow_is_told_from_the_note_that_the_drawing_counts_from()
    {
        var rows = Parts(Worked(1)).Single(part => part.Key == "reed-1-now").Rows;

        var crow = Assert.Single(rows, row => row.Test == "crow");
        Assert.Equal("high and low at once; 70 cents below C", crow.Before);
        Assert.Equal("high first, then low as well; 5 cents below C", crow.Now);
    }

    [Fact]
    public void Cents_are_explained_before_a_drawing_counts_in_them()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Test.Of(TestKind.Crow, 0, Pitch("B")));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.Crow, 0, Pitch("C")));

        Assert.Contains("a hundredth of a semitone", Parts(scene).Single(part => part.Key == "reed-1-now").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reason_with_a_colon_of_its_own_stands_by_itself() => ForEach(scene =>
    {
        var story = Parts(scene).Single(part => part.Key == "reed-1-story").Text;
        Assert.Contains(". Every start was clean: nothing more to win.", story, StringComparison.Ordinal);
    });

    private static IReadOnlyList<LetterBlock> Parts(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks;

    private static void ForEach(Action<LetterScene> holds)
    {
        for (var seed = 1; seed <= 24; seed++)
        {
            holds(Worked(seed));
        }
    }

    private static LetterScene Worked(int seed)
    {
        var scene = new LetterScene(3, new Guid(seed, 3, 3, [8, 7, 6, 5, 4, 3, 2, 1]), form => form.Reeds.ToList().ForEach(reed => reed.Permission = "SafeChangesOnly"));
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number, new(Presence.Here, null, WindingHand.Right, Overlap.UpperToTheLeft, true, null, Fitness.Fit));
            scene.Log(number, Test.Of(TestKind.Opening, 2));
            scene.Log(number, Test.Of(TestKind.LowResponse, 1));
            scene.Log(number, Test.Of(TestKind.Crow, 1, Pitch("B +30")));
            scene.Log(number, Adjustment.Of(
                new("define-tip"), new Place(Zone.Rooftop), new Amount(Words: "light strokes, all four quarters"), forTheSakeOf: Zone.HeartCentre));
            scene.Log(number, Test.Of(TestKind.Crow, 0, Pitch("C -5")));
            scene.Log(number, Stopped.Of("every start was clean: nothing more to win"));
            scene.Log(number, Verdict.Of(VerdictKind.Improved));
        }

        return scene;
    }

    private static SaidPitch Pitch(string text) => LetterScene.Done(SaidPitch.Read(text, Tuning.Standard));
}
