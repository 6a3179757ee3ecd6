using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
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

    [Theory]
    [InlineData(Permission.SafeChangesOnly)]
    [InlineData(Permission.TakeRisks)]
    public void What_is_said_of_a_clip_that_was_made_is_not_said_as_of_one_to_come_and_what_is_planned_still_is(Permission permission)
    {
        var scene = new AdviceScene(permission);
        var told = Told(scene, Hair())!;
        var planned = BenchAdvice.For(scene.Writer.Log, scene.Reed, scene.Batch, AdviceScene.Hair).First(line => line.Id == told.Id);

        Assert.DoesNotContain("can’t be put back", told.Line + told.Reason, StringComparison.Ordinal);
        Assert.Contains("If it isn’t cut yet", told.Reason, StringComparison.Ordinal);
        Assert.Contains("can’t be put back", planned.Line, StringComparison.Ordinal);
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
    public void Everything_that_is_due_about_a_clip_is_told_of_and_an_answer_to_one_is_none_to_another()
    {
        var scene = new AdviceScene(Permission.SafeChangesOnly);
        scene.Length(66.1m);
        Assert.Equal([AdviceKind.LengthFloor, AdviceKind.SafeClip, AdviceKind.ClipUnheard], Due().Select(line => line.Kind));

        scene.SetAside(Due()[0]);
        Assert.Equal([AdviceKind.SafeClip, AdviceKind.ClipUnheard], Due().Select(line => line.Kind));

        IReadOnlyList<AdviceLine> Due() => Beforehand.All(scene.Writer.Log, scene.Reed, scene.Batch, Hair());
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

    [Theory]
    [InlineData("0.8", "0.3", false)]
    [InlineData("0.8", "0.8", false)]
    [InlineData("0.3", "0.8", true)]
    [InlineData("0.8", null, false)]
    [InlineData("0.3", null, true)]
    [InlineData(null, "0.3", false)]
    public void A_clip_that_is_corrected_is_told_of_again_only_where_it_is_longer(string? was, string? better, bool told)
    {
        var scene = new AdviceScene();
        scene.Crow("C +40");
        scene.Do(Clip(Millimetres(was)));
        var fact = scene.Writer.Log.Live<Adjustment>().Single();

        var lines = Beforehand.InPlaceOf(
            scene.Writer.Log.FactOf(fact.Root)!, scene.Writer.Log, scene.Reed, scene.Batch,
            Writer.Value(Adjustment.Of(new AdjustmentKindId("clip"), new Place(Zone.TipEdge), new Amount(Millimetres: Millimetres(better)))));

        Assert.Equal(told, lines.Count > 0);

        static decimal? Millimetres(string? said) => said is null ? null : decimal.Parse(said, System.Globalization.CultureInfo.InvariantCulture);
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

    [Fact]
    public void Each_thing_of_one_breath_is_judged_by_what_comes_before_it()
    {
        var scene = new AdviceScene();
        scene.Crow("C -40");
        var sharp = Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Writer.Value(Domain.Pitch.SaidPitch.Read("C +40", Domain.Pitch.Tuning.Standard))));

        Assert.Null(Told(scene, Hair()));
        Assert.Equal(AdviceKind.ClipWhenSharp, Told(scene, Hair(), sharp)?.Kind);
        Assert.Null(Told(scene, Hair(), sharp, Hair()));

        // The third tenth leaves the reed at the length that this program doesn’t go below unasked, the fourth under it.
        scene.Length(66.3m);
        Assert.Equal(
            [null, null, null, AdviceKind.LengthFloor],
            Enumerable.Range(0, 4).Select(clips => Told(scene, Tenth(), [.. Enumerable.Repeat(Tenth(), clips)])?.Kind));

        static Adjustment Tenth() => Writer.Value(Adjustment.Of(new AdjustmentKindId("clip"), new Place(Zone.TipEdge), new Amount(Millimetres: 0.1m)));
    }

    [Fact]
    public void Advice_within_a_breath_keeps_its_name_until_it_is_recorded_whoever_writes_meanwhile_and_is_told_no_more_after_it()
    {
        var scene = new AdviceScene();
        scene.Crow("C -40");
        var (sharp, breath) = (Crow("C +40"), new OperationId(Writer.Number(30, 1)));
        var told = Assert.Single(Within(scene, breath, sharp));
        Assert.True(SameBreath.IsForNow(told.Id));
        scene.Writer.Say(Writer.Note("a colleague writes meanwhile"), by: Writer.Ben);
        Assert.Equal(told.Id, Assert.Single(Within(scene, breath, sharp)).Id);

        // What was shown stands before what was said, as it is recorded.
        scene.SetAside(told);
        scene.Writer.Add(sharp, scene.Writer.Entries.Count + 1, operation: breath);
        Assert.Null(Told(scene, Hair()));
        scene.Do(AdviceScene.Hair);
        Assert.DoesNotContain(scene.Due(PlannedWork.Of(scene.Writer.Log.Live<Adjustment>().Last())), line => line.Kind == AdviceKind.ClipWhenSharp);

        Assert.All(scene.Due(), line => Assert.False(SameBreath.IsForNow(line.Id)));

        // Another time it is another occurrence.
        scene.Crow("C -5");
        Assert.NotEqual(told.Id, Assert.Single(Within(scene, new OperationId(Writer.Number(30, 2)), sharp)).Id);
    }

    [Fact]
    public void Advice_that_an_older_log_names_by_where_it_ended_then_stays_set_aside()
    {
        var scene = new AdviceScene();
        scene.Crow("C -40");
        var kind = Assert.Single(Within(scene, default, Crow("C +40"))).Id.Value.Split('/')[0];
        var older = new AdviceId($"{kind}/{new Guid(scene.Writer.Log.LastSequence, 0, 0, new byte[8]):N}");
        scene.Say(Writer.Value(AdviceSetAside.Of(older)));
        scene.Say(Crow("C +40"));

        Assert.True(SameBreath.IsForNow(older));
        Assert.Null(Told(scene, Hair()));
    }

    [Fact]
    public void A_breath_too_long_for_one_operation_can_be_looked_at()
    {
        var scene = new AdviceScene();
        scene.Crow("C -40");

        Assert.Equal(AdviceKind.ClipWhenSharp, Told(scene, Hair(), [.. Enumerable.Repeat(Crow("C -40"), 2 * OperationId.MostParts), Crow("C +40")])?.Kind);
    }

    [Theory]
    [InlineData(VerdictKind.Improved, true)]
    [InlineData(VerdictKind.GoodOnArrivalRefined, true)]
    [InlineData(VerdictKind.LeftAsItCame, false)]
    [InlineData(VerdictKind.NeedsPlayingIn, false)]
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

    private static IReadOnlyList<AdviceLine> Within(AdviceScene scene, OperationId breath, params BenchEntry[] earlier) =>
        Beforehand.All(scene.Writer.Log, scene.Reed, scene.Batch, Hair(), breath, earlier);

    private static Domain.Bench.Test Crow(string pitch) =>
        Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Writer.Value(Domain.Pitch.SaidPitch.Read(pitch, Domain.Pitch.Tuning.Standard))));

    private static Adjustment Hair(string? words = null) => Work("clip-hair", Zone.TipEdge, words);

    private static Adjustment Work(string kind, Zone zone, string? words = null) =>
        Writer.Value(Adjustment.Of(new AdjustmentKindId(kind), new Place(zone), words: words));

    private static Verdict Given(VerdictKind verdict) => Writer.Value(Verdict.Of(verdict));
}
