using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What a teacher notes of the parcel stays with the studio unless they choose that the letter tells it.</summary>
public sealed class LetterArrivalNoteTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void It_is_told_only_where_that_was_chosen(bool chosen)
    {
        var scene = LetterScene.Usual();
        scene.Batch.NoteOnArrival("smells of smoke, ask gently", chosen);

        Assert.Equal(chosen, string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text)).Contains("ask gently", StringComparison.Ordinal));
    }

    [Fact]
    public void A_note_that_was_taken_away_chooses_nothing_for_the_next()
    {
        var batch = LetterScene.Usual().Batch;
        batch.NoteOnArrival("wet", inLetter: true);
        batch.NoteOnArrival(" ", inLetter: true);

        Assert.False(batch.ArrivalNoteInLetter);
    }
}
