using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A second letter remembers what the first one taught, as far as the logs tell.</summary>
public sealed class LetterBeforeTests
{
    private const int Seeds = 40;
    private const string Corners = "tip-corners-thick";
    private const string Line = "tip-not-separate";

    private static readonly EntryId Then = new(LetterScene.Id());
    private static readonly EarlierLesson InAllThree = new(new(Corners), new Tally(3, 3, 3), [Then]);

    [Fact]
    public void Without_an_earlier_letter_nothing_is_said_of_one() => ForEach(null, Line, [true, true, true], (letter, _) =>
        Assert.DoesNotMatch("(?i)last (time|letter|batch)|remember that|already: |not new to you", letter));

    [Fact]
    public void What_was_looked_for_and_is_on_none_of_them_stands_among_what_is_done_well() => ForEach(InAllThree, Line, [false, false, false], (letter, draft) =>
    {
        var good = draft.Blocks.Single(block => block.Key == "done-well");
        var said = good.Paragraphs[0].Sentences.Single(sentence => sentence.From.Contains(Then));
        Assert.Matches("(?i)last time|last wrote|last batch", said.Text);
        Assert.Contains("in all three reeds", said.Text, StringComparison.Ordinal);
        Assert.Matches("none of the three|no sign|did not find|without finding|nothing of the kind", said.Text);
        Assert.Equal(4, said.From.Count);
        Assert.DoesNotContain(draft.Blocks.Single(block => block.Key == "lesson").Paragraphs, paragraph => paragraph.Sentences.Any(sentence => sentence.From.Contains(Then)));
    });

    [Fact]
    public void What_shows_again_stands_with_the_lesson_kindly_and_names_the_reeds() => ForEach(InAllThree, Line, [true, false, true], (letter, draft) =>
    {
        var said = Before(draft);
        Assert.Contains("in reeds one and three", said, StringComparison.Ordinal);
        Assert.Contains("in all three reeds", said, StringComparison.Ordinal);
        Assert.Matches("(?i)less", said);
    });

    [Fact]
    public void Where_it_is_the_lesson_again_it_is_not_told_twice() => ForEach(InAllThree, Corners, [true, true, true], (letter, draft) =>
    {
        var said = Before(draft);
        Assert.Matches("(?i)last time|last batch|last letter", said);
        Assert.DoesNotContain("corners", said, StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)less", said);
        Assert.Matches("(?i)several reeds|a few reeds", said);
    });

    [Fact]
    public void Where_nobody_looked_for_it_nothing_is_said() => ForEach(InAllThree, Line, [null, null, null], (_, draft) =>
        Assert.DoesNotContain(draft.Blocks.SelectMany(block => block.Paragraphs).SelectMany(paragraph => paragraph.Sentences), sentence => sentence.From.Contains(Then)));

    /// <summary>Two of three that weren’t looked at for it are no progress.</summary>
    [Fact]
    public void Fewer_is_only_said_where_every_reed_was_looked_at_for_it() => ForEach(InAllThree, Line, [true, null, null], (_, draft) =>
    {
        Assert.Contains("in reed one", Before(draft), StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)less", Before(draft));
    });

    [Fact]
    public void Where_only_some_were_looked_at_for_it_those_are_named() => ForEach(InAllThree, Line, [false, null, false], (_, draft) =>
    {
        var said = draft.Blocks.Single(block => block.Key == "done-well").Paragraphs[0].Sentences.Single(sentence => sentence.From.Contains(Then));
        Assert.Contains("in reeds one and three", said.Text, StringComparison.Ordinal);
    });

    [Fact]
    public void Without_a_lesson_of_its_own_a_letter_says_it_at_the_beginning() => ForEach(InAllThree, null, [true, false, true], (_, draft) =>
        Assert.Contains(draft.Blocks[0].Paragraphs[^1].Sentences, sentence => sentence.From.Contains(Then)));

    /// <summary>A loose cork isn’t learnt over a few reeds.</summary>
    [Fact]
    public void What_is_no_matter_of_the_hand_is_not_said_to_take_time()
    {
        var scene = Scene(1, Line, [null]);
        scene.Log(1, Finding.Of(new("cork-loose"), FindingCharacter.Fault, new Place(Zone.Cork)));

        var said = LetterComposer.Compose(scene.Material with { Earlier = new(new("cork-loose"), new(1, 1, 1), [Then]) });

        Assert.DoesNotMatch("worry|several|a few reeds|patient", Before(said));
    }

    [Fact]
    public void An_earlier_letter_is_read_by_its_lesson_and_its_logs()
    {
        var scene = Scene(1, Corners, [true, false, true]);
        var sent = LetterComposer.Compose(scene.Material);
        IReadOnlyList<(Reed, BenchLog)> reeds = [.. scene.Batch.Reeds.Select(reed => (reed, scene.Material.LogOf(reed.Id)))];

        var lesson = EarlierLesson.Of(sent, reeds);

        Assert.Equal((new FindingKindId(Corners), new Tally(2, 3, 3), 2), (lesson!.Kind, lesson.Count, lesson.From.Count));
        Assert.Null(EarlierLesson.Of(sent with { LessonKind = null }, reeds));
        Assert.Null(EarlierLesson.Of(sent with { LessonKind = new("worn") }, reeds));
        Assert.Null(EarlierLesson.Of(sent.EditedTo(new Dictionary<string, string> { ["lesson"] = "" }, sent), reeds));
    }

    [Fact]
    public void A_finding_that_was_taken_back_counts_for_nothing()
    {
        var scene = Scene(1, Corners, [true, false, null]);
        var slip = scene.Log(3, Finding.Of(new(Corners), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        scene.Log(3, FindingEnded.Of(slip, FindingEnding.Gone, "That was my mistake."));
        IReadOnlyList<(Reed, BenchLog)> raw = [.. scene.Batch.Reeds.Select(reed => (reed, scene.Material.Logs[reed.Id]))];

        var lesson = EarlierLesson.Of(LetterComposer.Compose(scene.Material), raw);

        Assert.Equal((new Tally(1, 2, 3), 1), (lesson!.Count, lesson.From.Count));
        Assert.DoesNotContain(slip, lesson.From);
    }

    [Fact]
    public void A_lesson_that_was_rewritten_is_remembered_only_where_it_still_tells_what_was_found()
    {
        var scene = Scene(1, Corners, [true, true, true]);
        var sent = LetterComposer.Compose(scene.Material);
        IReadOnlyList<(Reed, BenchLog)> reeds = [.. scene.Batch.Reeds.Select(reed => (reed, scene.Material.LogOf(reed.Id)))];
        EarlierLesson? Remembered(string text) => EarlierLesson.Of(sent.EditedTo(new Dictionary<string, string> { ["lesson"] = text }, sent), reeds);

        Assert.Null(Remembered("Let your reeds dry in the open after each rehearsal."));
        Assert.NotNull(Remembered(sent.Blocks.Single(block => block.Key == "lesson").Text + " You are nearly there."));
    }

    private static string Before(LetterDraft draft)
    {
        var lesson = draft.Blocks.Single(block => block.Key == "lesson").Paragraphs;
        Assert.Equal(2, lesson.Count);
        Assert.Contains(Then, lesson[1].Sentences[0].From);
        return lesson[1].Text;
    }

    private static void ForEach(EarlierLesson? before, string? lesson, bool?[] found, Action<string, LetterDraft> holds)
    {
        for (var seed = 0; seed < Seeds; seed++)
        {
            var draft = LetterComposer.Compose(Scene(seed, lesson, found).Material with { Earlier = before });
            holds(string.Join('\n', draft.Blocks.Select(block => block.Text)), draft);
        }
    }

    private static LetterScene Scene(int seed, string? lesson, bool?[] found)
    {
        var scene = new LetterScene(found.Length, new Guid(seed, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]));
        for (var number = 1; number <= found.Length; number++)
        {
            scene.Arrive(number);
            if (lesson == Line)
            {
                scene.Log(number, Finding.Of(new(Line), FindingCharacter.Fault, new Place(Zone.Rooftop)));
            }

            if (found[number - 1] is true)
            {
                scene.Log(number, Finding.Of(new(Corners), FindingCharacter.Fault, new Place(Zone.TipCorners)));
            }
            else if (found[number - 1] is false)
            {
                scene.Log(number, LookedFor.Of(new(Corners)));
            }
        }

        scene.Thread = lesson is null ? LetterThread.Nothing : new LetterThread(new(lesson), null, "In all three reeds.");
        return scene;
    }
}
