using System.Globalization;
using Microsoft.Extensions.Localization;
using Microsoft.Extensions.Primitives;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Account;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>
/// The bench line as a post of its own: it goes through whether the page's circuit is up or not, and is answered only after
/// everything in it is saved. Sent again under the same id it changes nothing.
/// </summary>
public static class LineEndpoint
{
    /// <summary>The longest line that is taken, in characters.</summary>
    public const int Longest = BenchEntry.LongestSaid;

    /// <summary>The field by which the page says that something is asked about or was refused just now: words that take back mean that.</summary>
    private const string AskedField = "Asked";

    /// <summary>What it says where the line waits behind that: nothing is recorded then.</summary>
    private const string Held = "held";

    /// <summary>Maps <c>POST /bench/{reedId}/line</c>.</summary>
    /// <param name="app">The application.</param>
    public static void MapBenchLine(this WebApplication app) =>
        app.MapPost("/bench/{reedId:guid}/line", PostAsync).RequireAuthorization(AccountSetup.WorksHere);

    private static async Task<IResult> PostAsync(
        Guid reedId, IFormCollection form, HttpContext http, ActorAccess actors, BenchBook bench, TimeProvider time, IStringLocalizer<BenchText> t)
    {
        var ct = http.RequestAborted;
        var reed = new ReedId(reedId);
        if (await actors.Of(http.User, ct).ConfigureAwait(false) is not { } actor
            || await bench.FindAsync(actor, reed, ct).ConfigureAwait(false) is not { } view)
        {
            return Results.NotFound();
        }

        var json = http.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase);
        var operation = new OperationId(Guid.TryParse(form["Operation"], CultureInfo.InvariantCulture, out var given) ? given : default)
            .OrFresh(time.GetUtcNow());
        var line = new SentLine(form["Text"].ToString(), Agreement.Read(form[Agreement.Field]), Guid.TryParse(form["Seen"], CultureInfo.InvariantCulture, out var seen) ? new EntryId(seen) : null, form[ToldBefore.Field], Guid.TryParse(form["Meant"], CultureInfo.InvariantCulture, out var meant) ? new EntryId(meant) : null, form[AskedField]);
        var said = await SayAsync(actor, view, line, operation, bench, t, ct).ConfigureAwait(false);
        return said switch
        {
            Outcome<IReadOnlyList<BenchFact>>.Done(var facts) when json => Results.Json(Told(view, facts, t), statusCode: StatusCodes.Status201Created),
            Outcome<IReadOnlyList<BenchFact>>.Done(var facts) => SeeOther(http, $"/bench/{reedId}#entry-{facts[^1].Sequence}"),
            Outcome<IReadOnlyList<BenchFact>>.Refused(var problems) when json => Results.Json(problems, statusCode: StatusCodes.Status422UnprocessableEntity),
            Outcome<IReadOnlyList<BenchFact>>.Refused(var problems) => Results.Text(
                string.Join('\n', problems.Select(problem => problem.Message)), "text/plain", statusCode: StatusCodes.Status422UnprocessableEntity),
            _ => Results.NotFound(),
        };
    }

    private static async Task<Outcome<IReadOnlyList<BenchFact>>> SayAsync(
        Actor actor, BenchView view, SentLine said, OperationId operation, BenchBook bench, IStringLocalizer<BenchText> t, CancellationToken ct)
    {
        // What is sent again stands already: it gets its first answer, and isn’t judged against itself.
        if (view.Log.SaidBy(operation) is { Count: > 0 } first)
        {
            return new Outcome<IReadOnlyList<BenchFact>>.Done(first);
        }

        if (view.Reed.Presence == Presence.Missing)
        {
            return Refused("", t["NotInParcel"]);
        }

        if (said.Text.Length > Longest)
        {
            return Refused("Text", t["LineTooLong"]);
        }

        var problems = PlainText.CheckRequired("Text", said.Text, t["LineEmpty"]).ToList();
        if (problems.Count > 0)
        {
            return new Outcome<IReadOnlyList<BenchFact>>.Refused(problems);
        }

        if (said.Seen is { } seen)
        {
            return await CorrectAsync(actor, view, said, seen, operation, bench, t, ct).ConfigureAwait(false);
        }

        return OfWhatIsAsked(said, t) ?? await RecordAsync(actor, view, said, operation, bench, t, ct).ConfigureAwait(false);
    }

    // While something is asked about, what takes back means that and nothing that stands: the page leaves it out. Anything else may have to wait behind it.
    private static Outcome<IReadOnlyList<BenchFact>>.Refused? OfWhatIsAsked(SentLine said, IStringLocalizer<BenchText> t) =>
        said is not { Meant: null, Asked.Length: > 0 } ? null
        : LastTakenBack.Says(said.Text) ? Refused(AskedField, t["LineCleared"])
        : said.Asked == Held ? Refused("Behind", t["LineAnswerFirst"])
        : null;

    private static async Task<Outcome<IReadOnlyList<BenchFact>>> RecordAsync(
        Actor actor, BenchView view, SentLine said, OperationId operation, BenchBook bench, IStringLocalizer<BenchText> t, CancellationToken ct)
    {
        // What the card named is meant, also where somebody wrote meanwhile; unseen it is the newest.
        if (said.Meant is { } shown)
        {
            return LastTakenBack.Says(said.Text)
                ? await TakeBackAsync(actor, view, said.Text, shown, operation, bench, t, ct).ConfigureAwait(false)
                : await CorrectAsync(actor, view, said, shown, operation, bench, t, ct).ConfigureAwait(false);
        }

        if (PutRight.Hear(view, actor.Account, said.Text) is { Meant: { } end } right)
        {
            return right.TakesBack is null && right.BringsBack is null
                ? await CorrectAsync(actor, view, said, end, operation, bench, t, ct).ConfigureAwait(false)
                : await TakeBackAsync(actor, view, said.Text, end, operation, bench, t, ct).ConfigureAwait(false);
        }

        var heard = HeardLine.Of(said.Text, view.Log, view.Batch.CrowTarget.Tuning, view.Catalogue.Own);
        var line = said.Agreed is { } agreed ? heard.Agreed(view, agreed) : heard;
        var (told, heeded) = ToldBefore.Wanted(line.All, said.Shown, view, operation);
        // What was shown is set aside with it.
        if (line.All.Count + heeded.Count >= OperationId.MostParts)
        {
            return Refused("Text", t["LineTooMuch"]);
        }

        if (line.Wanted(view).FirstOrDefault(wanted => wanted is not null) is { } problem)
        {
            return new Outcome<IReadOnlyList<BenchFact>>.Refused(OneAnswer.Tell([problem], line.All, view, t));
        }

        return told.Count > 0
            ? new Outcome<IReadOnlyList<BenchFact>>.Refused(OneAnswer.Tell(told, line.All, view, t))
            : await bench.SayAsync(actor, view.Reed.Id, line.All, heeded, operation, ct).ConfigureAwait(false);
    }

    // One entry is said better at a time, in its own place.
    private static async Task<Outcome<IReadOnlyList<BenchFact>>> CorrectAsync(
        Actor actor, BenchView view, SentLine said, EntryId seen, OperationId operation, BenchBook bench, IStringLocalizer<BenchText> t, CancellationToken ct)
    {
        if (view.Log.FactOf(seen) is not { Now: not null } fact)
        {
            return Refused("", t["CorrectGone"]);
        }

        var heard = Instead.Hear(view, fact, said.Text);
        if (heard.All is not [var one])
        {
            return Refused("Text", t["CorrectOneThing", heard.All.Count]);
        }

        // What was done or found doesn’t turn into a remark because the line wasn’t understood.
        if (one is Note && fact.Now is not Note)
        {
            return Refused("Text", t["CorrectNoRemark"]);
        }

        var wanted = Instead.Wanted(view, fact, one);
        if (wanted is { } problem && said.Agreed is null)
        {
            return new Outcome<IReadOnlyList<BenchFact>>.Refused([problem]);
        }

        // What is told before work is recorded is told before it takes another’s place.
        var better = wanted is null ? one : HeardLine.Agreed(one, said.Agreed == true);
        var (told, heeded) = ToldBefore.WantedInPlaceOf(fact, better, said.Shown, view);
        return told.Count > 0
            ? new Outcome<IReadOnlyList<BenchFact>>.Refused(told)
            : OfOne(await bench.CorrectAsync(actor, view.Reed.Id, seen, better, heeded, operation, ct).ConfigureAwait(false), t);
    }

    // The newest of one’s own, if nobody changed it meanwhile, and what was said with it; what went out of turn comes back.
    private static async Task<Outcome<IReadOnlyList<BenchFact>>> TakeBackAsync(
        Actor actor, BenchView view, string text, EntryId mine, OperationId operation, BenchBook bench, IStringLocalizer<BenchText> t, CancellationToken ct)
    {
        if (view.Log.FactOf(mine) is { Withdrawn: { } was } away && away.Tail == mine)
        {
            return OfOne(await bench.CorrectAsync(actor, view.Reed.Id, mine, was, operation, ct).ConfigureAwait(false), t);
        }

        var together = SeveralTakenBack.Of(text, view.Log, actor.Account);
        return together is [var newest, _, ..] && newest.Tail == mine
            ? await bench.UndoTogetherAsync(actor, view.Reed.Id, [.. together.Select(fact => fact.Tail)], operation, ct).ConfigureAwait(false) is var outcome and not Outcome<IReadOnlyList<BenchFact>>.Conflict ? outcome : Refused("", t["CorrectClash"])
            : OfOne(await bench.UndoAsync(actor, view.Reed.Id, mine, operation, ct).ConfigureAwait(false), t);
    }

    private static Outcome<IReadOnlyList<BenchFact>> OfOne(Outcome<BenchFact> outcome, IStringLocalizer<BenchText> t) => outcome switch
    {
        Outcome<BenchFact>.Done(var fact) => new Outcome<IReadOnlyList<BenchFact>>.Done([fact]),
        Outcome<BenchFact>.Conflict => Refused("", t["CorrectClash"]),
        Outcome<BenchFact>.Refused(var problems) => new Outcome<IReadOnlyList<BenchFact>>.Refused(problems),
        _ => new Outcome<IReadOnlyList<BenchFact>>.NotFound(),
    };

    private static SaidLine Told(BenchView view, IReadOnlyList<BenchFact> facts, IStringLocalizer<BenchText> t)
    {
        var words = new EntryWords(t, view.Log, view.Batch.CrowTarget.Tuning, view.Catalogue);
        return new SaidLine(
            [.. facts.Where(fact => fact.Now is not null).Select(fact => words.InShort(fact.Now!))],
            facts[^1].Sequence,
            facts is [{ State: FactState.Corrected }],
            facts switch
            {
                [{ Withdrawn: not null }, ..] when facts.All(fact => fact.Withdrawn is not null) => t["TakenBackNow", string.Join(" · ", facts.Select(fact => words.InShort(fact.Withdrawn!)))].Value,
                { Count: > 1 } when facts.Any(fact => fact.Withdrawn is not null) => t["TakenBackNow", string.Join(" · ", facts.Select(fact => words.InShort(fact.Withdrawn ?? fact.Now!)))].Value,
                [{ Now: { } again, Chain: [.., Undo, not Undo] }] => t["BroughtBack", words.InShort(again)].Value,
                _ when facts.Any(fact => VerdictNote.Is(fact.Now)) => $"{t["LineSaved", string.Join(" · ", facts.Where(fact => fact.Now is not null).Select(fact => words.InShort(fact.Now!)))]} {VerdictNote.Say(view, t)}",
                _ => null,
            });
    }

    private static Outcome<IReadOnlyList<BenchFact>>.Refused Refused(string field, string message) => new([new Problem(field, message)]);

    private static IResult SeeOther(HttpContext http, string where)
    {
        http.Response.Headers.Location = where;
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }

    private sealed record SentLine(string Text, bool? Agreed, EntryId? Seen, StringValues Shown, EntryId? Meant, string? Asked);

    private sealed record SaidLine(IReadOnlyList<string> Said, int Sequence, bool Corrected, string? Whole);
}
