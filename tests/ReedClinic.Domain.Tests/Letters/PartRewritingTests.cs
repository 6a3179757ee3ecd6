using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using static ReedClinic.Domain.Tests.Letters.LetterComposerTests;

namespace ReedClinic.Domain.Tests.Letters;

public sealed class PartRewritingTests
{
    [Fact]
    public void A_part_written_afresh_follows_the_log_again_and_no_other_part_changes()
    {
        var scene = LetterScene.Usual();
        var composed = LetterComposer.Compose(scene.Material);
        var mine = composed.EditedTo(new Dictionary<string, string> { ["lesson"] = "My own lesson.", ["plan"] = "My own plan." }, composed);

        var fresh = PartRewriting.Afresh(mine, "lesson", scene.Material)!;

        Assert.Equal(Block(composed, "lesson").Text, Block(fresh, "lesson").Text);
        Assert.False(Block(fresh, "lesson").IsEdited);
        Assert.Equal("My own plan.", Block(fresh, "plan").Text);
        Assert.Equal(Others(mine, "lesson"), Others(fresh, "lesson"));
        Assert.Null(PartRewriting.Afresh(mine, "no-such-part", scene.Material));
    }

    [Fact]
    public void Words_that_the_log_says_nothing_of_any_more_are_not_written_afresh()
    {
        var scene = LetterScene.Usual();
        var first = LetterComposer.Compose(scene.Material);
        var mine = first.EditedTo(new Dictionary<string, string> { ["habit"] = "My own words." }, first);
        scene.Thread = scene.Thread with { HabitSentence = null };
        var letter = LetterComposer.Compose(scene.Material).With(mine);

        Assert.Null(PartRewriting.Afresh(letter, "habit", scene.Material));
        Assert.Null(PartRewriting.InOtherWords(letter, "habit", scene.Material));
    }

    [Fact]
    public void Other_words_say_the_same_of_the_log_and_change_that_part_alone()
    {
        var said = 0;
        foreach (var scene in Enumerable.Range(1, 6).Select(number => LetterScene.Usual(new Guid(number, 7, 7, [1, 2, 3, 4, 5, 6, 7, 8]))))
        {
            var letter = LetterComposer.Compose(scene.Material);
            foreach (var part in letter.Blocks)
            {
                if (PartRewriting.InOtherWords(letter, part.Key, scene.Material) is not { } other)
                {
                    continue;
                }

                said++;
                Assert.NotEqual(part.Text, Block(other, part.Key).Text);
                Assert.Equal(Others(letter, part.Key), Others(other, part.Key));
                Assert.Equal(Roots(part), Roots(Block(other, part.Key)));
                Assert.False(Block(other, part.Key).IsEdited);
                var later = LetterComposer.Compose(scene.Material with { Turns = other.Turns }).With(other);
                Assert.Equal(Block(other, part.Key).Text, Block(later, part.Key).Text);
            }

            Assert.Null(PartRewriting.InOtherWords(letter, "cautions", scene.Material));
        }

        Assert.True(said >= 40, $"Only {said} parts could be said in other words.");
    }

    [Fact]
    public void Asked_again_it_says_it_in_other_words_again_and_each_is_taken_back_one_by_one()
    {
        var scene = LetterScene.Usual();
        var first = LetterComposer.Compose(scene.Material);
        var second = PartRewriting.InOtherWords(first, "reed-1-story", scene.Material)!;
        var then = scene.Material with { Turns = second.Turns };
        var third = PartRewriting.InOtherWords(second, "reed-1-story", then)!;

        Assert.Equal(3, new[] { first, second, third }.Select(letter => Block(letter, "reed-1-story").Text).Distinct().Count());
        var now = scene.Material with { Turns = third.Turns };
        Assert.Equal(Block(second, "reed-1-story").Text, Block(PartRewriting.AsIn(third, "reed-1-story", second, now)!, "reed-1-story").Text);
        Assert.Equal(Block(first, "reed-1-story").Text, Block(PartRewriting.AsIn(third, "reed-1-story", null, now)!, "reed-1-story").Text);
    }

    [Fact]
    public void Words_changed_by_hand_come_back_as_they_were_and_stay_changed_by_hand()
    {
        var scene = LetterScene.Usual();
        var composed = LetterComposer.Compose(scene.Material);
        var mine = composed.EditedTo(new Dictionary<string, string> { ["lesson"] = "My own lesson.", ["plan"] = "My own plan." }, composed);
        var fresh = PartRewriting.Afresh(mine, "lesson", scene.Material)!;

        var back = PartRewriting.AsIn(fresh, "lesson", mine, scene.Material)!;

        Assert.Equal("My own lesson.", Block(back, "lesson").Text);
        Assert.True(Block(back, "lesson").IsEdited);
        Assert.Equal(Others(mine, "lesson"), Others(back, "lesson"));
    }

    private static List<(string, string, bool)> Others(LetterDraft letter, string key) =>
        [.. letter.Blocks.Where(block => block.Key != key).Select(block => (block.Key, block.Text, block.IsEdited))];

    private static HashSet<EntryId> Roots(LetterBlock block) =>
        [.. block.Paragraphs.SelectMany(paragraph => paragraph.Sentences).SelectMany(sentence => sentence.From)];
}
