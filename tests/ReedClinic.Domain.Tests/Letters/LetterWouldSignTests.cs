using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What a letter claims of the work, of agreement and of good, its log bears out.</summary>
public sealed class LetterWouldSignTests
{
    /// <summary>Shortening raises the pitch and scraping lowers it (common practice).</summary>
    [Theory]
    [InlineData("C +20", "clip-hair", "C -30", true, "from 20 cents above C to 30 cents below C after a clip")]
    [InlineData("C +20", "clip", "B -80", true, "from 20 cents above C to 180 cents below C after a clip")]
    [InlineData("C +20", "clip-hair", "C +15", true, null)]
    [InlineData("C -20", "clip-hair", "C", false, null)]
    [InlineData("C +20", "thin-corners", "C -30", false, null)]
    [InlineData("C +20", "thin-corners", "B", true, "from 20 cents above C to 100 cents below C after the work in between")]
    [InlineData("B -20", "clip", "C", true, "from 120 cents below C to C after a clip")]
    [InlineData("C", "clip", "between B and C", true, "from C to up to 100 cents below C after a clip")]
    public void A_crow_that_the_work_can_hardly_have_moved_so_is_told_as_heard_and_asked_about(string before, string kind, string after, bool odd, string? asked)
    {
        var scene = Scene();
        scene.Log(1, Test.Of(TestKind.Crow, pitch: Pitch(before)));
        scene.Log(1, Adjustment.Of(new(kind), new Place(kind.StartsWith("clip", StringComparison.Ordinal) ? Zone.TipEdge : Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.Crow, pitch: Pitch(after)));

        var letter = LetterComposer.Compose(scene.Material);
        var sentence = letter.Reeds[0].Crow!.Moves[0].Sentence;
        Assert.Equal(odd, DrawnBeside(letter).Contains("when heard again:", StringComparison.Ordinal));
        Assert.Equal(odd, !sentence.Contains("after that", StringComparison.Ordinal));
        Assert.Matches("^I [a-z].* the crow stood .*(higher|lower)$", sentence);
        var gaps = Gaps(scene, GapKind.CrowAgainstTheWork);
        Assert.Equal(asked is null ? 0 : 1, gaps.Count);
        Assert.All(gaps, gap =>
        {
            Assert.Contains($"In the log of reed one the crow goes {asked}: is that entry right?", gap.Words, StringComparison.Ordinal);
            Assert.True(gap.IsToldOnly);
            Assert.Equal(scene.Reed(1).Id, gap.Reed);
        });
    }

    private static string DrawnBeside(LetterDraft letter) =>
        string.Join(' ', LetterPictures.Crow(letter, letter.Reeds[0], CrowShow.LetterNarrow)!.Parts.OfType<SketchWords>().Select(words => words.Text));

    [Fact]
    public void What_was_scraped_beside_the_clip_may_have_lowered_the_crow()
    {
        var scene = Scene();
        scene.Log(1, Test.Of(TestKind.Crow, pitch: Pitch("C +20")));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.Crow, pitch: Pitch("C -30")));

        Assert.Contains("after that the crow stood", LetterComposer.Compose(scene.Material).Reeds[0].Crow!.Moves[0].Sentence, StringComparison.Ordinal);
        Assert.Empty(Gaps(scene, GapKind.CrowAgainstTheWork));
    }

    [Theory]
    [InlineData("It leaks at the sides.", "side-leak", Certainty.Certain, Arose.AsItArrived, -1, true, true)]
    [InlineData("It leaks at the sides.", "side-leak", Certainty.Suspected, Arose.AsItArrived, -1, false, false)]
    [InlineData("It leaks at the sides.", "side-leak", Certainty.Certain, Arose.CausedByTheWork, -1, false, false)]
    [InlineData("It leaks at the sides.", "side-leak", Certainty.Certain, Arose.AsItArrived, 3, false, true)]
    [InlineData("It looks wavy.", "tip-cracked", Certainty.Certain, Arose.AsItArrived, -1, false, false)]
    public void A_letter_agrees_only_where_what_was_found_says_the_same(string bothers, string kind, Certainty certainty, Arose arose, int sealedLater, bool agrees, bool found)
    {
        var all = Letters(bothers, scene =>
        {
            scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(kind == "side-leak" ? Zone.SideEdges : Zone.TipEdge), certainty: certainty, arose: arose));
            scene.Log(1, Test.Of(TestKind.Peep, 1));
            scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
            scene.Log(1, sealedLater < 0 ? Test.Of(TestKind.Peep, 0) : Test.Of(TestKind.Seal, sealedLater));
        });

        Assert.Equal(agrees, all.Exists(text => Regex.IsMatch(text, "I can (only agree|bear that out)")));
        Assert.Equal(found, all.Exists(text => Regex.IsMatch(text, @"I (found|noticed|met) that too\.|what I (found|noticed) as well\.")));
    }

    [Theory]
    [InlineData("thin-corners", null, true, true)]
    [InlineData("clip-hair", null, true, false)]
    [InlineData("open-squeeze", null, true, false)]
    [InlineData("thin-corners", Agreement.Unagreed, false, false)]
    public void A_wish_for_safe_changes_is_called_kept_only_where_nobody_could_think_otherwise(string kind, string? words, bool told, bool kept)
    {
        var all = Letters("It tastes of tea.", scene =>
        {
            scene.Log(1, Test.Of(TestKind.Peep, 1));
            scene.Log(1, Adjustment.Of(new(kind), new Place(kind == "clip-hair" ? Zone.TipEdge : kind == "open-squeeze" ? Zone.Opening : Zone.TipCorners), words: words));
            scene.Log(1, Test.Of(TestKind.Peep, 0));
        }, "SafeChangesOnly");

        Assert.Equal(told, all.TrueForAll(text => Regex.IsMatch(text, "(?i)safe changes|as you (wished|asked)|just as you wanted")));
        Assert.Equal(kept, all.Exists(text => Regex.IsMatch(text, "(?i)kept to that|that is how it was done|kept to safe changes|these were safe changes|as you (wished|asked)|just as you wanted")));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_test_after_every_pass_is_told_only_where_each_has_one_that_tells_how_it_plays(bool played)
    {
        var all = Letters("It tastes of tea.", scene =>
        {
            for (var pass = 0; pass < 2; pass++)
            {
                scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(1 + pass)));
                scene.Log(1, played || pass == 1 ? Test.Of(TestKind.Peep, 0) : Test.Of(TestKind.Length, millimetres: 71m));
            }
        }, "SafeChangesOnly");

        Assert.Equal(played, all.Exists(text => Regex.IsMatch(text, "(?i)test after (each|every)|trying it after each|tried (it )?(each time|after (each|every))|each with a test|each pass tried")));
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void A_reed_with_two_faults_open_is_not_called_a_better_reed(int faults, bool called)
    {
        string[] kinds = ["back-thick", "windows-uneven"];
        var all = Letters("It tastes of tea.", scene =>
        {
            foreach (var kind in kinds.Take(faults))
            {
                scene.Log(1, Finding.Of(new(kind), FindingCharacter.Fault, new Place(Zone.Windows)));
            }

            scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
            scene.Log(1, Test.Of(TestKind.Peep, 0));
            scene.Log(1, Verdict.Of(VerdictKind.Improved));
        });

        Assert.Equal(called, all.Exists(text => text.Contains("better reed", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("good reed this, sings", true)]
    [InlineData("Nice dark sound though.", true)]
    [InlineData("The tone’s lovely", true)]
    [InlineData("I like this one", true)]
    [InlineData("beautifully tied", true)]
    [InlineData("not a good reed", false)]
    [InlineData("would be a good reed if it held its air", false)]
    [InlineData("a good bit of cane left", false)]
    [InlineData("needs good cane", false)]
    [InlineData("super thin tip", false)]
    [InlineData("is it a good reed?", false)]
    [InlineData("back to it after lunch", false)]
    public void Praise_that_was_only_a_remark_is_told_to_the_teacher(string words, bool told)
    {
        var scene = Scene();
        scene.Log(1, Note.Of(words));

        var gaps = Gaps(scene, GapKind.PraiseNotInTheLetter);
        Assert.Equal(told ? 1 : 0, gaps.Count);
        Assert.All(gaps, gap =>
        {
            Assert.Contains("Good of reed one, said at the bench and not in the letter: “", gap.Words, StringComparison.Ordinal);
            Assert.Contains(words.TrimEnd('.')[1..], gap.Words, StringComparison.Ordinal);
            Assert.True(gap.IsToldOnly);
            Assert.Equal("reed-1-story", gap.Part);
        });
    }

    [Fact]
    public void Of_a_reed_that_was_left_alone_what_was_good_is_told_once() => Assert.All(
        Letters("It tastes of tea.", scene =>
        {
            scene.Log(1, Test.Of(TestKind.TonguedStarts, 3));
            scene.Log(1, Test.Of(TestKind.LowResponse, 0));
        }),
        text =>
        {
            Assert.Matches("(?i)(what (is good|I liked|pleased me)|I would keep|I (liked|was glad of|was pleased with) this)[^.:]*: tongued notes were clean every time", text);
            Assert.Single(Regex.Matches(text, "(?i)tongued notes were clean every time"));
        });

    [Theory]
    [InlineData(FindingCharacter.Strength, VerdictKind.LeftAsItCame, 1)]
    [InlineData(FindingCharacter.Strength, VerdictKind.NotToBeSaved, 1)]
    [InlineData(FindingCharacter.Fault, VerdictKind.LeftAsItCame, 0)]
    public void A_strength_of_such_a_reed_is_told_by_its_name_and_not_once_more_without_it(FindingCharacter character, VerdictKind verdict, int told) => Assert.All(
        Letters("It tastes of tea.", scene =>
        {
            scene.Log(1, Finding.Of(new(character == FindingCharacter.Strength ? "spine-intact" : "spine-scraped"), character, new Place(Zone.Spine)));
            scene.Log(1, Verdict.Of(verdict));
        }, isWhole: true),
        text =>
        {
            Assert.DoesNotMatch("(?i)what is good (in|about) (it|this)[^:]*[.]|the good in it", text);
            Assert.Equal(told, Regex.Count(text, "(?i)the spine( \\([^)]*\\))? (is whole|has been left standing|stands whole|has been kept)"));
        });

    private static List<string> Letters(string bothers, Action<LetterScene> log, string permission = "TakeRisks", bool isWhole = false) =>
    [
        .. Enumerable.Range(0, 60).Select(seed =>
        {
            var scene = Scene(bothers, new Guid(seed, 7, 7, new byte[8]), permission);
            log(scene);
            return string.Join('\n', LetterComposer.Compose(scene.Material).Blocks.Where(block => isWhole || block.Reed is not null).Select(block => block.Text));
        }),
    ];

    private static List<LetterGap> Gaps(LetterScene scene, GapKind kind) => [.. LetterComposer.Gaps(scene.Material).Where(gap => gap.Kind == kind)];

    private static LetterScene Scene(string bothers = "It tastes of tea.", Guid? batch = null, string permission = "TakeRisks")
    {
        var scene = new LetterScene(1, batch, form =>
        {
            (form.Questions, form.Reeds[0].Bothers, form.Reeds[0].Questions, form.Reeds[0].Permission) = (null, bothers, null, permission);
        })
        { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        return scene;
    }

    private static SaidPitch Pitch(string text) => LetterScene.Done(SaidPitch.Read(text, Tuning.Standard));
}
