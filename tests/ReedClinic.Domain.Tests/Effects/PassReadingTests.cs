using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Effects;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench;

namespace ReedClinic.Domain.Tests.Effects;

public sealed class PassReadingTests
{
    private static readonly StudentId Student = new(Writer.Number(70, 1));

    [Fact]
    public void All_that_was_done_between_two_measured_crows_is_taken_together()
    {
        var move = Assert.Single(Read(Crow("C -10"), Work("thin-corners"), Work("blend"), Crow("C -32")).Crow);

        Assert.Equal(-22, move.Moved.Value, 9);
        Assert.Equal(["blend", "thin-corners"], move.Work.Done.Keys.Select(kind => kind.Value).Order());
        Assert.Equal(Student, move.Work.Student);
        Assert.Equal(Writer.Ada, move.Work.Teacher);
    }

    [Fact]
    public void Each_pass_with_a_crow_on_either_side_counts_by_itself() =>
        Assert.Equal(
            [-10, 15],
            Read(Crow("C"), Work("blend"), Crow("C -10"), Work("clip-hair"), Crow("C +5")).Crow.Select(move => Math.Round(move.Moved.Value, 9)));

    [Theory]
    [InlineData("between B and C")]
    [InlineData("flat C")]
    public void What_was_told_without_a_pitch_is_no_measurement_and_work_adds_up_across_it(string unmeasured)
    {
        var move = Assert.Single(Read(Crow("C"), Work("blend"), Crow(unmeasured), Work("clip-hair"), Crow("C +5")).Crow);

        Assert.Equal(5, move.Moved.Value, 9);
        Assert.Equal(2, move.Work.Done.Count);
    }

    [Fact]
    public void Without_a_measured_crow_on_both_sides_there_are_no_cents()
    {
        Assert.Empty(Read(Work("blend"), Crow("C -10")).Crow);
        Assert.Empty(Read(Crow("C"), Work("blend"), Crow("between B and C")).Crow);
        Assert.Empty(Read(Crow("C"), Crow("C -10")).Crow);
        Assert.Empty(Read().Crow);
    }

    [Fact]
    public void A_crow_that_falls_below_its_note_and_one_in_another_octave_are_measured_the_short_way()
    {
        Assert.Equal(-80, Assert.Single(Read(Crow("C6"), Work("blend"), Crow("B +20")).Crow).Moved.Value, 9);
        Assert.Equal(-40, Assert.Single(Read(Crow("F +30"), Work("blend"), Crow("F -10")).Crow).Moved.Value, 9);
        Assert.Equal(100, Assert.Single(Read(Crow("F +80"), Work("clip"), Crow("F# +80")).Crow).Moved.Value, 9);
    }

    [Fact]
    public void The_last_try_of_a_pass_counts_and_what_was_taken_back_does_not()
    {
        var writer = new Writer();
        writer.Say(Crow("C"));
        writer.Say(Work("blend"));
        var undone = writer.Say(Work("thin-spine"));
        writer.Say(Crow("C -30"));
        writer.Say(Crow("C -12"));
        writer.Undo(undone);
        var move = Assert.Single(PassReading.Of(writer.Log, Student, CrowTarget.OnC(Tuning.Standard)).Crow);

        Assert.Equal(-12, move.Moved.Value, 9);
        Assert.Equal(["blend"], move.Work.Done.Keys.Select(kind => kind.Value));
    }

    [Fact]
    public void Words_move_in_the_direction_of_their_scale()
    {
        var reading = Read(
            Writer.Test(TestKind.Effort, 4), Writer.Test(TestKind.Edge, 1), Writer.Test(TestKind.SoftestStart, 1),
            Work("thin-corners"),
            Writer.Test(TestKind.Effort, 2), Writer.Test(TestKind.Edge, 3), Writer.Test(TestKind.SoftestStart, 1));

        Assert.Equal(
            [(EffectScale.Effort, -1), (EffectScale.Response, 0), (EffectScale.Tone, -1)],
            reading.Words.Select(move => (move.Scale, move.Way)).Order());
    }

    [Theory]
    [InlineData("blend", Blades.Both, Sides.Both, null, 1)]
    [InlineData("blend", Blades.Upper, Sides.Both, null, 0.5)]
    [InlineData("blend", Blades.Lower, Sides.Left, null, 0.25)]
    [InlineData("clip-hair", Blades.Both, Sides.Both, "0.3", 2)]
    [InlineData("clip-hair", Blades.Both, Sides.Both, null, 1)]
    [InlineData("clip", Blades.Both, Sides.Both, "0.2", 0.5)]
    [InlineData("clip", Blades.Upper, Sides.Both, "0.4", 0.5)]
    public void How_much_was_done_is_told_in_usual_passes(string kind, Blades blades, Sides sides, string? millimetres, double share) =>
        Assert.Equal(share, PassReading.Share(Writer.Value(Adjustment.Of(
            new(kind), new Place(Zone.TipEdge, blades, sides), Writer.Value(Amount.Read(null, millimetres, null))))), 9);

    internal static Domain.Bench.Test Crow(string pitch) =>
        Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Writer.Value(SaidPitch.Read(pitch, Tuning.Standard))));

    internal static Adjustment Work(string kind) => Writer.Value(Adjustment.Of(new AdjustmentKindId(kind), new Place(Zone.TipEdge)));

    private static PassReading Read(params BenchEntry[] entries)
    {
        var writer = new Writer();
        foreach (var entry in entries)
        {
            writer.Say(entry);
        }

        return PassReading.Of(writer.Log, Student, CrowTarget.OnC(Tuning.Standard));
    }
}
