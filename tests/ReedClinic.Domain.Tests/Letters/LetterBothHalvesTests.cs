using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Of what a student wrote each half is answered or asked back, and a reed that goes home is told how to begin with.</summary>
public sealed class LetterBothHalvesTests
{
    [Theory]
    [InlineData("Flat by the end of a rehearsal", "by the end of a rehearsal")]
    [InlineData("Goes flat after ten minutes", "after ten minutes")]
    [InlineData("It is flat when it gets warm", "when it gets warm")]
    [InlineData("Flat once I’ve played it for half an hour", "once I’ve played it for half an hour")]
    [InlineData("It is flat", null)]
    public void A_time_that_stands_with_a_complaint_is_asked_back(string bothers, string? when) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, bothers);
        scene.Log(1, Test.Of(TestKind.TuningNote, 0));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Test.Of(TestKind.TuningNote, 2));

        Assert.Equal(when is null ? 0 : 1, Regex.Count(Text(scene, "story"), $"“{when}”.*(tell me|let me know|write to me)", RegexOptions.IgnoreCase));
    });

    [Theory]
    [InlineData("It has a wide opening")]
    [InlineData("The opening looks very big")]
    [InlineData("It opens too far")]
    public void A_wide_opening_is_heard_in_whatever_words(string bothers) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, bothers);
        scene.Log(1, Test.Of(TestKind.Opening, 3));

        Assert.Matches("(met|found|was the same)[^.]*: the opening was a little (wide|large)", Text(scene, "story"));
    });

    [Theory]
    [InlineData("Nothing", false)]
    [InlineData("The low notes come late", true)]
    public void The_same_as_nothing_is_nothing(string first, bool asked) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, first, "The same");
        scene.Log(2, Finding.Of(new("tip-thick"), FindingCharacter.Fault, new Place(Zone.TipCentre)));

        Assert.Equal(asked, Regex.IsMatch(Text(scene, "story", 2), "(?i)tell me|let me know|write to me"));
    });

    [Fact]
    public void Of_two_opposites_the_one_that_was_met_is_named() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, "Too open at first, and it closes up when I play");
        scene.Log(1, Test.Of(TestKind.Opening, 1));

        Assert.DoesNotMatch("otherwise|did not show", Text(scene, "story"));
        Assert.Matches("(second|latter)[^.]*: the opening was a little (small|narrow)", Text(scene, "story"));
    });

    [Theory]
    [InlineData("Concert", VerdictKind.Improved, true)]
    [InlineData("Concert", VerdictKind.NeedsPlayingIn, false)]
    public void A_reed_that_was_worked_on_is_played_in_whatever_it_is_for(string use, VerdictKind verdict, bool told) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, "Nothing", use: use);
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3));
        scene.Log(1, Verdict.Of(verdict));

        Assert.Equal(told, Regex.IsMatch(Block(scene, "care"), "(?i)ten minutes"));
        Assert.DoesNotMatch("few minutes every|few minutes a day|[Aa] few minutes of|few minutes now|few easy", LetterText(scene));
    });

    [Theory]
    [InlineData("Which one first?")]
    [InlineData("May I scrape it?")]
    public void That_no_knife_is_taken_to_a_reed_that_comes_back_is_said_once_in_every_letter(string question) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed, "Nothing", question: question);
        scene.Batch.Questions[0].AnswerWith("Ask me first", scene.Batch.SubmittedAt);
        scene.Log(1, Verdict.Of(VerdictKind.LeftAsItCame));

        Assert.Single(Regex.Matches(LetterText(scene), Regex.Escape(SaidCautions.NotYet)));
    });

    private static IEnumerable<int> Seeds => Enumerable.Range(1, 25);

    private static LetterScene Scene(int seed, string bothers, string? second = null, string? use = null, string? question = null)
    {
        var reeds = second is null ? 1 : 2;
        var scene = new LetterScene(reeds, new Guid(seed, 6, 6, new byte[8]), form =>
        {
            form.Questions = question;
            form.Reeds.ToList().ForEach(reed => (reed.Bothers, reed.UsedFor, reed.Questions) = (bothers, use, null));
            form.Reeds[^1].Bothers = second ?? bothers;
        })
        { Thread = LetterThread.Nothing };
        Enumerable.Range(1, reeds).ToList().ForEach(number => scene.Arrive(number));
        return scene;
    }

    private static string Text(LetterScene scene, string part, int reed = 1) => Regex.Replace(Block(scene, FormattableString.Invariant($"reed-{reed}-{part}")), @" \([^)]*\)", "");

    private static string Block(LetterScene scene, string key) => LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == key).Text;

    private static string LetterText(LetterScene scene) => string.Join("\n", LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text));
}
