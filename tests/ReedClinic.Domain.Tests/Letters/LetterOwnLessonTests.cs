using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A lesson in the teacher’s own words is come back to in the next letter: it is asked how that went, and nothing is claimed.</summary>
public sealed class LetterOwnLessonTests
{
    private const string Words = "Evening scrape: leave the tip be for a night before you go on. The plaque can wait as well";
    private const string First = "Evening scrape: leave the tip be for a night before you go on.";

    [Fact]
    public void A_lesson_in_words_is_kept_as_the_student_has_read_it()
    {
        var scene = Scene(1, new(LessonWords: Words));
        var sent = LetterComposer.Compose(scene.Material);
        IReadOnlyList<(Reed, BenchLog)> reeds = [.. scene.Batch.Reeds.Select(reed => (reed, scene.Material.LogOf(reed.Id)))];

        var lesson = EarlierLesson.Of(sent, reeds);

        Assert.Equal(First, lesson!.Words);
        Assert.Null(EarlierLesson.Of(sent.EditedTo(new Dictionary<string, string> { ["lesson"] = "Something else." }, sent), reeds));
        Assert.Null(EarlierLesson.Of(sent with { LessonWords = string.Join(' ', Enumerable.Repeat("long", 60)) }, reeds));
        Assert.Null(LetterComposer.Compose(Scene(1, new(new("tip-long"), Words, "In this reed.")).Material).LessonWords);
    }

    [Theory]
    [InlineData("tip-corners-thick", null, "lesson")]
    [InlineData(null, "Draw the line first", "lesson")]
    [InlineData(null, null, "greeting")]
    public void The_next_letter_says_it_once_and_asks(string? kind, string? words, string part)
    {
        for (var seed = 1; seed <= 40; seed++)
        {
            var scene = Scene(seed, kind is null && words is null ? LetterThread.Nothing : new(kind is null ? null : new(kind), words, "In all three reeds."));
            scene.Earlier = new(default, default, []) { Words = First };
            var letter = LetterComposer.Compose(scene.Material);

            var said = Plain(letter.Blocks.Single(block => block.Key == part).Paragraphs[^1].Text);
            Assert.Contains($"“{First}”", said, StringComparison.Ordinal);
            Assert.Matches("(?i)(last time|last letter)[^“]*“[^”]*” (How|Did|Tell|Let|I would)", said);
            Assert.DoesNotMatch("less|again|found|gone\\b(?! with| [?.])|glad", said.Replace("How has that gone", "", StringComparison.Ordinal).Replace("that has gone", "", StringComparison.Ordinal));
            Assert.Single(Regex.Matches(Plain(string.Join('\n', letter.Blocks.Select(block => block.Text))), "Evening scrape"));
        }
    }

    [Fact]
    public void Where_it_is_said_again_it_is_not_quoted_as_well()
    {
        var scene = Scene(1, new(LessonWords: Words));
        scene.Earlier = new(default, default, []) { Words = First };

        var lesson = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "lesson");

        Assert.Single(Regex.Matches(Plain(lesson.Text), "Evening scrape"));
        Assert.Matches("(?i)read this before|not new to you|same last time", lesson.Paragraphs[^1].Text);
    }

    private static string Plain(string text) => Regex.Replace(text, " \\([^)]*\\)", "");

    private static LetterScene Scene(int seed, LetterThread thread)
    {
        var scene = new LetterScene(3, new Guid(seed, 7, 7, new byte[8])) { Thread = thread };
        Enumerable.Range(1, 3).ToList().ForEach(number =>
        {
            scene.Arrive(number);
            scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        });
        return scene;
    }
}
