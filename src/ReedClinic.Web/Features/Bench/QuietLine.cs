using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Forms;

namespace ReedClinic.Web.Features.Bench;

/// <summary>
/// The one quiet line above the form: what the teacher may want to remember before saving. It never stops anybody.
/// </summary>
public sealed class QuietLine(IStringLocalizer<BenchText> t)
{
    /// <summary>The line that matters most just now, or null.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="form">The form that is open.</param>
    public string? For(BenchView view, EntryForm form)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(form);
        if (form is FindingForm finding)
        {
            return Elsewhere(finding);
        }

        if (form is not AdjustmentForm work)
        {
            return null;
        }

        var takesCane = work.Chosen is { Reversible: Reversible.No };
        var left = view.Log.LeftAlone.FirstOrDefault(place => work.Typed.MaybePlace() is { } here && Touches(place.Now.Place, here));
        return (left, view.Reed.Permission) switch
        {
            ({ } place, _) => t["QuietLeaveAlone", place.Now.Place.Say(), place.Now.Words],
            (_, Permission.AdviseOnly) => t["QuietAdviseOnly"],
            (_, Permission.SafeChangesOnly) when takesCane && !view.Log.OpenRisks.Any() => t["QuietSafeOnly"],
            _ when view.Log.OpenRisks.FirstOrDefault() is { } risk => t["QuietRisk", risk.Fact.Now.Words],
            _ => work.Chosen?.Caution,
        };
    }

    // A finding whose own name says a part of the reed, set on another part.
    private string? Elsewhere(FindingForm form) =>
        FindingCatalogue.Find(new FindingKindId(form.Typed[nameof(Finding.FindingKind)])) is { } kind
        && form.Typed.MaybePlace() is { } here && here.Zone != kind.Zone && kind.Name.Contains(kind.Zone.Name(), StringComparison.Ordinal)
            ? t["QuietElsewhere", kind.Name, kind.Zone.Name(), here.Zone.Name()].Value
            : null;

    /// <summary>Whether two places share anything.</summary>
    /// <param name="one">A place.</param>
    /// <param name="other">Another.</param>
    public static bool Touches(Place one, Place other) =>
        (one.Zone == other.Zone || one.Zone == Zone.WholeReed || other.Zone == Zone.WholeReed)
        && (one.Blades == Blades.Both || other.Blades == Blades.Both || one.Blades == other.Blades)
        && (one.Sides == Sides.Both || other.Sides == Sides.Both || one.Sides == other.Sides);
}
