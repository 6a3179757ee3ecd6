using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;

namespace ReedClinic.Web.Features.Letters;

/// <summary>Where a correction of a letter that was sent is begun, and dropped again.</summary>
public static class LetterCorrectionEndpoints
{
    /// <summary>Maps <c>POST /batches/{Code}/letter/correct</c> and <c>POST /batches/{Code}/letter/drop</c>.</summary>
    /// <param name="app">The application.</param>
    public static void MapLetterCorrections(this WebApplication app)
    {
        app.MapPost("/batches/{Code}/letter/correct", BeginAsync).RequireAuthorization();
        app.MapPost("/batches/{Code}/letter/drop", DropAsync).RequireAuthorization();
    }

    private static Task<IResult> BeginAsync(string code, IFormCollection posted, HttpContext http, ActorAccess actors, LetterCorrectionBook book) =>
        TakeAsync(code, posted, http, actors, book.BeginAsync, "correcting");

    private static Task<IResult> DropAsync(string code, IFormCollection posted, HttpContext http, ActorAccess actors, LetterCorrectionBook book) =>
        TakeAsync(code, posted, http, actors, book.DropAsync, "dropped");

    private static async Task<IResult> TakeAsync(
        string code, IFormCollection posted, HttpContext http, ActorAccess actors,
        Func<Actor, BatchCode, Guid, OperationId, CancellationToken, Task<Outcome<LetterView>>> take, string done)
    {
        if (await actors.Of(http.User, http.RequestAborted).ConfigureAwait(false) is not { } actor || BatchCode.Read(code) is not Outcome<BatchCode>.Done(var known))
        {
            return Results.NotFound();
        }

        var version = Guid.TryParse(posted["Version"], out var looked) ? looked : Guid.Empty;
        var operation = new OperationId(Guid.TryParse(posted["Operation"], out var given) ? given : default);
        return await take(actor, known, version, operation, http.RequestAborted).ConfigureAwait(false) switch
        {
            Outcome<LetterView>.NotFound => Results.NotFound(),
            Outcome<LetterView>.Done => Results.LocalRedirect($"/batches/{known}/letter?done={done}"),
            Outcome<LetterView>.Refused => Results.LocalRedirect($"/batches/{known}/letter?done=refused"),
            _ => Results.LocalRedirect($"/batches/{known}/letter?done=stood"),
        };
    }
}
