using System.Globalization;
using Microsoft.Extensions.Localization;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared;

namespace ReedClinic.Web.Features.Intake;

/// <summary>Where a page sends what is being typed, after a pause and when it is left.</summary>
public static class DraftEndpoint
{
    /// <summary>Registers what the intake needs.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddIntake(this WebApplicationBuilder builder) => builder.Services.AddScoped<StepKeeper>();

    /// <summary>Maps the two addresses of a screen's draft.</summary>
    /// <param name="app">The application.</param>
    public static void MapIntake(this WebApplication app)
    {
        var drafts = app.MapGroup("/intake/{draft:guid}/draft").RequireAuthorization();
        drafts.MapPost("/{key}", (Guid draft, string key, IFormCollection posted, HttpContext http, [AsParameters] Tools tools) =>
            Keep(draft, new IntakeStep(key), posted, http, tools));
        drafts.MapPost("/reed/{reed:int}/{key}", (Guid draft, int reed, string key, IFormCollection posted, HttpContext http, [AsParameters] Tools tools) =>
            Keep(draft, new IntakeStep(key, reed), posted, http, tools));
    }

    private static async Task<IResult> Keep(Guid draft, IntakeStep step, IFormCollection posted, HttpContext http, Tools tools)
    {
        var ct = http.RequestAborted;
        var actor = await tools.Actors.Of(http.User, ct).ConfigureAwait(false);
        if (actor is null)
        {
            return Results.Unauthorized();
        }

        var operation = new OperationId(Guid.CreateVersion7(tools.Time.GetUtcNow()));
        var kept = await tools.Keeper.Keep(actor, new DraftId(draft), step, posted, operation, ct).ConfigureAwait(false);
        if (kept.Draft?.Became is { } sent)
        {
            return Results.Json(new { note = tools.Text["AlreadySent", sent.ToString()].Value }, statusCode: StatusCodes.Status409Conflict);
        }

        if (kept.Elsewhere is not null)
        {
            return Results.Json(new { note = tools.Text["SavedElsewhere"].Value }, statusCode: StatusCodes.Status409Conflict);
        }

        if (!kept.Saved || StepFields.Of(kept.Draft!.Form, step) is not { } fields)
        {
            return kept.Draft is null ? Results.Json(new { note = tools.Text["GoneNote"].Value }, statusCode: StatusCodes.Status404NotFound) : Results.UnprocessableEntity(new { note = kept.Problems is [{ Field: "" } why, ..] ? why.Message : tools.Text["NotSaved"].Value });
        }

        var at = tools.Time.There(kept.Draft.SavedAt).ToString("HH:mm", CultureInfo.CurrentCulture);
        return Results.Ok(new { mark = StepFields.MarkOf(fields), note = tools.Text["SavedAt", at].Value, cautions = Said(fields, tools.Shared) });
    }

    // What was typed calls for a caution at once, and not only when the page is left.
    private static Dictionary<string, IEnumerable<string>> Said(IReadOnlyList<StepField> fields, IStringLocalizer<SharedText> words) => fields
        .Select(field => (field.Name, Found: Cautions.In(field.Value)))
        .Where(one => one.Found.Count > 0)
        .ToDictionary(one => one.Name, one => one.Found.Select(caution => SaidCautions.Say(words, caution, forStaff: false)));

    private sealed record Tools(ActorAccess Actors, StepKeeper Keeper, TimeProvider Time, IStringLocalizer<IntakeText> Text, IStringLocalizer<SharedText> Shared);
}
