using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What was said to the log, and not of the reed, stands nowhere in a letter.</summary>
public sealed class LetterCommandTests
{
    [Theory]
    [InlineData("nah scratch that, ")]
    [InlineData("scratch that: ")]
    [InlineData("No wait, scratch that last one, ")]
    [InlineData("no that's wrong, scratch that, ")]
    [InlineData("oh, forget that. ")]
    [InlineData("I take that back – ")]
    [InlineData("correct the last one: ")]
    [InlineData("amend that, ")]
    [InlineData("actually no, ")]
    [InlineData("sorry, wrong entry, ")]
    [InlineData("undo that please, ")]
    public void Words_that_take_back_are_quoted_nowhere(string command)
    {
        var (plain, said) = (Scene(""), Scene(command));

        Assert.Equal(Everything(plain), Everything(said), ignoreCase: true);
        Assert.Equal(Marks(plain), Marks(said), ignoreCase: true);
        Assert.Contains("the pitch sits on it", Everything(said), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("nah scratch that left the heart alone")]
    [InlineData("scratch that, left the heart alone")]
    [InlineData("I left it alone")]
    [InlineData("scratch that")]
    public void What_is_left_of_a_reason_and_gives_none_is_not_told(string words)
    {
        var scene = Scene("");
        scene.Log(1, LeaveAlone.Of(new Place(Zone.HeartCentre), words));

        var text = Everything(scene);
        Assert.DoesNotMatch("(?i)scratch|left the heart alone|I left it alone", text + Marks(scene));
    }

    [Theory]
    [InlineData("the scratch that runs across it goes deep")]
    [InlineData("scratch that corner and it tears")]
    [InlineData("no more cane to spare there")]
    [InlineData("it is right, not that it matters much")]
    [InlineData("actually it sings")]
    public void Words_of_the_reed_stay(string words)
    {
        var scene = Scene("");
        scene.Log(1, LeaveAlone.Of(new Place(Zone.HeartCentre), words));

        Assert.Contains(words, Everything(scene), StringComparison.OrdinalIgnoreCase);
    }

    private static LetterScene Scene(string command)
    {
        var scene = new LetterScene(1, new Guid(1, 8, 8, new byte[8])) { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        var corners = scene.Log(1, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), words: command + "the left corner is worse than the right"));
        scene.Log(1, Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.HeartSides), words: command + "a dark spot in the cane"));
        scene.Log(1, Test.Of(TestKind.Depth, words: command + "rounder than it looks"));
        scene.Log(1, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2), corners));
        scene.Log(1, Adjustment.Of(AdjustmentKindId.SomethingElse, new Place(Zone.Cork), words: command + "sanded the cork a touch"));
        scene.Log(1, Test.Of(TestKind.Depth, words: command + "rounder still"));
        scene.Log(1, LeaveAlone.Of(new Place(Zone.Spine), command + "the pitch sits on it"));
        scene.Log(1, Risk.Of(command + "the corners may tear"));
        scene.Log(1, FindingEnded.Of(corners, FindingEnding.Better, command + "it speaks sooner"));
        scene.Log(1, Stopped.Of(command + "every stroke was giving less"));
        scene.Log(1, Verdict.Of(VerdictKind.Improved, command + "the low D is free"));
        return scene;
    }

    private static string Everything(LetterScene scene)
    {
        var letter = LetterComposer.Compose(scene.Material);
        return string.Join("\n", [.. letter.Blocks.Select(block => block.Text), .. letter.Blocks.SelectMany(block => block.Rows).Select(row => $"{row.Test} {row.Before} {row.Now}")]);
    }

    private static string Marks(LetterScene scene) => string.Join("\n", LetterComposer.Compose(scene.Material).Reeds[0].Marks.Select(ReedSketch.Say));
}
