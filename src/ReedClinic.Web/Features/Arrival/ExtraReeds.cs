using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Arrival;

/// <summary>What became of an unannounced reed.</summary>
/// <param name="Prefix">What stands before the names of the fields in a problem.</param>
/// <param name="Outcome">What the book answered.</param>
/// <param name="Removed">The number of the one that was to be removed; null where one was to be added.</param>
internal sealed record ExtraChange(string Prefix, Outcome<BatchView> Outcome, int? Removed = null);

/// <summary>Adds and removes unannounced reeds as an arrival form asks for it.</summary>
internal static class ExtraReeds
{
    /// <summary>Does what the form asks for.</summary>
    /// <returns>What became of it; null where nothing was asked for.</returns>
    public static async Task<ExtraChange?> ChangeAsync(ArrivalBook arrivals, Actor actor, ArrivalForm form, Batch batch) =>
        form.ToRemove(batch) is { } reed
            ? new(FormattableString.Invariant($"Form.{ArrivalForm.Without}{reed.Number}"), await arrivals.RemoveExtraAsync(actor, batch.Id, reed.Id, new OperationId(form.Removal ?? default), CancellationToken.None).ConfigureAwait(false), reed.Number)
        : form.ExtraToAdd is { } extra
            ? new("Form.Extra", await arrivals.AddExtraAsync(actor, batch.Id, extra.HowToRecognise, new OperationId(extra.Operation), CancellationToken.None).ConfigureAwait(false))
        : null;
}
