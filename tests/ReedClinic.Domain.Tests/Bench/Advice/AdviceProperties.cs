using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Tests.Bench.Advice.AdviceScene;

namespace ReedClinic.Domain.Tests.Bench.Advice;

/// <summary>However a reed was worked: what holds of all advice.</summary>
public sealed class AdviceProperties
{
    private static readonly string[] Pitches = ["C", "C +40", "flat C", "B", "Bb -20", "C#", "between B and C"];

    private static readonly string[] Kinds = ["heart-thin", "tip-centre-thin", "tip-thick", "rails-cut"];

    private static readonly Zone[] Zones = [Zone.Spine, Zone.TipCorners, Zone.HeartCentre];

    private static readonly Gen<PlannedWork> Works = Gen.Int[0, AdjustmentCatalogue.All.Count - 1]
        .Select(index => AdjustmentCatalogue.All[index]).Select(kind => Plan(kind.Id.Value, kind.Zone));

    private static readonly Gen<Action<AdviceScene>> Steps = Gen.Frequency(
        (3, Works.Select(work => new Action<AdviceScene>(scene => scene.Do(work)))),
        (2, Gen.Int[0, Pitches.Length - 1].Select(index => new Action<AdviceScene>(scene => scene.Crow(Pitches[index])))),
        (2, Gen.Int[0, 4].Select(step => new Action<AdviceScene>(scene => scene.Effort(step)))),
        (1, Gen.Int[655, 720].Select(tenths => new Action<AdviceScene>(scene => scene.Length(tenths / 10m)))),
        (1, Gen.Int[0, Kinds.Length - 1].Select(index => Kinds[index]).Select(kind => new Action<AdviceScene>(scene => scene.Found(kind)))),
        (1, Gen.Int[0, Zones.Length - 1].Select(index => Zones[index]).Select(zone => new Action<AdviceScene>(scene =>
            scene.Say(Writer.Value(LeaveAlone.Of(new Place(zone), "so it was said")))))));

    private static readonly Gen<(Permission Permission, List<Action<AdviceScene>> Steps, PlannedWork Work)> Cases =
        Gen.Select(Gen.Enum<Permission>(), Steps.List[0, 15], Works);

    [Fact]
    public void Advice_that_was_set_aside_never_comes_back_whatever_is_done_next() => Gen.Select(Cases, Steps.List[0, 8], Works).Sample(
        (first, later, next) =>
        {
            var scene = Play(first.Permission, first.Steps);
            var gone = scene.Due(first.Work);
            foreach (var line in gone)
            {
                scene.SetAside(line);
            }

            Assert.Empty(scene.Due(first.Work));
            later.ForEach(step => step(scene));
            Assert.Empty(scene.Due(next).Select(line => line.Id).Intersect(gone.Select(line => line.Id)));
        },
        iter: 2000);

    [Fact]
    public void There_is_at_most_one_line_of_a_kind_in_order_with_a_reason_a_mark_and_a_name_that_can_be_stored() => Cases.Sample(
        one =>
        {
            var lines = Play(one.Permission, one.Steps).Due(one.Work);

            Assert.Equal(lines.Select(line => line.Kind).Distinct().Order(), lines.Select(line => line.Kind));
            Assert.All(lines, line =>
            {
                Assert.True(line.Id.IsWellFormed, line.Id.Value);
                Assert.False(string.IsNullOrWhiteSpace(line.Line) || line.Line.Contains('\n', StringComparison.Ordinal));
                Assert.False(string.IsNullOrWhiteSpace(line.Reason));
                Assert.DoesNotContain('\'', line.Line + line.Reason);
                Assert.Equal(line.Mark.Evidence == Evidence.Published, line.Mark is { Evidence: Evidence.Published, Source: not null });
            });
        },
        iter: 2000);

    [Fact]
    public void What_is_done_all_the_same_is_not_told_again_before_the_reed_is_tried_or_something_is_found() => Cases.Sample(
        one =>
        {
            var scene = Play(one.Permission, one.Steps);
            var first = scene.Due(one.Work).Where(line => line.Kind is not (AdviceKind.Permission or AdviceKind.FallNotWonBack or AdviceKind.Untested or AdviceKind.LengthFloor));

            scene.Do(one.Work);

            Assert.Empty(scene.Due(one.Work).Select(line => line.Id).Intersect(first.Select(line => line.Id)));
        },
        iter: 2000);

    [Fact]
    public void Advice_depends_on_what_stands_and_not_on_what_was_taken_back() => Gen.Select(Cases, Works).Sample(
        (one, extra) =>
        {
            var plain = Play(one.Permission, one.Steps);
            var undone = Play(one.Permission, one.Steps);
            undone.Writer.Undo(undone.Do(extra));

            Assert.Equal(plain.Due(one.Work), undone.Due(one.Work));
        },
        iter: 1000);

    private static AdviceScene Play(Permission permission, List<Action<AdviceScene>> steps)
    {
        var scene = new AdviceScene(permission);
        steps.ForEach(step => step(scene));
        return scene;
    }
}
