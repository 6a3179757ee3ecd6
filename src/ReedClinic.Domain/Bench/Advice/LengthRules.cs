using System.Globalization;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>Advice about the length that is left.</summary>
internal static class LengthRules
{
    /// <summary>A clip that would leave the reed shorter than it may get.</summary>
    internal static AdviceLine? Floor(AdviceMatter matter)
    {
        if (matter is not { Planned: { } plan, Length: { } left, Floor: { } floor } || !WorkKinds.IsClip(plan.Kind))
        {
            return null;
        }

        var after = left.Millimetres - (ReedLengths.ClipOf(plan.Kind, plan.Amount) ?? 0);
        var wentBelow = left.Millimetres < floor.Millimetres && matter.DoneSince(left.MeasuredAt, done => WorkKinds.IsClip(done.AdjustmentKind));
        return after >= floor.Millimetres || wentBelow ? null : new AdviceLine(
            AdviceMatter.IdOf("length-floor", left.Measured), AdviceKind.LengthFloor,
            string.Create(CultureInfo.InvariantCulture, $"After this clip about {Below(after, floor)} mm are left; {floor.Millimetres:0.#} mm is as short as it should get here."),
            "A reed that has become too short for its staple doesn’t play in tune any more."
                + (left.IsGuessed ? " A clip without a size was counted as its usual one: measure it again." : ""),
            floor.Mark);
    }

    // Rounded to a tenth it could be said to be as long as the floor.
    private static string Below(decimal after, LengthFloor floor) => after.ToString(Math.Round(after, 1) >= floor.Millimetres ? "0.00" : "0.0", CultureInfo.InvariantCulture);

    /// <summary>
    /// The crow has fallen further than clips can win back in the length that is left. While they can, a fall is ordinary, even of
    /// more than a semitone while a thick tip is thinned (common practice).
    /// </summary>
    internal static AdviceLine? FallNotWonBack(AdviceMatter matter)
    {
        if (matter.IsOver || matter is not { Crow: CrowStand.Flat, Length: { } left, Floor: { } floor, Clip: { } clip }
            || !matter.Crows.SkipLast(1).Any(crow => matter.RangeOf(crow).Middle > matter.RangeOf(matter.Crows[^1]).Middle))
        {
            return null;
        }

        var spare = Math.Max(0, left.Millimetres - floor.Millimetres);
        var wonBack = (double)spare * 10 * clip.CentsPerTenth;
        var missing = -matter.RangeOf(matter.Crows[^1]).High.Value - Pitch.CrowTarget.ToleranceCents;
        return missing <= wonBack ? null : new AdviceLine(
            AdviceMatter.IdOf("fall-not-won-back", matter.CrowRun.Root), AdviceKind.FallNotWonBack,
            spare == 0
                ? $"The crow has fallen to {matter.SayCrow()}: no length is left to win it back."
                : string.Create(CultureInfo.InvariantCulture, $"The crow has fallen to {matter.SayCrow()}; the {spare:0.0#} mm that may still go win back about {wonBack:0} cents."),
            string.Create(CultureInfo.InvariantCulture, $"Counted with {clip.CentsPerTenth:0} cents for each tenth of a millimetre."),
            clip.Mark);
    }

    /// <summary>A first clip on a reed that nobody has measured.</summary>
    internal static AdviceLine? NotMeasured(AdviceMatter matter) =>
        !matter.Plans(WorkKinds.IsClip) || matter.Floor is null || matter.Length is not null
            || matter.DoneSince(0, done => WorkKinds.IsClip(done.AdjustmentKind))
            ? null
            : new AdviceLine(
                new AdviceId("length-not-measured/start"), AdviceKind.LengthNotMeasured, "Not yet measured: the length.",
                "Measured before and after a clip, it tells how much may still go.", EvidenceMark.CommonPractice);
}
