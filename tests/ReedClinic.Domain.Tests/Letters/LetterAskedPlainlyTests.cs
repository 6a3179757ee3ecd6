using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A question without its mark is one all the same.</summary>
public sealed class LetterAskedPlainlyTests
{
    [Theory]
    [InlineData("It is the best. I would like to know why it is better than the others.", "I would like to know why it is better than the others.")]
    [InlineData("I wonder whether it is the cane. It squeaks.", "I wonder whether it is the cane.")]
    [InlineData("It squeaks, and I’m still wondering how that comes.", "It squeaks, and I’m still wondering how that comes.")]
    [InlineData("I’d love to know what makes it so dark!", "I’d love to know what makes it so dark!")]
    [InlineData("No wonder why it squeaks. I wondered whether to send it.", null)]
    [InlineData("I don’t want to know why it squeaks.", null)]
    public void What_somebody_would_like_to_know_is_to_be_answered(string bothers, string? question)
    {
        var scene = new LetterScene(1, change: form => (form.Questions, form.Reeds[0].Bothers) = (null, bothers));

        Assert.Equal(question is null ? [] : [question], scene.Batch.Questions.Select(asked => asked.Text));
        Assert.Equal(question is not null, LetterComposer.Gaps(scene.Material).Any(gap => gap.Kind == GapKind.UnansweredQuestion));
    }
}
