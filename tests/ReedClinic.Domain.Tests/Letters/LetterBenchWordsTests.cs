using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was typed at the bench is a sentence in the letter, or stands there as the words that it is.</summary>
public sealed class LetterBenchWordsTests
{
    [Theory]
    [InlineData("Wire a touch loose.", "The wire is a touch loose.")]
    [InlineData("Corners thick and dark", "The corners are thick and dark.")]
    [InlineData("Goes flat when it is warm", "It goes flat when it is warm.")]
    [InlineData("The cork sits low.", "The cork sits low.")]
    [InlineData("a shadow in the heart", ": “a shadow in the heart”.")]
    [InlineData("Left rail, see by the window", ": “Left rail, see by the window”.")]
    public void What_was_found_is_told_in_a_sentence_or_as_words_of_the_bench(string words, string told) => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.WholeReed), words: words));

        Assert.Contains(told, Text(scene), StringComparison.Ordinal);
        Assert.True(told.StartsWith("The cork", StringComparison.Ordinal) || !Regex.IsMatch(Text(scene), "[.] " + Regex.Escape(words.TrimEnd('.'))));
    });

    [Fact]
    public void What_only_names_the_finding_once_more_is_left_out_and_the_rest_is_a_sentence() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        scene.Log(1, Finding.Of(new("tip-thin"), FindingCharacter.Fault, new Place(Zone.TipCentre), words: "Goes soft: tip’s thin all round."));

        Assert.Contains(". It goes soft.", Text(scene), StringComparison.Ordinal);
        Assert.DoesNotContain("all round", Text(scene), StringComparison.Ordinal);
    });

    [Fact]
    public void How_it_ended_has_its_subject() => Assert.All(Seeds, seed =>
    {
        var scene = Scene(seed);
        var found = scene.Log(1, Finding.Of(new("side-leak"), FindingCharacter.Fault, new Place(Zone.SideEdges)));
        scene.Log(1, Adjustment.Of(new("seal-sides"), new Place(Zone.SideEdges), Amount.NotSaid, found));
        scene.Log(1, FindingEnded.Of(found, FindingEnding.Better, "Holds better now."));

        Assert.Contains("It holds better now.", Text(scene), StringComparison.Ordinal);
        Assert.DoesNotContain(". Holds", Text(scene), StringComparison.Ordinal);
    });

    [Theory]
    [InlineData("done, it speaks on a breath", "[:] it speaks on a breath[.]")]
    [InlineData("stop here, the opening began to fall", "[:] the opening began to fall[.]")]
    [InlineData("because the light had gone", "[:] the light had gone[.]")]
    [InlineData("to keep the opening", "[:] to keep the opening[.]")]
    [InlineData("no cane left at the corners", "[.] [^.]*[:,] “no cane left at the corners”[.]")]
    public void Why_it_was_stopped_is_a_clause_or_stands_as_words_of_the_bench(string words, string told) => Assert.All(Seeds, seed =>
    {
        var scene = Stopped(seed, words);

        Assert.Matches(told, Text(scene));
        Assert.DoesNotMatch("(?i)[:] (done|stop here|because|no cane)|[.] (done|stop here|because|no cane)", Text(scene));
    });

    [Theory]
    [InlineData("stop here, leave well alone")]
    [InlineData("done.")]
    [InlineData("that’s it, better leave it alone now")]
    [InlineData("it is as good as this cane gets")]
    public void What_one_says_to_oneself_in_stopping_is_no_reason(string words) => Assert.All(Seeds, seed =>
        Assert.DoesNotMatch("(?i)reason|this is why|here is why|what led me|leave well|leave it|as good as this cane gets|done[.]", Text(Stopped(seed, words)).Replace("what was done.", "", StringComparison.Ordinal)));

    private static IEnumerable<int> Seeds => Enumerable.Range(1, 25);

    private static LetterScene Stopped(int seed, string words)
    {
        var scene = Scene(seed);
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2)));
        scene.Log(1, Test.Of(TestKind.SoftestStart, 3));
        scene.Log(1, Domain.Bench.Stopped.Of(words));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));
        return scene;
    }

    private static LetterScene Scene(int seed)
    {
        var scene = new LetterScene(1, new Guid(seed, 4, 4, new byte[8]), form => (form.Questions, form.Reeds[0].Bothers) = (null, "Nothing")) { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        return scene;
    }

    private static string Text(LetterScene scene) =>
        Regex.Replace(LetterComposer.Compose(scene.Material).Blocks.Single(block => block.Key == "reed-1-story").Text, @" \([^)]*\)", "");
}
