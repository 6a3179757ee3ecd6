using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter says what is so now, says one thing once, and claims no order that nobody kept.</summary>
public sealed class LetterSoNowTests
{
    private static readonly string[] Things = ["tip-corner-broken", "tip-cracked", "body-cracked"];

    [Fact]
    public void Nothing_is_gone_that_was_put_right()
    {
        foreach (var kind in FindingCatalogue.All.Where(kind => kind.Usually == FindingCharacter.Fault && !Things.Contains(kind.Id.Value)))
        {
            foreach (var (seed, ending) in Enumerable.Range(1, 8).SelectMany(seed => new[] { (seed, FindingEnding.Gone), (seed, FindingEnding.Better) }))
            {
                var scene = Scene(seed, "Too wide for me");
                var found = scene.Log(1, Finding.Of(kind.Id, FindingCharacter.Fault, new Place(kind.Zone)));
                scene.Log(1, FindingEnded.Of(found, ending));

                Assert.DoesNotMatch(@"\bgone\b", Story(scene));
                Assert.Matches(ending == FindingEnding.Gone ? "now|put right|no longer|in order|today" : "better|improved|mostly|largely|shows less", Story(scene));
            }
        }
    }

    [Fact]
    public void Of_the_line_that_was_hard_to_see_it_is_said_that_it_shows()
    {
        var scene = Scene(1, "It tastes of tea");
        var line = scene.Log(1, Finding.Of(new("tip-not-separate"), FindingCharacter.Fault, new Place(Zone.Rooftop)));
        scene.Log(1, Adjustment.Of(new("define-tip"), new Place(Zone.Rooftop), Amount.NotSaid, line));
        scene.Log(1, FindingEnded.Of(line, FindingEnding.Gone));

        Assert.Matches("; ((by )?now|today|by now),? the line (shows|can be seen|shows clearly)", Story(scene));
    }

    [Fact]
    public void No_order_is_claimed() => Assert.All(Enumerable.Range(1, 40), seed =>
    {
        var scene = Scene(seed, seed % 2 == 0 ? "Nothing" : "The low notes come late");
        scene.Log(1, Test.Of(TestKind.Crow, 0));
        scene.Log(1, Test.Of(TestKind.LowResponse, 1));
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.HeartCentre), words: "a scratch beside the heart"));
        scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));
        scene.Log(1, Test.Of(TestKind.LowResponse, 3));

        Assert.DoesNotMatch("(tried|found|met|noted|noticed|saw|thing) first|first (thing|of all)", Story(scene));
    });

    [Theory]
    [InlineData("windows-uneven", Zone.Windows, "windows are uneven", false)]
    [InlineData("tip-corners-thick", Zone.TipCorners, "the corners still look rather thick", false)]
    [InlineData("blades-uneven", Zone.WholeReed, "the upper blade is a bit wider", true)]
    [InlineData("windows-uneven", Zone.Windows, "the left windows are a hair deeper than I like", true)]
    public void What_was_found_and_remarked_is_told_once(string kind, Zone zone, string words, bool typedIsTold)
    {
        foreach (var (seed, ended, bothers) in Enumerable.Range(1, 10).SelectMany(seed => new[] { (seed, true, "It tastes of tea"), (seed, false, "Nothing"), (seed, true, "It feels lopsided") }))
        {
            var scene = Scene(seed, bothers);
            var found = scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(zone), words: words));
            if (ended)
            {
                scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));
            }

            var story = Story(scene);
            Assert.Equal(typedIsTold ? 1 : 0, Regex.Count(story, Regex.Escape(words), RegexOptions.IgnoreCase));
            Assert.InRange(Regex.Count(story, @"(?i)\b(one blade|two blades|upper blade|one of the windows|the windows|left windows|corners of the tip|two corners)\b"), 1, ended ? 2 : 1);
        }
    }

    [Theory]
    [InlineData("Tip is fine", "tip-corners-thick", Zone.TipCorners, true)]
    [InlineData("the tip looks good.", "tip-corners-thick", Zone.TipCorners, true)]
    [InlineData("Tip is fine", "back-thick", Zone.Windows, false)]
    [InlineData("Tip is fine and I like its sound", "tip-corners-thick", Zone.TipCorners, false)]
    public void What_praises_a_part_stands_beside_its_fault_and_not_against_it(string words, string kind, Zone zone, bool joined)
    {
        foreach (var bothers in new[] { "It tastes of tea", "Nothing" })
        {
            var scene = Scene(1, bothers);
            scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Strength, new Place(Zone.TipCentre), words: words));
            scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(zone)));

            Assert.Equal(joined, Regex.IsMatch(Story(scene), "(?i)(apart from|but for|otherwise).*the tip (is fine|looks good)|the tip (is fine|looks good), (apart from|but for)"));
            Assert.True(joined || Story(scene).Contains(words.TrimEnd('.'), StringComparison.OrdinalIgnoreCase));
        }
    }

    [Fact]
    public void A_test_that_has_no_word_of_its_scale_is_told_plainly()
    {
        var scene = Scene(1, "It tastes of tea");
        scene.Log(1, Test.Of(TestKind.Peep, null, words: "clean but short"));
        scene.Log(1, Test.Of(TestKind.LowResponse, 1));
        scene.Log(1, Adjustment.Of(new("open-windows"), new Place(Zone.Windows), new Amount(2)));
        scene.Log(1, Test.Of(TestKind.LowResponse, 2));
        var now = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-now");

        Assert.DoesNotContain("I noted", now.Text, StringComparison.Ordinal);
        Assert.Matches(@"(?i)my note on the peep( \([^)]*\))? says “clean but short”", now.Text);
        Assert.Equal("speak with a little care", Assert.Single(now.Rows).Now);
    }

    private static LetterScene Scene(int seed, string bothers)
    {
        var scene = new LetterScene(1, new Guid(seed * 40503, 5, 5, new byte[8]), form =>
        {
            form.Questions = null;
            (form.Reeds[0].Bothers, form.Reeds[0].Questions) = (bothers, null);
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        return scene;
    }

    private static string Story(LetterScene scene) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text;
}
