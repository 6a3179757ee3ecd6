using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>
/// What is never begun with. A cause warns of some adjustments as a beginning; as long as it may be behind what was seen, none of these is
/// the first thing that is done. Either something else comes before it, or it is looked for first.
/// </summary>
internal sealed class Beginnings(ReedNow now)
{
    /// <summary>The evidence must make a cause by a quarter likelier than it is anyway: less is left over where something else explains its signs. This program’s own default.</summary>
    private const double Lifted = 1.25;

    private readonly double plausible = now.Catalogue.Defaults.Next("plausible").Value;

    /// <summary>The likeliest cause that warns of beginning with this; null where none does.</summary>
    internal LikelyCause? Warns(AdjustmentEntry entry) =>
        now.Causes.Causes.FirstOrDefault(one => IsPlausible(one) && one.Cause.NeverFirst.Contains(entry.Id) && !IsBegun(one.Cause, entry));

    /// <summary>A test not made yet that would tell most of a cause; null where all were made.</summary>
    internal Sign? WouldTell(Cause cause) => (
        from link in now.Catalogue.LinksOf(cause.Id)
        let sign = now.Catalogue.Find(link.Sign)
        where sign is { Retired: false } && !now.Looked(sign.Id.Value) && now.Catalogue.Find(sign.Test) is { Retired: false }
        orderby link.Strength.Value / sign.Unasked.Value descending, sign.Id.Value
        select sign).FirstOrDefault();

    private bool IsPlausible(LikelyCause one) => one.High >= plausible && one.High >= Lifted * one.Cause.Prior.Value && !IsRuledOut(one.Cause) && now.Catalogue.LinksOf(one.Cause.Id).Any(link => now.Has(link.Sign.Value));

    /// <summary>What was looked at before and found right.</summary>
    private bool IsRuledOut(Cause cause) => cause.Id.Value switch
    {
        "under-soaked" or "closed-by-drying" => now.Checks.Wet && !now.Has("dry") && !now.Has("crow-silent"),
        "instrument" => now.Checks.Instrument && !now.Has("stays-with-instrument") && !now.Has("several-reeds-same"),
        "player" => now.Checks.Player && !now.Has("goes-with-player"),
        _ => false,
    };

    /// <summary>
    /// It is no beginning any more where a step of that cause was made and the reed shows what lets the work through: a low crow’s tip that is thick.
    /// </summary>
    private bool IsBegun(Cause cause, AdjustmentEntry entry) =>
        entry.Unless.Any(now.Holding.Contains) && cause.Steps.Any(step => now.PassesOf(step) > 0);
}
