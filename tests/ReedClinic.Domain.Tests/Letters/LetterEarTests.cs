using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter says things as one says them, once, and not against itself.</summary>
public sealed class LetterEarTests
{
    private const int Seeds = 40;

    private static readonly IReadOnlyList<string> Drafts =
        [.. Enumerable.Range(1, 100).Select(seed => string.Join('\n', LetterComposer.Compose(InventedBatch.Of(seed).Scene.Material).Blocks.Select(block => block.Text)))];

    [Theory]
    [InlineData("(left untried|did not try) (just that|that itself)|(just that|that itself) I (left|did)|nearest to it:|bears on it:|that itself I")]
    [InlineData("to tell you of:|test by itself|notes from the bench (say|hold)")]
    [InlineData("(liked|glad of) what is good|what is good in (it|this one|this reed) (is worth|I was|pleased)|good in it (deserves|I would)|would keep just so")]
    [InlineData("(worth knowing|good to know|to learn from|than the rest), (and it|since it|because you) can|; it can be learnt|keep this next time")]
    [InlineData("so it is with it[.]|that goes for it[.]|reeds [a-z, ]+ feels")]
    [InlineData("and write to it what|before this one is (tired|worn|quite)|note on the reed alone, held as")]
    [InlineData("(cane|something|patch|line) [^.;]*; [^.;]*it was not there")]
    [InlineData("[(][0-9]+ strokes?[)]")]
    [InlineData("[?]” (?-i:that is answered|you will find)")]
    public void No_sentence_is_said_as_nobody_says_it(string stiff) => Assert.All(Drafts, draft => Assert.DoesNotMatch("(?i)" + stiff, draft));

    [Theory]
    [InlineData("slipped-against-winding", "realign")]
    [InlineData("slipped-too-far", null)]
    [InlineData("side-leak", "retie")]
    public void Of_an_overlap_that_was_found_or_set_right_it_is_not_said_as_well_how_it_came(string kind, string? work) => Each(seed =>
    {
        var scene = Scene(1, seed, "It tastes of tea.", new ReedArrival(Presence.Here, null, WindingHand.Left, Overlap.UpperToTheLeft, false, null, Fitness.Fit));
        Assert.Contains("left-handed", Text(scene, "reed-1-story"), StringComparison.Ordinal);

        var found = scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(Zone.SideEdges)));
        if (work is not null)
        {
            scene.Log(1, Adjustment.Of(new(work), new Place(Zone.WholeReed), Amount.NotSaid, found));
        }

        Assert.DoesNotMatch("-handed|not with the knife|of tying", Text(scene, "reed-1-story"));
    });

    [Theory]
    [InlineData("opening-wide", TestKind.Opening, 4, false)]
    [InlineData("opening-narrow", TestKind.Opening, 1, false)]
    [InlineData("side-leak", TestKind.Seal, 1, false)]
    [InlineData("opening-wide", TestKind.Opening, 1, true)]
    [InlineData("opening-wide", TestKind.LowResponse, 0, true)]
    public void What_was_found_is_not_tried_once_more(string kind, TestKind test, int step, bool told) => Each(seed =>
    {
        var scene = Scene(1, seed);
        scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(FindingCatalogue.Find(new(kind))!.Zone)));
        scene.Log(1, Test.Of(test, step));
        scene.Log(1, Verdict.Of(VerdictKind.LeftAsItCame));

        Assert.Equal(told, Text(scene, "reed-1-now").Length > 0);
    });

    [Fact]
    public void Of_two_halves_that_are_not_alike_neither_is_the_place() => Each(seed =>
    {
        var scene = Scene(1, seed);
        scene.Log(1, Finding.Of(new("left-right-uneven"), FindingCharacter.Fault, new Place(Zone.WholeReed, Blades.Upper, Sides.Left)));

        Assert.Contains("(on the upper blade)", Text(scene, "reed-1-story"), StringComparison.Ordinal);
    });

    [Theory]
    [InlineData("worn", false)]
    [InlineData("tip-cracked", false)]
    [InlineData("tip-thick", true)]
    public void What_stays_so_whatever_is_done_is_not_said_to_have_stayed_so(string kind, bool told) => Each(seed =>
    {
        var scene = Scene(1, seed);
        var found = scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(FindingCatalogue.Find(new(kind))!.Zone)));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Unchanged));

        Assert.Equal(told, Regex.IsMatch(Text(scene, "reed-1-story"), "; (that|this) (is as it was|has not changed|is still so|has stayed as it was)"));
    });

    [Theory]
    [InlineData("Tip feels thick in the corners, left one worse.", "The left one is worse.")]
    [InlineData("Left corner thicker than the right", "The left corner is thicker than the right.")]
    [InlineData("Corners thick, upper blade a bit heavier.", "The upper blade is a bit heavier.")]
    [InlineData("Corners need three more rounds", "The corners need three more rounds.")]
    [InlineData("You will see it by the window.", "You will see it by the window.")]
    [InlineData("The left one is worse, and you can hear it.", "The left one is worse, and you can hear it.")]
    public void What_was_said_in_short_at_the_bench_is_a_sentence_in_the_letter(string said, string told) => Each(seed =>
    {
        var scene = Scene(1, seed);
        scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), words: said));

        var text = Regex.Replace(Text(scene, "reed-1-story"), " \\([^)]*\\)", "");
        Assert.Contains(told, text, StringComparison.Ordinal);
        Assert.Equal(told.Contains(said.TrimEnd('.'), StringComparison.Ordinal), text.Contains(said.TrimEnd('.'), StringComparison.Ordinal));
    });

    [Theory]
    [InlineData(1, 1, 3, 4, false)]
    [InlineData(2, 2, 2, 4, false)]
    [InlineData(3, 3, 1, 3, true)]
    public void It_is_less_than_before_only_where_whoever_counts_finds_it_so(int before, int of, int now, int reeds, bool less) => Each(seed =>
    {
        var scene = Scene(reeds, seed);
        for (var number = 1; number <= reeds; number++)
        {
            scene.Log(number, Finding.Of(new("tip-long"), FindingCharacter.Fault, new Place(Zone.Rooftop)));
            if (number <= now)
            {
                scene.Log(number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
            }
            else
            {
                scene.Log(number, LookedFor.Of(new("tip-corners-thick")));
            }
        }

        scene.Thread = new(new("tip-long"), null, "In all reeds.");
        scene.Earlier = new(new("tip-corners-thick"), new(before, of, of), [new EntryId(LetterScene.Id())]);

        Assert.Equal(less, Regex.IsMatch(Text(scene, "lesson"), "(?i)\\bless\\b"));
    });

    [Theory]
    [InlineData("Keep it for lessons.", true)]
    [InlineData("Good for long notes at home.", true)]
    [InlineData("Let it rest a day before you perform.", false)]
    [InlineData("You can play it at once, as long as you like", false)]
    [InlineData("Don't play it in the cold", false)]
    public void Where_the_teacher_said_what_a_reed_is_for_its_first_days_are_gentle_all_the_same(string words, bool told) => Each(seed =>
    {
        var scene = Scene(1, seed);
        scene.Log(1, Test.Of(TestKind.SoftestStart, 1));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 2));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, words));

        Assert.Equal(told, Text(scene, "care").Contains("ten minutes", StringComparison.Ordinal));
    });

    [Fact]
    public void Which_reed_comes_first_is_no_answer_to_how_it_is_played_in() => Each(seed =>
    {
        var scene = new LetterScene(1, new Guid(seed, 7, 7, new byte[8]), form => (form.Questions, form.Reeds[0].Questions) = (null, "Which one should I play first?")) { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Verdict.Of(VerdictKind.NeedsPlayingIn));
        scene.Batch.Questions[0].AnswerWith("Begin with number one", scene.Batch.SubmittedAt);

        Assert.Contains("week", Text(scene, "reed-1-use"), StringComparison.Ordinal);
    });

    private static void Each(Action<int> seed) => Enumerable.Range(1, Seeds).ToList().ForEach(seed);

    private static LetterScene Scene(int reeds, int seed, string bothers = "It tastes of tea.", ReedArrival? seen = null)
    {
        var scene = new LetterScene(reeds, new Guid(seed, 7, 7, new byte[8]), form =>
        {
            form.Questions = null;
            form.Reeds.ToList().ForEach(reed => (reed.Bothers, reed.Questions) = (bothers, null));
        })
        { Thread = LetterThread.Nothing };
        Enumerable.Range(1, reeds).ToList().ForEach(number => scene.Arrive(number, seen));
        return scene;
    }

    private static string Text(LetterScene scene, string key) => LetterComposer.Compose(scene.Material).Blocks.SingleOrDefault(block => block.Key == key)?.Text ?? "";
}
