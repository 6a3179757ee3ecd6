using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What a finding says by its name and place isn’t said once more in the words beside it.</summary>
public sealed class LetterToldAlreadyTests
{
    [Theory]
    [InlineData("heart a bit thick, left side of the upper blade", true)]
    [InlineData("heart a bit thicker on the left side of the upper blade", true)]
    [InlineData("heart a bit thick, right side of the upper blade", false)]
    [InlineData("heart a bit thick, both sides", false)]
    [InlineData("heart a bit thinner", false)]
    public void Words_that_say_a_fault_and_its_place_once_more_are_not_quoted(string words, bool isTold)
    {
        var finding = LetterScene.Done(Finding.Of(new("heart-thick"), FindingCharacter.Fault, new Place(Zone.HeartSides, Blades.Upper, Sides.Left), words: words));

        Assert.Equal(isTold, RemarkSaid.IsOnlyTheName(finding));
    }
}
