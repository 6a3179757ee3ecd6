using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared;

namespace ReedClinic.Web.Features.Privacy;

/// <summary>Where the copy of what is kept is taken: a form posts here and gets a file.</summary>
public static class CopyPost
{
    /// <summary>The address.</summary>
    public const string Path = "/privacy/export/zip";

    /// <summary>Adds what carries a typed word over the page that asks who somebody is.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddPrivacy(this WebApplicationBuilder builder) => builder.Services.AddSingleton<TypedWord>();

    /// <summary>Maps it.</summary>
    /// <param name="app">The application.</param>
    public static void MapPrivacy(this WebApplication app) => app.MapPost(Path, TakeAsync).RequireAuthorization();

    private static async Task<IResult> TakeAsync(
        HttpContext http, [FromForm] string? ward, [FromForm] string? operation, ActorAccess actors, PrivacyBook privacy, TimeProvider time)
    {
        var ct = http.RequestAborted;
        if (await actors.Of(http.User, ct).ConfigureAwait(false) is not { } actor)
        {
            return Results.Unauthorized();
        }

        StudentId? whose = Guid.TryParse(ward, out var id) ? new StudentId(id) : null;
        var once = new OperationId(Guid.TryParse(operation, out var given) ? given : default).OrFresh(time.GetUtcNow());
        switch (await privacy.ExportAsync(actor, whose, once, ct).ConfigureAwait(false))
        {
            case Outcome<PersonCopy>.Done(var copy):
                http.Response.Headers.CacheControl = "no-store";

                // A zip ends each of its files with a few bytes that it writes without waiting; so nothing of it is ever all in memory.
                http.Features.GetRequiredFeature<IHttpBodyControlFeature>().AllowSynchronousIO = true;
                var day = time.There(time.GetUtcNow()).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
                return Results.Stream(into => CopyFile.WriteAsync(into, copy, time.GetUtcNow(), time.LocalTimeZone, ct), "application/zip", $"reedclinic-{day}.zip");
            case Outcome<PersonCopy>.Refused(var problems):
                var why = problems.Any(problem => problem.Field == FreshSignIn.Field) ? "fresh" : "often";
                return Results.LocalRedirect($"/privacy/export?refused={why}{(whose is null ? "" : $"&ward={whose.Value.Value}")}");
            default:
                return Results.NotFound();
        }
    }
}
