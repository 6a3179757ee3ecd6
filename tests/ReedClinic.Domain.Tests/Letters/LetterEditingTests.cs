using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using static ReedClinic.Domain.Tests.Letters.LetterComposerTests;

namespace ReedClinic.Domain.Tests.Letters;

public sealed class LetterEditingTests
{
    [Fact]
    public void A_sentence_that_is_left_keeps_what_it_rests_on_and_a_new_one_is_the_teachers_own()
    {
        var letter = LetterComposer.Compose(LetterScene.Usual().Material);
        var block = Block(letter, "reed-1-story");
        var kept = block.Paragraphs[1].Sentences.First(sentence => sentence.From.Count > 0);

        var edited = block.EditedTo($"I was glad to see this one again. {kept.Text} You will hear it.", block);

        Assert.True(edited.IsEdited);
        var paragraph = Assert.Single(edited.Paragraphs);
        Assert.Equal(3, paragraph.Sentences.Count);
        Assert.Equal(kept, paragraph.Sentences[1]);
        Assert.Empty(paragraph.Sentences[0].From);
        Assert.Empty(paragraph.Sentences[2].From);
    }

    [Fact]
    public void A_letter_that_nobody_has_signed_can_be_changed()
    {
        var closing = new LetterBlock("closing", BlockKind.Closing, [LetterParagraph.Plain("Kind regards,"), LetterParagraph.Plain("")]);

        var edited = closing.EditedTo("Kind regards, and a good tide!", closing);

        Assert.Equal("Kind regards, and a good tide!", edited.Text);
    }

    [Fact]
    public void A_sentence_inside_another_is_the_teachers_own_words_letter_for_letter()
    {
        var letter = LetterComposer.Compose(LetterScene.Usual().Material);
        var block = Block(letter, "reed-1-story");
        var kept = block.Paragraphs[1].Sentences.First(sentence => sentence.From.Count > 0);
        var typed = $"(You said “{kept.Text}”)";

        var sentence = Assert.Single(Assert.Single(block.EditedTo(typed, block).Paragraphs).Sentences);

        Assert.Equal(typed, sentence.Text);
        Assert.Empty(sentence.From);
    }

    [Fact]
    public void Any_text_comes_back_as_it_was_typed_but_for_space() =>
        Gen.Char["ab .\n"].Array[0, 60].Select(letters => new string(letters)).Sample(typed =>
        {
            var block = Block(LetterComposer.Compose(LetterScene.Usual().Material), "reed-1-story");
            var edited = block.EditedTo(typed, block);
            Assert.Equal(Words(typed), Words(edited.Text));
        });

    [Fact]
    public void Cutting_sentences_out_never_loses_or_adds_a_word() =>
        Gen.Int[0, 400].Array[2].Sample(cuts =>
        {
            var block = Block(LetterComposer.Compose(LetterScene.Usual().Material), "reed-1-story");
            var at = Math.Min(cuts[0], block.Text.Length);
            var typed = block.Text[..at] + " — " + block.Text[Math.Min(at + cuts[1], block.Text.Length)..];
            Assert.Equal(Words(typed), Words(block.EditedTo(typed, block).Text));
        });

    [Fact]
    public void An_emptied_block_is_left_out_and_the_composed_text_brings_it_back()
    {
        var block = Block(LetterComposer.Compose(LetterScene.Usual().Material), "habit");

        var empty = block.EditedTo("  \r\n ", block);

        Assert.True(empty.IsEmpty);
        Assert.True(empty.IsEdited);
        Assert.Equal(block, empty.EditedTo(block.Text.Replace("\n", "\r\n", StringComparison.Ordinal), block));
    }

    [Fact]
    public void A_list_is_edited_one_item_a_line()
    {
        var block = Block(LetterComposer.Compose(LetterScene.Usual().Material), "plan");

        var edited = block.EditedTo("Sharpen the knife.\n\nStop early.\n", block);

        Assert.Equal(["Sharpen the knife.", "Stop early."], edited.Paragraphs.Select(paragraph => paragraph.Text));
        Assert.Equal("Sharpen the knife.\nStop early.", edited.Text);
    }

    [Fact]
    public void What_nobody_touched_follows_the_log_and_what_was_changed_stays()
    {
        var scene = LetterScene.Usual();
        var first = LetterComposer.Compose(scene.Material);
        var saved = first.EditedTo(new Dictionary<string, string> { ["lesson"] = "My own lesson.", ["nonsense"] = "x" }, first);

        scene.Log(1, Verdict.Of(VerdictKind.NeedsPlayingIn));
        var fresh = LetterComposer.Compose(scene.Material);
        var now = fresh.With(saved);

        Assert.Equal("My own lesson.", Block(now, "lesson").Text);
        Assert.Equal(Block(fresh, "reed-1-use"), Block(now, "reed-1-use"));
        Assert.NotEqual(Block(first, "reed-1-use").Text, Block(now, "reed-1-use").Text);
        Assert.Equal(Block(first, "lesson").Text, Block(now, "lesson").ComposedText);
        Assert.Equal(fresh.Blocks.Count, now.Blocks.Count);
    }

    [Fact]
    public void Changed_words_stay_when_nothing_would_be_composed_for_their_block_any_more()
    {
        var scene = LetterScene.Usual();
        var first = LetterComposer.Compose(scene.Material);
        var kept = $"My own words. {Block(first, "habit").Text}";
        var saved = first.EditedTo(new Dictionary<string, string> { ["habit"] = kept }, first);

        scene.Thread = scene.Thread with { HabitSentence = null };
        var fresh = LetterComposer.Compose(scene.Material);
        var now = fresh.With(saved);

        var own = Block(now, "habit");
        Assert.Equal(kept, own.Text);
        Assert.True(own.IsEdited);
        Assert.All(own.Paragraphs.SelectMany(paragraph => paragraph.Sentences), sentence => Assert.Empty(sentence.From));
        Assert.Equal("lesson", now.Blocks[now.Blocks.ToList().IndexOf(own) - 1].Key);
        var again = now.EditedTo(new Dictionary<string, string> { ["habit"] = "Other words." }, fresh);
        Assert.Equal("Other words.", Block(fresh.With(again), "habit").Text);
        var gone = again.EditedTo(new Dictionary<string, string> { ["habit"] = "" }, fresh);
        Assert.DoesNotContain(fresh.With(gone).Blocks, block => block.Key == "habit");
    }

    [Fact]
    public void Words_typed_into_a_block_that_went_meanwhile_are_kept_beside_their_reed()
    {
        var scene = LetterScene.Usual();
        scene.Thread = LetterThread.Nothing;
        var letter = LetterComposer.Compose(scene.Material);
        var typed = new Dictionary<string, string> { ["reed-2-answers"] = "Play it softly.", ["plan"] = "One.\nTwo.", ["reed-9-use"] = "x", ["nonsense"] = "y" };
        var without = letter with { Blocks = [.. letter.Blocks.Where(block => block.Key != "reed-2-answers")] };

        var now = without.With(without.EditedTo(typed, without));

        Assert.Equal("Play it softly.", Block(now, "reed-2-answers").Text);
        Assert.Equal(scene.Reed(2).Id, Block(now, "reed-2-answers").Reed);
        var keys = now.Blocks.Select(block => block.Key).ToList();
        Assert.Equal(keys.IndexOf("reed-2-now") + 1, keys.IndexOf("reed-2-answers"));
        Assert.Equal(keys.IndexOf("care") - 1, keys.IndexOf("plan"));
        Assert.Equal(["One.", "Two."], Block(now, "plan").Paragraphs.Select(paragraph => paragraph.Text));
        Assert.DoesNotContain("nonsense", keys);
        Assert.DoesNotContain("reed-9-use", keys);
    }

    private static string[] Words(string text) =>
        text.Split((char[])[' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries);
}
