using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
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

        if (form is VerdictForm { Seen: null } && EntryPost.Read(view, form) is Outcome<BenchEntry>.Done(var verdict))
        {
            return Beforehand.Of(view.Log, view.Reed, view.Batch, verdict) is { } before ? $"{before.Line} {before.Reason}" : null;
        }

        if (form is not AdjustmentForm work)
        {
            return null;
        }

        // The same rules as beside the bench line, for what is typed here: what was agreed, then what is at risk, then the rest.
        var advice = BenchAdvice.For(view.Log, view.Reed, view.Batch, PlannedIn(view, work)) is [var due, ..] ? due : null;
        var advised = advice is null ? null : $"{advice.Line} {advice.Reason}";
        var risk = view.Log.OpenRisks.FirstOrDefault() is { } open ? t["QuietRisk", open.Fact.Now.Words].Value : null;
        var first = advice is { Kind: AdviceKind.Permission or AdviceKind.LeaveAlone } ? advised : risk ?? advised;
        return first is null ? work.Chosen?.Caution : $"{first} {work.Chosen?.Caution}".TrimEnd();
    }

    // What is being corrected isn’t done a second time.
    private static PlannedWork? PlannedIn(BenchView view, AdjustmentForm work) =>
        work is { Planned: { } plan, Seen: { } seen } && view.Log.FactOf(seen) is { } fact ? plan with { Recorded = fact.Root } : work.Planned;

    // A finding whose own name says a part of the reed, set on another part.
    private string? Elsewhere(FindingForm form) =>
        FindingCatalogue.Find(new FindingKindId(form.Typed[nameof(Finding.FindingKind)])) is { } kind
        && form.Typed.MaybePlace() is { } here && here.Zone != kind.Zone && kind.Name.Contains(kind.Zone.Name(), StringComparison.Ordinal)
            ? t["QuietElsewhere", kind.Name, kind.Zone.Name(), here.Zone.Name()].Value
            : null;
}
