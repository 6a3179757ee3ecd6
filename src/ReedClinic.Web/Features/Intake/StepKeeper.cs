using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Intake;

/// <summary>How keeping a screen ended.</summary>
/// <param name="Draft">The draft as it stands now, with what was typed on this screen; null when there is no such draft or screen.</param>
/// <param name="Problems">What can't be kept as it is.</param>
/// <param name="Elsewhere">What another tab wrote on the same screen meanwhile; nothing was saved then.</param>
public sealed record StepKept(DraftView? Draft, IReadOnlyList<Problem> Problems, IntakeForm? Elsewhere = null)
{
    /// <summary>True when what was typed is in the database.</summary>
    public bool Saved => Draft is { Became: null } && Problems.Count == 0 && Elsewhere is null;
}

/// <summary>
/// Keeps what was typed on one screen, whether by a pause in typing or by going on. Only that screen's fields are written,
/// so two tabs on different screens don't disturb each other; on the same screen the second is told.
/// </summary>
/// <param name="intakes">The drafts.</param>
public sealed class StepKeeper(IntakeBook intakes)
{
    /// <summary>The name of the hidden field with the mark of what the screen showed.</summary>
    public const string Mark = "Mark";

    /// <summary>The name of the buttons: present when somebody goes on or stops, absent while they type.</summary>
    public const string Go = "Go";

    private const int Tries = 5;

    /// <summary>Keeps one screen.</summary>
    /// <param name="actor">Who writes.</param>
    /// <param name="id">The draft.</param>
    /// <param name="step">The screen.</param>
    /// <param name="posted">What the browser sent.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<StepKept> Keep(Actor actor, DraftId id, IntakeStep step, IFormCollection posted, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(posted);
        for (var attempt = 1; ; attempt++)
        {
            var draft = await intakes.ReadAsync(actor, id, ct).ConfigureAwait(false);
            if (draft is null || draft.Became is not null || StepFields.Of(draft.Form, step) is not { } fields)
            {
                return new StepKept(draft?.Became is null ? null : draft, []);
            }

            var before = StepFields.MarkOf(fields);
            var elsewhere = draft.Form;
            draft = draft with { Form = Copy(draft.Form) };
            fields = Fill(draft.Form, step, posted);
            if (before != posted[Mark].ToString() && before != StepFields.MarkOf(fields))
            {
                return new StepKept(draft, [], elsewhere);
            }

            draft.Form.StoppedAt = step.Path;
            if (step.Key == IntakePath.HowMany && posted.ContainsKey(Go))
            {
                ReedCount.Apply(draft.Form, posted[ReedCount.LeaveOut] == "true");
            }

            switch (await intakes.SaveAsync(actor, id, draft.Form, draft.Version, operation, ct).ConfigureAwait(false))
            {
                case Outcome<DraftView>.Done(var saved):
                    return new StepKept(saved, []);
                case Outcome<DraftView>.Refused(var problems):
                    return new StepKept(draft, problems);
                case Outcome<DraftView>.Conflict when attempt < Tries:
                    continue;
                default:
                    return new StepKept(null, []);
            }
        }
    }

    /// <summary>Remembers which page is open, so that somebody who leaves comes back to it. It changes nothing else.</summary>
    /// <param name="actor">Whose intake it is.</param>
    /// <param name="draft">The draft as it was read.</param>
    /// <param name="step">The page.</param>
    /// <param name="operation">This visit.</param>
    /// <param name="ct">Stops it.</param>
    public async Task Visit(Actor actor, DraftView draft, IntakeStep step, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(step);
        if (draft.Form.StoppedAt != step.Path)
        {
            draft.Form.StoppedAt = step.Path;

            // A tab that saved meanwhile was on a page as well: then that one is remembered.
            await intakes.SaveAsync(actor, draft.Id, draft.Form, draft.Version, operation, ct).ConfigureAwait(false);
        }
    }

    private static IReadOnlyList<StepField> Fill(IntakeForm form, IntakeStep step, IFormCollection posted)
    {
        var fields = StepFields.Of(form, step)!;
        foreach (var field in fields)
        {
            field.Value = Typed(posted, field.Name) ?? field.Value;
        }

        return fields;
    }

    private static string? Typed(IFormCollection posted, string name)
    {
        var typed = posted.TryGetValue(name, out var values) ? StepFields.Plain(values.ToString()) : null;
        if (name != nameof(IntakeForm.TunesTo))
        {
            return typed;
        }

        // A number that was typed counts even where its choice wasn't ticked, unless one of the offered ones was.
        var other = StepFields.Plain(posted[TuningChoices.AnotherField].ToString());
        return typed == TuningChoices.Another || (string.IsNullOrWhiteSpace(typed) && !string.IsNullOrWhiteSpace(other)) ? other : typed;
    }

    private static IntakeForm Copy(IntakeForm form) =>
        System.Text.Json.JsonSerializer.Deserialize<IntakeForm>(System.Text.Json.JsonSerializer.Serialize(form))!;
}
