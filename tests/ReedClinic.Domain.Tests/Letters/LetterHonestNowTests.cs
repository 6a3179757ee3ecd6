using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>“Better” follows one rule in sentences and tables, and what wasn’t tried is said to be so.</summary>
public sealed class LetterHonestNowTests
{
    [Theory]
    [InlineData("C +25", 0, "C", 0, Movement.Nearer)]
    [InlineData("C +10", 1, "C", 0, Movement.Nearer)]
    [InlineData("C +10", 0, "C", 0, Movement.Nearer)]
    [InlineData("C +6", 0, "C", 0, Movement.Same)]
    [InlineData("C -15", 0, "C +12", 0, Movement.Same)]
    [InlineData("C", 0, "C +25", 0, Movement.Further)]
    [InlineData("B +30", 0, "C", 0, Movement.Nearer)]
    [InlineData("C", 1, "C -40", 0, Movement.Same)]
    public void A_crow_is_better_by_its_word_and_by_its_cents_in_the_table_as_in_the_sentences(string before, int was, string after, int now, Movement expected)
    {
        var scene = Scene("It tastes of tea.");
        scene.Log(1, Test.Of(TestKind.Crow, was, Pitch(before)));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.Crow, now, Pitch(after)));

        var block = Now(scene);
        Assert.Equal(expected, Assert.Single(block.Rows).Movement);
        var text = Regex.Replace(block.Text, @" \([^)]*\)", ""); // without what a word of the trade means
        Assert.Equal(expected == Movement.Nearer, Regex.IsMatch(text, "crow (stands|is) (nearer|closer) to C|crows? (comes )?more clearly|crow is clearer"));
        Assert.True((expected == Movement.Further) == Regex.IsMatch(text, "[Ss]omething (in|was lost in|has been lost in) the crow"), text);
    }

    [Fact]
    public void What_is_called_better_reads_as_better_of_low_notes()
    {
        var scene = Scene("It tastes of tea.");
        scene.Log(1, Test.Of(TestKind.LowResponse, 1));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.LowResponse, 2));

        var row = Assert.Single(Now(scene).Rows);
        Assert.Equal(("late", "speak with a little care", Movement.Nearer), (row.Before, row.Now, row.Movement));
    }

    [Theory]
    [InlineData("clip-hair", "cut")]
    [InlineData("thin-corners", "work")]
    public void What_was_not_tried_since_is_neither_now_nor_better(string kind, string told)
    {
        var scene = Scene("Soft notes don’t start.");
        scene.Log(1, Test.Of(TestKind.SoftestStart, 0));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3));
        scene.Log(1, Adjustment.Of(new(kind), new Place(Zone.TipEdge)));

        var row = Assert.Single(Now(scene).Rows);
        Assert.EndsWith($" (last tried before the last {told})", row.Now, StringComparison.Ordinal);
        Assert.Equal(Movement.NotComparable, row.Movement);
        Assert.Matches($"when I last tried it, before the last {told}, it started on a breath", Story(scene));
    }

    [Theory]
    [InlineData("A little flat by the end of a rehearsal.")]
    [InlineData("Fuzzy, and a little flat by the end of a rehearsal.")]
    public void A_complaint_that_another_test_answers_is_said_not_to_have_been_tried_itself(string bothers)
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var scene = Scene(bothers, new Guid(seed, 7, 7, new byte[8]));
            scene.Log(1, Test.Of(TestKind.TonguedStarts, 0));
            scene.Log(1, Test.Of(TestKind.Crow, 0, Pitch("C -40")));
            scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
            scene.Log(1, Test.Of(TestKind.TonguedStarts, 3));
            scene.Log(1, Test.Of(TestKind.Crow, 0, Pitch("C")));

            Assert.Matches("(?i)I (made no test of|did not test|have no test of) (just|exactly) that, but ", Story(scene));
        }
    }

    [Fact]
    public void What_its_own_test_answers_is_not_said_to_be_untried()
    {
        var scene = Scene("A little flat.");
        scene.Log(1, Test.Of(TestKind.TuningNote, 1));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.TuningNote, 2));
        Assert.DoesNotMatch("(made no test of|did not test|no test of) (just|exactly) that", Story(scene));
    }

    /// <summary>The teacher’s words on when to play it stand alone; that it settles is no advice on playing.</summary>
    [Fact]
    public void Each_reed_that_was_worked_on_is_said_to_settle_also_where_the_teacher_said_how_to_play_it()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var scene = new LetterScene(2, new Guid(seed, 7, 7, new byte[8]), form => form.Questions = null) { Thread = LetterThread.Nothing };
            for (var number = 1; number <= 2; number++)
            {
                scene.Arrive(number);
                scene.Log(number, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
                scene.Log(number, Test.Of(TestKind.SoftestStart, 3));
                scene.Log(number, Verdict.Of(VerdictKind.Improved, number == 2 ? "Let it rest a day before the concert." : null));
            }

            var care = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.Care).Text;
            Assert.Matches(@"(change|changes|settles|settle)\b", care);
            Assert.Matches(@"(?i)three (easy |gentle |quiet )?days", care);
            Assert.DoesNotMatch("(?i)reeds? (one|two)", care);
            Assert.Matches(@"(?i)(settle|change)[^.]*each reed|each reed[^.]*(settle|change)", care);
        }
    }

    [Theory]
    [InlineData("Nothing really, it is my best one. Is it?", "Nothing really, it is my best one. Is it?")]
    [InlineData("It is rough. Really?", "It is rough. Really?")]
    [InlineData("I want to scrape it. Can I?", "I want to scrape it. Can I?")]
    [InlineData("My friend says it is too long. Is that true?", "My friend says it is too long. Is that true?")]
    [InlineData("It squeaks. Why?", "It squeaks. Why?")]
    [InlineData("Is it too open? Or am I?", "Is it too open? Or am I?")]
    [InlineData("It is flat. Is it too long?", "Is it too long?")]
    [InlineData("It squeaks. Why does it do that?", "Why does it do that?")]
    public void A_question_that_cannot_stand_alone_is_asked_with_the_sentence_before_it(string bothers, string asked)
    {
        var scene = Scene(bothers);
        Assert.Equal([asked], scene.Batch.Questions.Select(question => question.Text));
    }

    [Fact]
    public void A_letter_asks_for_a_written_line_and_says_what_is_rinsed()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var text = string.Join('\n', LetterComposer.Compose(LetterScene.Usual(new Guid(seed, 7, 7, new byte[8])).Material).Blocks.Select(block => block.Text));
            Assert.DoesNotMatch(@"(?i)short note on|\brinse it\b|leaves me a better reed|not for these", text);
        }
    }

    private static LetterScene Scene(string bothers, Guid? batch = null)
    {
        var scene = new LetterScene(1, batch, form => (form.Questions, form.Reeds[0].Bothers, form.Reeds[0].Questions) = (null, bothers, null)) { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        return scene;
    }

    private static LetterBlock Now(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.ReedNow);

    private static string Story(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Kind == BlockKind.ReedStory).Text;

    private static SaidPitch Pitch(string text) => LetterScene.Done(SaidPitch.Read(text, Tuning.Standard));
}
