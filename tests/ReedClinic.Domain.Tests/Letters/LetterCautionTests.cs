using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What keeps somebody from harm is the same in every letter, word for word.</summary>
public sealed class LetterCautionTests
{
    private static readonly List<(LetterScene Scene, LetterDraft Letter)> Letters =
        [.. Enumerable.Range(1, 80).Select(seed => InventedBatch.Of(seed).Scene).Select(scene => (scene, LetterComposer.Compose(scene.Material)))];

    [Fact]
    public void Whoever_is_not_grown_up_reads_the_same_of_knives_beside_every_stroke_and_in_every_list()
    {
        var strokes = Letters.SelectMany(pair => pair.Letter.Blocks).Where(block => block.Kind == BlockKind.Stroke).ToList();

        Assert.InRange(strokes.Count, 20, 80);
        Assert.All(strokes, stroke => Assert.EndsWith(SaidCautions.NotAlone, stroke.Text, StringComparison.Ordinal));
        Assert.All(Letters, pair => Assert.Contains(SaidCautions.NotAlone, Text(pair.Letter, "cautions"), StringComparison.Ordinal));
    }

    // Whoever may come without a guardian's yes need not be grown up: only what is known is said as known.
    [Theory]
    [InlineData(AgeAnswer.Younger, SaidCautions.NotAloneYounger, "tell a parent or guardian at once")]
    [InlineData(AgeAnswer.OldEnough, SaidCautions.NotAlone, "ask a doctor or a dentist;")]
    [InlineData(null, SaidCautions.NotAlone, "ask a doctor or a dentist;")]
    public void Who_has_to_be_beside_a_knife_is_said_as_far_as_the_age_is_known(AgeAnswer? age, string knife, string unwell)
    {
        var letter = LetterComposer.Compose(LetterScene.Usual().Material with { Age = age });

        Assert.EndsWith(knife, Text(letter, "stroke"), StringComparison.Ordinal);
        Assert.Contains(knife, Text(letter, "cautions"), StringComparison.Ordinal);
        Assert.Contains(unwell, Text(letter, "cautions"), StringComparison.Ordinal);
        Assert.Equal(age is AgeAnswer.Younger, !letter.Blocks.Any(block => block.Text.Contains("not grown up yet", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_reed_with_mould_has_the_same_warnings_in_every_letter()
    {
        var mouldy = Letters.SelectMany(pair => pair.Scene.Batch.Reeds.Where(reed => reed.Fitness == Fitness.Mould).Select(reed => (Reed: reed, pair.Letter))).ToList();

        Assert.InRange(mouldy.Count, 4, 80);
        Assert.All(mouldy, pair =>
        {
            Assert.Contains(SaidCautions.MouldOnArrival(Prose.Number(pair.Reed.Number)), Text(pair.Letter, "arrival"), StringComparison.Ordinal);
            Assert.Contains(SaidCautions.MouldAtWork, Text(pair.Letter, LetterComposer.Key(pair.Reed, "story")), StringComparison.Ordinal);
            Assert.Contains(SaidCautions.MouldUse, Text(pair.Letter, LetterComposer.Key(pair.Reed, "use")), StringComparison.Ordinal);
        });
    }

    [Fact]
    public void The_list_of_cautions_differs_by_nothing_but_mould()
    {
        var lists = Letters.GroupBy(pair => pair.Scene.Batch.Reeds.Any(reed => reed.Fitness == Fitness.Mould), pair => Text(pair.Letter, "cautions")).ToList();

        Assert.Equal(2, lists.Count);
        Assert.All(lists, list => Assert.Single(list.Distinct()));
    }

    private static string Text(LetterDraft letter, string key) => letter.Blocks.Single(block => block.Key == key).Text;
}
