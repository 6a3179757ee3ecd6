using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Tests.Bench.Advice.AdviceScene;

namespace ReedClinic.Domain.Tests.Bench.Advice;

/// <summary>What is told before it is recorded. Common practice, with no source; the verdicts are read against the reed’s own log.</summary>
public sealed class BeforehandTests
{
    [Theory]
    [InlineData(Permission.SafeChangesOnly, "C -40", AdviceKind.SafeClip)]
    [InlineData(Permission.SafeChangesOnly, null, AdviceKind.SafeClip)]
    [InlineData(Permission.TakeRisks, null, AdviceKind.ClipUnheard)]
    [InlineData(Permission.TakeRisks, "C +40", AdviceKind.ClipWhenSharp)]
    [InlineData(Permission.TakeRisks, "C -40", null)]
    public void A_clip_is_told_of_before_by_what_was_allowed_and_what_was_heard(Permission permission, string? crow, AdviceKind? told)
    {
        var scene = new AdviceScene(permission);
        if (crow is not null)
        {
            scene.Crow(crow);
        }

        Assert.Equal(told, Told(scene, Hair())?.Kind);
    }

    [Fact]
    public void A_clip_below_the_length_that_is_left_is_told_of_before()
    {
        var scene = new AdviceScene();
        scene.Crow("C -40");
        scene.Length(60m);

        Assert.Equal(AdviceKind.LengthFloor, Told(scene, Hair())?.Kind);
    }

    [Fact]
    public void What_was_told_and_set_aside_is_never_told_again_and_neither_is_it_after_the_clip()
    {
        var scene = new AdviceScene();
        scene.SetAside(Told(scene, Hair())!);
        Assert.Null(Told(scene, Hair()));

        var other = new AdviceScene();
        other.Do(AdviceScene.Hair);
        Assert.Null(Told(other, Hair()));
    }

    [Fact]
    public void A_crow_in_the_same_breath_was_heard_and_work_that_was_agreed_was_asked_about()
    {
        var scene = new AdviceScene();
        var crow = Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Writer.Value(Domain.Pitch.SaidPitch.Read("C -10", Domain.Pitch.Tuning.Standard))));
        Assert.Null(Told(scene, Hair(), crow));

        var safe = new AdviceScene(Permission.SafeChangesOnly);
        Assert.Null(Told(safe, Hair(Agreement.With(null))));
    }

    [Theory]
    [InlineData(VerdictKind.Improved, true)]
    [InlineData(VerdictKind.GoodOnArrivalRefined, true)]
    [InlineData(VerdictKind.LeftAsItCame, false)]
    [InlineData(VerdictKind.NeedsPlayingIn, false)]
    [InlineData(VerdictKind.ReturnedUnplayed, false)]
    public void A_verdict_that_tells_of_work_where_none_stands_is_told_of_before(VerdictKind verdict, bool told)
    {
        var scene = new AdviceScene();
        scene.Crow("C");
        Assert.Equal(told ? AdviceKind.VerdictWithoutWork : null, Told(scene, Given(verdict))?.Kind);

        scene.Do(TipSides);
        Assert.Null(Told(scene, Given(verdict)));
    }

    [Fact]
    public void The_same_verdict_twice_is_told_of_until_something_was_tried_since()
    {
        var scene = new AdviceScene();
        scene.Do(TipSides);
        scene.Say(Given(VerdictKind.Improved));

        Assert.Equal((AdviceKind.SameVerdict, "This verdict stands already: improved."), (Told(scene, Given(VerdictKind.Improved))!.Kind, Told(scene, Given(VerdictKind.Improved))!.Line));
        Assert.Null(Told(scene, Given(VerdictKind.NeedsPlayingIn)));

        scene.Crow("C -5");
        Assert.Null(Told(scene, Given(VerdictKind.Improved)));
    }

    [Fact]
    public void Nothing_else_is_told_of_before()
    {
        var scene = new AdviceScene(Permission.SafeChangesOnly);
        scene.Crow("C +40");

        Assert.Null(Told(scene, Work("thin-corners", Zone.TipCorners)));
        Assert.Null(Told(scene, Writer.Value(Note.Of("a quiet room"))));
    }

    private static AdviceLine? Told(AdviceScene scene, BenchEntry entry, params BenchEntry[] earlier) =>
        Beforehand.Of(scene.Writer.Log, scene.Reed, scene.Batch, entry, earlier);

    private static Adjustment Hair(string? words = null) => Work("clip-hair", Zone.TipEdge, words);

    private static Adjustment Work(string kind, Zone zone, string? words = null) =>
        Writer.Value(Adjustment.Of(new AdjustmentKindId(kind), new Place(zone), words: words));

    private static Verdict Given(VerdictKind verdict) => Writer.Value(Verdict.Of(verdict));
}
