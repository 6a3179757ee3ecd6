using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A heart that is too thin at its sides is told as that, and not as thin all over.</summary>
public sealed class LetterHeartSidesTests
{
    [Theory]
    [InlineData(Zone.HeartSides, @"(?i)the (two )?sides of the heart (\([^)]*\) )?ha(ve|d)\b")]
    [InlineData(Zone.HeartCentre, @"(?i)(?<!sides of )the heart (\([^)]*\) )?ha[sd]\b")]
    public void What_is_thin_is_named(Zone zone, string words)
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Finding.Of(new("heart-thin"), FindingCharacter.Fault, new Place(zone)));

        var text = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;
        Assert.True(System.Text.RegularExpressions.Regex.IsMatch(text, words), text);
    }
}
