using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Tests.Letters;

namespace ReedClinic.Domain.Tests.Bench.Advice;

/// <summary>A reed that was blown here doesn’t go back as unplayed without a word. Common practice, with no source; held against the reed’s own log.</summary>
public sealed class UnplayedTests
{
    private static readonly Verdict Unplayed = Writer.Value(Verdict.Of(VerdictKind.ReturnedUnplayed));

    [Fact]
    public void Unplayed_beside_a_test_is_asked_about_before_it_is_recorded()
    {
        var scene = new AdviceScene();
        Assert.Null(Told(scene));

        scene.Crow("C");

        var told = Told(scene);
        Assert.Equal(AdviceKind.UnplayedThoughTried, told?.Kind);
        Assert.Contains("“returned unplayed” would say that it wasn’t", told!.Line, StringComparison.Ordinal);
        Assert.Null(Beforehand.Of(scene.Writer.Log, scene.Reed, scene.Batch, Writer.Value(Verdict.Of(VerdictKind.NotToBeSaved))));

        scene.Say(Writer.Value(AdviceSetAside.Of(told.Id)));
        Assert.Null(Told(scene));
    }

    [Theory]
    [InlineData(TestKind.Opening, false)]
    [InlineData(TestKind.Seal, false)]
    [InlineData(TestKind.Effort, true)]
    public void What_is_only_looked_at_or_held_is_not_played(TestKind kind, bool asks)
    {
        var scene = new AdviceScene();
        scene.Say(Writer.Test(kind, 1));

        Assert.Equal(asks, Told(scene) is not null);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_letter_lists_it_where_such_a_verdict_stands_beside_a_test(bool tried)
    {
        var scene = new LetterScene(1);
        if (tried)
        {
            scene.Log(1, Domain.Bench.Test.Of(TestKind.Effort, 2));
        }

        scene.Log(1, Verdict.Of(VerdictKind.ReturnedUnplayed));

        Assert.Equal(tried, LetterComposer.Gaps(scene.Material).Any(gap => gap.Key == "unplayed-one" && !gap.IsToldOnly));
    }

    private static AdviceLine? Told(AdviceScene scene) =>
        Beforehand.Of(scene.Writer.Log, scene.Reed, scene.Batch, Unplayed);
}
