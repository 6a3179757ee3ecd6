using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was muttered at the bench isn’t what a student reads.</summary>
public sealed class LetterBenchTalkTests
{
    [Fact]
    public void What_was_typed_stays_at_the_bench_and_stands_nowhere_in_a_letter_its_drawings_or_its_gaps()
    {
        var (plain, typed) = (Scene(), Scene());
        foreach (var (scene, words) in new[] { (plain, (string?)null), (typed, "quaint words of the bench") })
        {
            var corners = Log(scene, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)), words);
            Log(scene, Test.Of(TestKind.Seal, 3), words);
            Log(scene, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)), words);
            Log(scene, Test.Of(TestKind.SoftestStart, 3), words);
            Log(scene, FindingEnded.Of(corners, FindingEnding.Better), words);
            Log(scene, LeaveAlone.Of(new Place(Zone.HeartCentre), "it holds the pitch"), words);
            Log(scene, Risk.Of("The corners may tear."), words);
            Log(scene, Note.Of("by the window"), words);
            Log(scene, Stopped.Of("It speaks."), words);
            Log(scene, Verdict.Of(VerdictKind.Improved), words);
        }

        var letter = LetterComposer.Compose(typed.Material);
        Assert.DoesNotContain("quaint", Text(letter), StringComparison.Ordinal);
        Assert.DoesNotContain(letter.Reeds.SelectMany(reed => reed.Marks), mark => (mark.Words + mark.Detail).Contains("quaint", StringComparison.Ordinal));
        Assert.DoesNotContain(letter.Blocks.SelectMany(block => block.Rows), row => $"{row.Test} {row.Before} {row.Now}".Contains("quaint", StringComparison.Ordinal));
        Assert.Equal(LetterComposer.Gaps(plain.Material).Select(gap => gap.Kind), LetterComposer.Gaps(typed.Material).Select(gap => gap.Kind));
        Assert.DoesNotContain(LetterComposer.Gaps(typed.Material), gap => gap.Words.Contains("quaint", StringComparison.Ordinal));
    }

    private static EntryId Log<T>(LetterScene scene, Domain.Outcomes.Outcome<T> entry, string? words)
        where T : BenchEntry => scene.Log(1, new Domain.Outcomes.Outcome<BenchEntry>.Done(LetterScene.Done(entry).AsSaid(words)));

    [Theory]
    [InlineData("nothing more to be done with this one, retire it", "retire")]
    [InlineData("not to be saved, too old", "too old")]
    [InlineData("Whoever tied this was in a hurry.", "Whoever")]
    [InlineData("An awful tip. It moves to the left.", "awful")]
    [InlineData("what a mess, hopeless", "hopeless")]
    public void What_is_blunt_is_told_to_the_teacher_and_stands_neither_in_the_letter_nor_on_the_drawing(string words, string part)
    {
        var scene = Scene();
        var corners = scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), words: words));
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.HeartCentre), words: words));
        scene.Log(1, Test.Of(TestKind.Seal, 3, words: words));
        scene.Log(1, Test.Of(TestKind.Depth, words: words));
        scene.Log(1, Test.Of(TestKind.Depth, words: words));
        scene.Log(1, FindingEnded.Of(corners, FindingEnding.Better, words));
        scene.Log(1, LeaveAlone.Of(new Place(Zone.HeartCentre), words));
        scene.Log(1, Stopped.Of(words));
        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved, words));

        var letter = LetterComposer.Compose(scene.Material);
        Assert.DoesNotContain(part, Text(letter), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(letter.Reeds[0].Marks, mark => (mark.Words + mark.Detail).Contains(part, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain(letter.Blocks.SelectMany(block => block.Rows), row => $"{row.Before} {row.Now}".Contains(part, StringComparison.OrdinalIgnoreCase));
        var gap = Assert.Single(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.BluntAtTheBench);
        Assert.True(gap.IsToldOnly);
        Assert.Matches($"(?i)said at the bench: “.*{part}.*put it in words for them\\?", gap.Words);
    }

    [Theory]
    [InlineData("every stroke was giving less")]
    [InlineData("Nothing more to do: it plays.")]
    [InlineData("An old crack in the bark")]
    [InlineData("There is an awful lot of cane left")]
    [InlineData("the corner is torn")]
    public void What_is_plain_stays(string words)
    {
        var scene = Scene();
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        scene.Log(1, Stopped.Of(words));

        Assert.Contains(words.TrimEnd('.'), Text(LetterComposer.Compose(scene.Material)), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(LetterComposer.Gaps(scene.Material), gap => gap.Kind == GapKind.BluntAtTheBench);
    }

    [Fact]
    public void Neither_a_key_nor_a_cell_ends_where_a_sentence_was_cut_off()
    {
        var scene = Scene();
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Strength, new Place(Zone.WholeReed), words: "nice cane,"));
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.TipSides), words: "a ridge that runs from the left of the tip towards the middle and on to the right, seen in light"));
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.HeartSides), words: "the left of the heart wants looking at in the light, since there is something like a shadow"));
        scene.Log(1, LeaveAlone.Of(new Place(Zone.HeartCentre), "it holds the pitch –"));
        scene.Log(1, Test.Of(TestKind.HighSteadiness, words: "high A sags,"));
        scene.Log(1, Test.Of(TestKind.Crow, words: "crow C minus 220 ,"));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
        scene.Log(1, Test.Of(TestKind.HighSteadiness, words: "high A still sags,"));
        scene.Log(1, Test.Of(TestKind.Crow, words: "crow C minus 220 still,"));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));

        var letter = LetterComposer.Compose(scene.Material);
        var rows = letter.Blocks.SelectMany(block => block.Rows).ToList();
        Assert.Contains(rows, row => row is { Before: "high A sags", Now: "high A still sags (last tried before the last work)" });
        Assert.Contains(rows, row => row is { Before: "crow C minus 220", Now: "crow C minus 220 still (last tried before the last work)" });
        var lines = letter.Reeds[0].Marks.Select(ReedSketch.Say).ToList();
        Assert.Contains("whole reed: nice cane", lines);
        Assert.Contains(lines, line => line.EndsWith(": the left of the heart wants looking at in the light", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.EndsWith(" of the tip towards the…", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.EndsWith(',') || line.EndsWith('–'));

        // “Dear Ines,” and “With kind regards,” end in a comma by right.
        Assert.All(letter.Blocks.Where(block => block.Kind is not (BlockKind.Greeting or BlockKind.Closing)), block => Assert.DoesNotMatch("[,;–] ?[.\n]", block.Text + "\n"));
    }

    [Theory]
    [InlineData("The high notes have a floor again.", "the high notes have a floor again", "the high notes have a floor again")]
    [InlineData("it speaks at once now", "Improved: it speaks at once now", "it speaks at once now")]
    [InlineData("every stroke gave less", "improved, the low D is free", "The low D is free.")]
    public void What_was_said_beside_a_verdict_is_said_once(string stopped, string words, string once)
    {
        var scene = Scene();
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        scene.Log(1, Stopped.Of(stopped));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, words));

        var text = Text(LetterComposer.Compose(scene.Material));
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(text, "(?i)" + System.Text.RegularExpressions.Regex.Escape(once)));
        Assert.DoesNotMatch("(?i)improved[:,]", text);
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(30, false)]
    public void Of_two_verdicts_in_one_breath_the_later_is_told_and_what_else_the_earlier_says(int minutes, bool both)
    {
        var scene = Scene();
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1)));
        scene.Log(1, Test.Of(TestKind.Seal, 3));
        scene.Log(1, Verdict.Of(VerdictKind.NeedsPlayingIn, "The low D wants a couple of days."));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, "The low D is free."), minutes);

        var text = Text(LetterComposer.Compose(scene.Material));
        Assert.Equal(both, text.Contains("The low D wants a couple of days.", StringComparison.Ordinal));
        Assert.Contains("The low D is free.", text, StringComparison.Ordinal);
        Assert.DoesNotMatch("for a week|a week of", text);
    }

    [Fact]
    public void Of_two_verdicts_of_which_one_gives_the_reed_up_the_later_is_told_alone()
    {
        var scene = Scene();
        scene.Log(1, Test.Of(TestKind.Seal, 0));
        scene.Log(1, Verdict.Of(VerdictKind.NotToBeSaved, "The corner is torn."));
        scene.Log(1, Verdict.Of(VerdictKind.AsGoodAsThisCaneGets, "It will do for practice."));

        var text = Text(LetterComposer.Compose(scene.Material));
        Assert.DoesNotContain("torn", text, StringComparison.Ordinal);
        Assert.Contains("It will do for practice.", text, StringComparison.Ordinal);
    }

    private static LetterScene Scene()
    {
        var scene = new LetterScene(1, new Guid(1, 8, 8, new byte[8]), form =>
        {
            form.Questions = null;
            foreach (var reed in form.Reeds)
            {
                (reed.Bothers, reed.Questions) = ("Nothing", null);
            }
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        return scene;
    }

    private static string Text(LetterDraft letter) => string.Join("\n", letter.Blocks.Select(block => block.Text));
}
