using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter says as much as the log bears out: not more of a fault, of its end or of the care that was taken.</summary>
public sealed class LetterBorneOutTests
{
    [Theory]
    [InlineData("tip-corner-broken", Zone.TipCorners, "left wing corner chipped a bit, upper", "the left corner of the upper blade (is|was) a little chipped", "missing|broken|wing")]
    [InlineData("tip-corner-broken", Zone.TipCorners, "chipped left corner", "the left corner of the upper blade (is|was) chipped", "missing|broken|a little")]
    [InlineData("opening-wide", Zone.Opening, "opening a little large", "the opening[^.]* is a little (wide|large|wider)", "much|very|rather")]
    [InlineData("opening-wide", Zone.Opening, "opening much too large", "the opening[^.]* is (very (wide|large)|much wider)", "a little|rather")]
    [InlineData("opening-wide", Zone.Opening, null, "the opening[^.]* is (wide|large|wider)", "a little|much|rather|very w")]
    [InlineData("heart-thick", Zone.HeartCentre, null, "heart", "still|a lot|rather|a little")]
    [InlineData("tip-corners-thick", Zone.TipCorners, null, "corner", "still|a little|not quite")]
    public void As_much_of_a_fault_is_told_as_was_said(string kind, Zone zone, string? words, string told, string not) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        var corner = zone == Zone.TipCorners;
        scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(zone, corner ? Blades.Upper : Blades.Both, corner ? Sides.Left : Sides.Both), words: words));

        var found = Regex.Replace(Story(scene).Split("\n\n").First(part => Regex.IsMatch(part, "(?i)corner|opening|heart")), ", (which|and that|something)[^.]*|;[^.]*", "");
        Assert.Matches("(?i)" + told, found);
        Assert.DoesNotMatch($"(?i)\\b({not})\\b", found);
    });

    [Theory]
    [InlineData("tip-thick", "tip too thick so far", null)]
    [InlineData("tip-thick", "tip thick, just at the left corner", null)]
    [InlineData("tip-thick", "tip thick, a lot of bark left", null)]
    [InlineData("tip-thick", "tip just too thick", null)]
    [InlineData("tip-thick", "tip quite a bit too thick", "very thick|much thicker")]
    [InlineData("heart-thick", "heart too thick as far as I can see", null)]
    [InlineData("heart-thick", "heart on the heavy side", "rather thick")]
    [InlineData("back-thick", "back too thick, far from ready", null)]
    [InlineData("back-thick", "back far too thick", "very thick|much thicker")]
    [InlineData("back-thick", "back too thick, a very thin tip", null)]
    public void A_degree_is_told_that_was_said_of_the_very_quality(string kind, string words, string? told) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(FindingCatalogue.Find(new(kind))!.Zone), words: words));

        var found = Regex.Match(Story(scene), "(?i)(a little|very|much|rather) thick(er)?");
        Assert.Equal(told is not null, found.Success);
        Assert.Matches($"^({told})", found.Value);
    });

    [Fact]
    public void What_needs_a_knife_was_not_put_right_where_none_was_taken() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        var found = scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        scene.Log(1, Adjustment.Of(new("open-squeeze"), new Place(Zone.Opening)));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));

        Assert.DoesNotMatch("put right|now[^.]*thin enough|as thin as", Story(scene));
        Assert.Matches("no longer so", Story(scene));
    });

    [Theory]
    [InlineData("clip-hair", Zone.TipEdge, false, false)]
    [InlineData("clip-hair", Zone.TipEdge, true, false)]
    [InlineData("open-windows", Zone.Windows, true, false)]
    [InlineData("thin-tip-sides", Zone.TipSides, true, true)]
    [InlineData("thin-tip-sides", Zone.TipSides, false, false)]
    public void What_needs_a_knife_was_put_right_by_one_that_came_there_after_it_was_found(string work, Zone zone, bool afterwards, bool put) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        void Cane() => scene.Log(1, Adjustment.Of(new(work), new Place(zone)));
        (afterwards ? () => { } : (Action)Cane)();
        var found = scene.Log(1, Finding.Of(new("tip-thick"), FindingCharacter.Fault, new Place(Zone.TipCentre)));
        scene.Log(1, Adjustment.Of(new("open-squeeze"), new Place(Zone.Opening)));
        (afterwards ? (Action)Cane : () => { })();
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Gone));

        Assert.Equal(put, Regex.IsMatch(Story(scene), "put right|now[^.]*thin enough|as thin as"));
    });

    [Fact]
    public void What_came_out_right_in_its_own_test_is_not_as_it_was() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, "it gapes");
        var found = scene.Log(1, Finding.Of(new("opening-wide"), FindingCharacter.Fault, new Place(Zone.Opening)));
        scene.Log(1, Adjustment.Of(new("close-press"), new Place(Zone.Opening), Amount.NotSaid, found));
        scene.Log(1, Test.Of(TestKind.Opening, 2));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Unchanged));

        Assert.DoesNotMatch("as it was|not changed|still so|stayed", Story(scene));
    });

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void Two_cuts_without_a_test_between_them_are_no_small_steps(int cuts, bool small) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, permission: "SafeChangesOnly");
        scene.Log(1, Test.Of(TestKind.Crow, 0, LetterScene.Done(Domain.Pitch.SaidPitch.Read("C -40", Domain.Pitch.Tuning.Standard))));
        for (var cut = 0; cut < cuts; cut++)
        {
            scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        }

        scene.Log(1, Test.Of(TestKind.Crow, 0));

        Assert.Equal(small, Regex.IsMatch(Story(scene), "after each pass|small steps"));
    });

    [Fact]
    public void A_good_reed_that_was_harmed_here_was_not_refined() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Finding.Of(new("tip-corner-broken"), FindingCharacter.Fault, new Place(Zone.TipCorners), arose: Arose.CausedByTheWork));
        scene.Log(1, Verdict.Of(VerdictKind.GoodOnArrivalRefined));

        Assert.DoesNotMatch("refine|finer|asked for very|needed (very|only)", Story(scene));
    });

    [Fact]
    public void What_was_only_suspected_was_not_put_right() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, reeds: 2);
        scene.Thread = new LetterThread(new FindingKindId("tip-corners-thick"), "Keep the knife sharp", "In both reeds.");
        for (var number = 1; number <= 2; number++)
        {
            var found = scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), certainty: number == 1 ? Certainty.Certain : Certainty.Suspected));
            scene.Log(number, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), Amount.NotSaid, found));
            scene.Log(number, FindingEnded.Of(found, FindingEnding.Gone));
        }

        var lesson = LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "lesson").Text;
        Assert.DoesNotMatch("reeds? [a-z ]*two[^.]*(put|set|seen to)", lesson);
        Assert.Matches(@"corners?\b.*Keep the knife sharp\.$", lesson);
    });

    [Fact]
    public void Of_thin_corners_it_is_said_why_they_are_dark_here_and_bright_there() => Assert.Contains(
        Enumerable.Range(1, 20).Select(seed => LetterComposer.Compose(With(seed, "tip-centre-thin").Material).Blocks.Single(block => block.Key == "plan").Text),
        plan => Regex.IsMatch(plan, "thin cane is bright, so the middle should"));

    private static IEnumerable<int> Seeds => Enumerable.Range(1, 25);

    private static LetterScene With(int seed, string lesson)
    {
        var scene = Scene(seed);
        scene.Thread = new LetterThread(new FindingKindId(lesson), null, "In this reed.");
        return scene;
    }

    private static LetterScene Scene(int seed, string bothers = "Nothing", string permission = "TakeRisks", int reeds = 1)
    {
        var scene = new LetterScene(reeds, new Guid(seed, 5, 5, new byte[8]), form =>
        {
            form.Questions = null;
            form.Reeds.ToList().ForEach(reed => (reed.Bothers, reed.Permission, reed.Questions) = (bothers, permission, null));
        })
        { Thread = LetterThread.Nothing };
        Enumerable.Range(1, reeds).ToList().ForEach(number => scene.Arrive(number));
        return scene;
    }

    private static string Story(LetterScene scene) =>
        Regex.Replace(LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text, @" \([^)]*\)", "");
}
