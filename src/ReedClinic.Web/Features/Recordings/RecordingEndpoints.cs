using System.Globalization;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Features.Recordings;

/// <summary>
/// Where sounds and photographs come in, piece by piece, and go out again. Nothing of them travels over a circuit. OWASP ASVS
/// 5.0: 3.2.1, 3.5.1, 5.2.1, 5.4.1, 5.4.2.
/// </summary>
public static class RecordingEndpoints
{
    /// <summary>Where everything of this stands; a new one is begun here.</summary>
    public const string Path = "/recordings";

    // A piece, and room for what a browser puts around it.
    private const long PieceBytes = RecordingLimits.Chunk + 65_536;

    /// <summary>Maps the addresses.</summary>
    /// <param name="app">The application.</param>
    public static void MapRecordings(this WebApplication app)
    {
        // What only a script asks gets a bare answer: a page that says what went wrong is asked for by GET and POST alone.
        var recordings = app.MapGroup(Path).RequireAuthorization();
        recordings.MapPost("", StartAsync);
        recordings.MapGet("/{id:guid}/received", ReceivedAsync);
        recordings.MapPut("/{id:guid}/at/{offset:int}", AppendAsync).WithMetadata(new RequestSizeLimitAttribute(PieceBytes), new SkipStatusCodePagesAttribute()).AddEndpointFilter(CheckTokenAsync);
        recordings.MapPost("/{id:guid}/done", FinishAsync);
        recordings.MapPost("/{id:guid}/remove", RemoveFromPageAsync);
        recordings.MapPost("/{id:guid}/letter", PutInLetterAsync);
        recordings.MapDelete("/{id:guid}", RemoveAsync).WithMetadata(new SkipStatusCodePagesAttribute()).AddEndpointFilter(CheckTokenAsync);
        recordings.MapGet("/{id:guid}", OpenAsync).WithMetadata(new SandboxedFile());
    }

    private static async Task<IResult> StartAsync(IFormCollection posted, HttpContext http, [AsParameters] Tools tools)
    {
        if (await tools.ActorAsync(http).ConfigureAwait(false) is not { } actor)
        {
            return Results.Unauthorized();
        }

        if (!Guid.TryParse(posted["Reed"], out var reed) || !Enum.TryParse<RecordingKind>(posted["Kind"], out var kind) || !Enum.IsDefined(kind)
            || !long.TryParse(posted["Bytes"], NumberStyles.None, CultureInfo.InvariantCulture, out var bytes))
        {
            return Results.NotFound();
        }

        // A test that is recorded at the bench: whatever kind of sound it is sent as, it is kept to be measured.
        kind = posted["Retest"] == "true" && kind.IsPlayed() && actor.WorksHere ? RecordingKind.TestSound : kind;
        var wish = new RecordingWish(new ReedId(reed), kind, bytes)
        {
            Words = posted["Words"],
            PassId = Guid.TryParse(posted["Pass"], out var pass) ? new PassId(pass) : null,
            AtSequence = int.TryParse(posted["AtSequence"], NumberStyles.None, CultureInfo.InvariantCulture, out var sequence) ? sequence : null,
        };
        var operation = new OperationId(Guid.TryParse(posted["Operation"], out var given) ? given : default).OrFresh(tools.Time.GetUtcNow());
        return await tools.Uploads.StartAsync(actor, wish, operation, http.RequestAborted).ConfigureAwait(false) switch
        {
            Outcome<UploadView>.Done(var going) => Results.Json(new { id = going.Id.Value, received = going.Received, bytes = going.Bytes, piece = RecordingLimits.Chunk }),
            Outcome<UploadView>.Refused(var problems) => Refused(problems),
            _ => Results.NotFound(),
        };
    }

    private static async Task<IResult> ReceivedAsync(Guid id, HttpContext http, [AsParameters] Tools tools) =>
        await tools.ActorAsync(http).ConfigureAwait(false) is { } actor
        && await tools.Uploads.FindAsync(actor, new RecordingId(id), http.RequestAborted).ConfigureAwait(false) is { } going
            ? Results.Json(new { received = going.Received, bytes = going.Bytes })
            : Results.NotFound();

    private static async Task<IResult> AppendAsync(Guid id, int offset, HttpContext http, [AsParameters] Tools tools)
    {
        if (await tools.ActorAsync(http).ConfigureAwait(false) is not { } actor)
        {
            return Results.Unauthorized();
        }

        var answer = await tools.Uploads.AppendAsync(actor, new RecordingId(id), offset, http.Request.Body, RecordingLimits.Chunk, http.RequestAborted).ConfigureAwait(false);
        return answer.End switch
        {
            ChunkEnd.Taken => Results.Json(new { received = answer.Received }),
            ChunkEnd.Elsewhere => Results.Json(new { received = answer.Received }, statusCode: StatusCodes.Status409Conflict),
            ChunkEnd.TooLarge => Results.Json(new { received = answer.Received, problem = RecordingRefusal.TooLarge.Words(default) }, statusCode: StatusCodes.Status413PayloadTooLarge),
            ChunkEnd.DiskFull => Results.Json(new { received = answer.Received, problem = RecordingRefusal.DiskFull.Words(default) }, statusCode: StatusCodes.Status507InsufficientStorage),
            _ => Results.NotFound(),
        };
    }

    private static async Task<IResult> FinishAsync(Guid id, IFormCollection posted, HttpContext http, [AsParameters] Tools tools)
    {
        if (await tools.ActorAsync(http).ConfigureAwait(false) is not { } actor)
        {
            return Results.Unauthorized();
        }

        var operation = new OperationId(Guid.TryParse(posted["Operation"], out var given) ? given : default).OrFresh(tools.Time.GetUtcNow());
        return await tools.Uploads.FinishAsync(actor, new RecordingId(id), posted["Sha256"].ToString(), operation, http.RequestAborted).ConfigureAwait(false) switch
        {
            Outcome<RecordingView>.Done(var kept) => Results.Json(new { id = kept.Id.Value, type = kept.Type.ContentType(), bytes = kept.Bytes, milliseconds = kept.Milliseconds }),
            Outcome<RecordingView>.Refused(var problems) => Refused(problems),
            _ => Results.NotFound(),
        };
    }

    // The kind of the answer is ours, by what the content was found to be; a page of it can do nothing: see GuardHeaders.
    private static async Task<IResult> OpenAsync(Guid id, HttpContext http, [AsParameters] Tools tools)
    {
        if (await tools.ActorAsync(http).ConfigureAwait(false) is not { } actor
            || await tools.Recordings.OpenAsync(actor, new RecordingId(id), http.RequestAborted).ConfigureAwait(false) is not { } file)
        {
            return Results.NotFound();
        }

        http.Response.Headers.ContentDisposition = new ContentDispositionHeaderValue("inline") { FileName = file.View.FileName }.ToString();
        return Results.File(file.Path, file.View.Type.ContentType(), enableRangeProcessing: true, entityTag: new EntityTagHeaderValue($"\"{file.Sha256}\""));
    }

    private static async Task<IResult> RemoveAsync(Guid id, [FromQuery] Guid? operation, HttpContext http, [AsParameters] Tools tools) =>
        await tools.RemoveAsync(id, operation, http).ConfigureAwait(false) switch
        {
            Outcome<RecordingId>.Done => Results.NoContent(),
            Outcome<RecordingId>.Refused(var problems) => Refused(problems),
            _ => Results.NotFound(),
        };

    private static async Task<IResult> RemoveFromPageAsync(Guid id, IFormCollection posted, HttpContext http, [AsParameters] Tools tools) =>
        await tools.RemoveAsync(id, Guid.TryParse(posted["Operation"], out var given) ? given : null, http).ConfigureAwait(false) switch
        {
            Outcome<RecordingId>.Done => Results.LocalRedirect(LocalPath.OrHome(posted["Back"])),
            Outcome<RecordingId>.Refused => Results.LocalRedirect(LocalPath.OrHome(posted["Left"].ToString() is { Length: > 0 } left ? left : posted["Back"])),
            _ => Results.NotFound(),
        };

    // From the log's own form, or from its script, which only wants to know.
    private static async Task<IResult> PutInLetterAsync(Guid id, IFormCollection posted, HttpContext http, [AsParameters] Tools tools)
    {
        if (await tools.ActorAsync(http).ConfigureAwait(false) is not { } actor)
        {
            return Results.Unauthorized();
        }

        var operation = new OperationId(Guid.TryParse(posted["Operation"], out var given) ? given : default).OrFresh(tools.Time.GetUtcNow());
        var put = await tools.Recordings.PutInLetterAsync(actor, new RecordingId(id), posted["In"] == "true", operation, http.RequestAborted).ConfigureAwait(false);
        var isScript = http.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase);
        return put switch
        {
            Outcome<RecordingView>.NotFound => Results.NotFound(),
            Outcome<RecordingView>.Refused(var problems) when isScript => Refused(problems),
            _ when isScript => Results.NoContent(),
            _ => Results.LocalRedirect(LocalPath.OrHome(posted["Back"])),
        };
    }

    private static IResult Refused(IReadOnlyList<Problem> problems) => Results.UnprocessableEntity(new { problem = problems[0].Message, field = problems[0].Field });

    // A form's token is checked where a form is bound; what isn't a form brings it in a header.
    private static async ValueTask<object?> CheckTokenAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next) =>
        await context.HttpContext.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context.HttpContext).ConfigureAwait(false)
            ? await next(context).ConfigureAwait(false)
            : Results.BadRequest();

    private sealed record Tools(ActorAccess Actors, UploadBook Uploads, RecordingsBook Recordings, TimeProvider Time)
    {
        public Task<Actor?> ActorAsync(HttpContext http) => Actors.Of(http.User, http.RequestAborted);

        public async Task<Outcome<RecordingId>> RemoveAsync(Guid id, Guid? operation, HttpContext http) =>
            await ActorAsync(http).ConfigureAwait(false) is { } actor
                ? await Recordings.RemoveAsync(actor, new RecordingId(id), new OperationId(operation ?? default).OrFresh(Time.GetUtcNow()), http.RequestAborted).ConfigureAwait(false)
                : new Outcome<RecordingId>.NotFound();
    }
}
