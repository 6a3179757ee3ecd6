using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Where a reed is hard to blow, what was found is told by what it does to that.</summary>
public sealed class LetterAnswersEffortTests
{
    [Theory]
    [InlineData("It is stiff", "back-thick", Zone.WindowBase)]
    [InlineData("It is stiff", "heart-thick", Zone.HeartCentre)]
    [InlineData("It is tiring after a page", "back-thick", Zone.WindowBase)]
    [InlineData("It is tiring after a page", "heart-thick", Zone.HeartCentre)]
    public void A_thick_place_is_tied_to_the_breath_it_takes(string bothers, string found, Zone zone)
    {
        var scene = new LetterScene(2, change: form => form.Reeds[1].Bothers = form.Reeds[0].Bothers = bothers);
        foreach (var number in new[] { 1, 2 })
        {
            scene.Arrive(number, new ReedArrival(Presence.Here, "pencil dot", WindingHand.Left, Overlap.UpperToTheLeft, true, null, Fitness.Fit));
            scene.Log(number, Finding.Of(new(found), FindingCharacter.Fault, new Place(zone)));
            Assert.Matches("[Tt]hick|cane", Text(scene, number));
            Assert.Matches("makes a reed (stiff|hard to blow)|takes much breath", Text(scene, number));
            Assert.DoesNotMatch("low notes|low part|depth|holds the rest", Text(scene, number));
        }
    }

    [Fact]
    public void It_is_told_by_what_else_it_does_where_that_was_asked()
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Bothers = "The low notes come late");
        scene.Arrive(1);
        scene.Log(1, Finding.Of(new("back-thick"), FindingCharacter.Fault, new Place(Zone.WindowBase)));

        Assert.DoesNotMatch("makes a reed (stiff|hard to blow)|takes much breath", Text(scene, 1));
    }

    private static string Text(LetterScene scene, int number) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == $"reed-{number}-story").Text;
}
