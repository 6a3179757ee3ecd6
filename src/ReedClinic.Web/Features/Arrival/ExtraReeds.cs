using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Arrival;

/// <summary>What became of an unannounced reed.</summary>
/// <param name="Prefix">What stands before the names of the fields in a problem.</param>
/// <param name="Operation">What changed it.</param>
/// <param name="Outcome">What the book answered.</param>
/// <param name="Removed">The number of the one that was to be removed; null where one was to be added.</param>
internal sealed record ExtraChange(string Prefix, OperationId Operation, Outcome<BatchView> Outcome, int? Removed = null);

/// <summary>Adds and removes unannounced reeds as an arrival form asks for it.</summary>
internal static class ExtraReeds
{
    /// <summary>Does what the form asks for.</summary>
    /// <returns>What became of it; null where nothing was asked for.</returns>
    public static async Task<ExtraChange?> ChangeAsync(ArrivalBook arrivals, Actor actor, ArrivalForm form, Batch batch)
    {
        if (form.ToRemove is { } gone)
        {
            // One that isn't there any more was removed by this very form, sent twice, or by somebody else: the book knows.
            var removal = new OperationId(form.Removal ?? default);
            var outcome = await arrivals.RemoveExtraAsync(actor, batch.Id, gone.Reed, removal, CancellationToken.None).ConfigureAwait(false);
            form.Removal = null;
            return new($"Form.{form.Step}", removal, Beside(outcome, batch.Reeds.Any(reed => reed.Id == gone.Reed)), gone.Number);
        }

        if (form.ExtraToAdd is { } extra)
        {
            var addition = new OperationId(extra.Operation);
            return new("Form.Extra", addition, await arrivals.AddExtraAsync(actor, batch.Id, extra.HowToRecognise, addition, CancellationToken.None).ConfigureAwait(false));
        }

        return null;
    }

    // What is said of a reed that isn't on the page stands above it.
    private static Outcome<BatchView> Beside(Outcome<BatchView> outcome, bool isThere) => outcome is Outcome<BatchView>.Refused(var problems) && !isThere
        ? new Outcome<BatchView>.Refused([.. problems.Select(problem => problem with { Field = "" })])
        : outcome;
}
