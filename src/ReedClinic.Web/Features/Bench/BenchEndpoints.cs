using System.Globalization;
using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Account;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Features.Bench.Line;

namespace ReedClinic.Web.Features.Bench;

/// <summary>
/// The bench's form as a plain post, for a page whose circuit isn't up. It answers only after the entry is saved: 303 to the
/// reed (or 201 with the entry's id for a caller that asks for JSON). What can't be saved is kept as a draft.
/// </summary>
public static class BenchEndpoints
{
    /// <summary>Maps <c>POST /bench/{reedId}/entries</c>, and <c>POST /bench/{reedId}/draft</c>.</summary>
    /// <param name="app">The application.</param>
    public static void MapBench(this WebApplication app)
    {
        app.MapPost("/bench/{reedId:guid}/entries", PostAsync).RequireAuthorization(AccountSetup.WorksHere);
        app.MapPost("/bench/{reedId:guid}/draft", KeepAsync).RequireAuthorization(AccountSetup.WorksHere);
    }

    // What was typed while no circuit heard it: it stands in the fields again when the page comes anew.
    private static async Task<IResult> KeepAsync(Guid reedId, IFormCollection form, HttpContext http, ActorAccess actors, BenchDraftBook drafts, TimeProvider time)
    {
        var ct = http.RequestAborted;
        return await actors.Of(http.User, ct).ConfigureAwait(false) is not { } actor ? Results.NotFound()
            : EntryForm.Of(form, new OperationId(Guid.CreateVersion7(time.GetUtcNow()))) is not { } entry ? Results.BadRequest()
            : await drafts.KeepAsync(actor, new ReedId(reedId), entry.ToDraft(), ct).ConfigureAwait(false) ? Results.NoContent()
            : Results.NotFound();
    }

    private static async Task<IResult> PostAsync(
        Guid reedId, IFormCollection form, HttpContext http, ActorAccess actors, BenchBook bench, BenchDraftBook drafts, TimeProvider time, IStringLocalizer<BenchText> t)
    {
        var ct = http.RequestAborted;
        var reed = new ReedId(reedId);
        if (await actors.Of(http.User, ct).ConfigureAwait(false) is not { } actor
            || await bench.FindAsync(actor, reed, ct).ConfigureAwait(false) is not { } view)
        {
            return Results.NotFound();
        }

        if (EntryForm.Of(form, new OperationId(Guid.CreateVersion7(time.GetUtcNow()))) is not { } entry)
        {
            return Results.BadRequest();
        }

        var json = AsksForJson(http);
        if (view.Reed.Presence == Presence.Missing && Standing(view, entry.Operation) is null)
        {
            return json ? Refusal(new Outcome<BenchFact>.Refused([new Problem("", t["NotInParcel"])])) : SeeOther(http, $"/bench/{reedId}");
        }

        var outcome = Standing(view, entry.Operation) ?? await SaveAsync(actor, view, entry, form, bench, ct).ConfigureAwait(false);
        if (json)
        {
            // A press that asks for JSON was no form: what stands half typed in the fields stays.
            return Answer(outcome, entry.Operation);
        }

        if (outcome is Outcome<BenchFact>.Done(var fact))
        {
            await drafts.DropAsync(actor, reed, ct).ConfigureAwait(false);
            return SeeOther(http, string.Create(CultureInfo.InvariantCulture, $"/bench/{reedId}#entry-{fact.Sequence}"));
        }

        // What can't be shown again beside its field the browser still has, one step back.
        return entry.Kind == EntryKind.Undo || await drafts.KeepAsync(actor, reed, entry.ToDraft(), ct).ConfigureAwait(false)
            ? SeeOther(http, $"/bench/{reedId}?check=true#{EntryAnswer.Id}")
            : Results.Text(t["TooLongToShow"].Value, "text/plain", statusCode: StatusCodes.Status413PayloadTooLarge);
    }

    // What is sent again stands already: it gets its first answer, and isn’t judged against itself.
    private static Outcome<BenchFact>.Done? Standing(BenchView view, OperationId operation) =>
        view.Log.SaidBy(operation) is [var first, ..] ? new Outcome<BenchFact>.Done(first) : null;

    // What is said anew is told of before, where that is due and the page can show it.
    private static async Task<Outcome<BenchFact>> SaveAsync(Actor actor, BenchView view, EntryForm entry, IFormCollection form, BenchBook bench, CancellationToken ct)
    {
        var (told, heeded) = entry.Seen is null && EntryPost.Read(view, entry) is Outcome<BenchEntry>.Done(var said)
            ? ToldBefore.Wanted([said], form[ToldBefore.Field], view, entry.Operation)
            : ([], []);
        return told.Count > 0
            ? new Outcome<BenchFact>.Refused(told)
            : await new EntryPost(bench).SaveAsync(actor, view, entry, heeded, ct).ConfigureAwait(false);
    }

    private static IResult Answer(Outcome<BenchFact> outcome, OperationId operation) =>
        outcome is Outcome<BenchFact>.Done(var fact) ? Created(fact.Chain.Single(link => link.OperationId == operation)) : Refusal(outcome);

    private static bool AsksForJson(HttpContext http) =>
        http.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase);

    private static IResult Created(BenchEntry saved) =>
        Results.Json(new SavedEntry(saved.Id.Value, saved.Sequence), statusCode: StatusCodes.Status201Created);

    private static IResult Refusal(Outcome<BenchFact> outcome) => outcome switch
    {
        Outcome<BenchFact>.Refused(var problems) => Results.Json(problems, statusCode: StatusCodes.Status422UnprocessableEntity),
        Outcome<BenchFact>.Conflict(var theirs) => Results.Json(
            new SavedEntry(theirs.Tail.Value, theirs.Chain[^1].Sequence), statusCode: StatusCodes.Status409Conflict),
        _ => Results.NotFound(),
    };

    private static IResult SeeOther(HttpContext http, string where)
    {
        http.Response.Headers.Location = where;
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }

    private sealed record SavedEntry(Guid EntryId, int Sequence);
}
