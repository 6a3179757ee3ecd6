using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Catalogues;

/// <summary>
/// The catalogue: what comes with the program, which nobody changes, and what the owner adds, tells better, retires and brings back.
/// Teachers read it; only owners write.
/// </summary>
public sealed class CatalogueBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private const string AddVerb = "add-catalogue-entry";
    private const string RenameVerb = "rename-catalogue-entry";
    private const string RetireVerb = "retire-catalogue-entry";
    private const string BackVerb = "bring-catalogue-entry-back";

    private delegate IReadOnlyList<Problem> Change(StudioEntry entry, IReadOnlyList<StudioEntry> here);

    /// <summary>The catalogue with what is the studio’s own; null for whoever doesn’t work here.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<CatalogueView?> ReadAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var entries = await StudioCatalogueReader.EntriesAsync(db, ct).ConfigureAwait(false);
        var used = await UsedAsync(db, ct).ConfigureAwait(false);
        return new CatalogueView(
            await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false),
            [
                .. entries.OrderBy(entry => entry.RetiredAt is not null).ThenBy(entry => entry.Name, StringComparer.OrdinalIgnoreCase)
                    .Select(entry => StudioEntryView.Of(entry, used.GetValueOrDefault(entry.Key))),
            ]);
    }

    /// <summary>Adds an entry. It will have the id of this operation, so that repeating it finds the same one.</summary>
    /// <param name="actor">Who adds it.</param>
    /// <param name="words">What was typed.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<StudioEntryView>> AddAsync(Actor actor, StudioEntryWords words, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(words);
        if (!actor.IsOwner)
        {
            return new Outcome<StudioEntryView>.NotFound();
        }

        operation = operation.OrFresh(time.GetUtcNow());
        return await databases.PatientlyAsync((attempt, stop) => TryAddAsync(attempt, actor, words, operation, stop), ct).ConfigureAwait(false);
    }

    private async Task<Outcome<StudioEntryView>> TryAddAsync(
        Attempt attempt, Actor actor, StudioEntryWords words, OperationId operation, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var alone = await AloneAsync(attempt, db, ct).ConfigureAwait(false);
        await using var __ = alone.ConfigureAwait(false);
        var id = new StudioEntryId(operation.Value);
        if (await db.WasDoneAsync(operation, AddVerb, id.Value, ct).ConfigureAwait(false))
        {
            return await AnswerAsync(db, actor, id, ct).ConfigureAwait(false);
        }

        var here = await StudioCatalogueReader.EntriesAsync(db, ct).ConfigureAwait(false);
        switch (here.Count < StudioEntry.Most ? StudioEntry.Of(id, words, here, actor.Account, now) : TooMany)
        {
            case Outcome<StudioEntry>.Done(var made):
                db.Add(made);
                db.Note(operation, AddVerb, id.Value, now);
                return await KeepAsync(db, alone, ct).ConfigureAwait(false) || await db.WasDoneAsync(operation, AddVerb, id.Value, ct).ConfigureAwait(false)
                    ? await AnswerAsync(db, actor, id, ct).ConfigureAwait(false)
                    : new Outcome<StudioEntryView>.Refused([DoneOperations.NotSaved]);
            case Outcome<StudioEntry>.Refused(var problems):
                return new Outcome<StudioEntryView>.Refused(problems);
            default:
                return new Outcome<StudioEntryView>.NotFound();
        }
    }

    /// <summary>Tells an entry’s names and sentences better; what was noted under it keeps the name it had then. A conflict gives what stands.</summary>
    /// <param name="actor">Who does it.</param>
    /// <param name="id">Which.</param>
    /// <param name="words">What was typed.</param>
    /// <param name="version">The version that the form was opened on.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public Task<Outcome<StudioEntryView>> RenameAsync(
        Actor actor, StudioEntryId id, StudioEntryWords words, Guid version, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, id, (entry, here) => entry.Rename(words, here, time.GetUtcNow()), RenameVerb, version, operation, ct);

    /// <summary>Offers an entry no more; what has it keeps it.</summary>
    /// <param name="actor">Who does it.</param>
    /// <param name="id">Which.</param>
    /// <param name="version">The version that was looked at.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public Task<Outcome<StudioEntryView>> RetireAsync(Actor actor, StudioEntryId id, Guid version, OperationId operation, CancellationToken ct)
    {
        IReadOnlyList<Problem> Retire(StudioEntry entry, IReadOnlyList<StudioEntry> here)
        {
            entry.Retire(time.GetUtcNow());
            return [];
        }

        return ChangeAsync(actor, id, Retire, RetireVerb, version, operation, ct);
    }

    /// <summary>Offers a retired entry again; refused while something else is called so.</summary>
    /// <param name="actor">Who does it.</param>
    /// <param name="id">Which.</param>
    /// <param name="version">The version that was looked at.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public Task<Outcome<StudioEntryView>> BringBackAsync(Actor actor, StudioEntryId id, Guid version, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, id, (entry, here) => entry.BringBack(here), BackVerb, version, operation, ct);

    private Task<Outcome<StudioEntryView>> ChangeAsync(
        Actor actor, StudioEntryId id, Change change, string verb, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        return databases.PatientlyAsync((attempt, stop) => TryChangeAsync(attempt, actor, id, change, verb, version, operation, stop), ct);
    }

    private async Task<Outcome<StudioEntryView>> TryChangeAsync(
        Attempt attempt, Actor actor, StudioEntryId id, Change change, string verb, Guid version, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var alone = await AloneAsync(attempt, db, ct).ConfigureAwait(false);
        await using var __ = alone.ConfigureAwait(false);
        if (await db.Set<StudioEntry>().SingleOrDefaultAsync(row => actor.IsOwner && row.Id == id, ct).ConfigureAwait(false) is not { } entry)
        {
            return new Outcome<StudioEntryView>.NotFound();
        }

        if (await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false))
        {
            return await AnswerAsync(db, actor, id, ct).ConfigureAwait(false);
        }

        if (change(entry, await StudioCatalogueReader.EntriesAsync(db, ct).ConfigureAwait(false)) is { Count: > 0 } problems)
        {
            return new Outcome<StudioEntryView>.Refused(problems);
        }

        if (db.Entry(entry).State != EntityState.Unchanged)
        {
            db.ExpectVersion(entry, version);
        }

        db.Note(operation, verb, id.Value, time.GetUtcNow());
        var saved = await KeepAsync(db, alone, ct).ConfigureAwait(false) || await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false);
        var stands = await AnswerAsync(db, actor, id, ct).ConfigureAwait(false);
        return !saved && stands is Outcome<StudioEntryView>.Done(var theirs) ? new Outcome<StudioEntryView>.Conflict(theirs) : stands;
    }

    // Two owners who give one name at the same moment come one after the other, so that the second is told of the first.
    private static async Task<IDbContextTransaction> AloneAsync(Attempt attempt, ClinicDb db, CancellationToken ct)
    {
        var alone = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        await db.HoldAloneAsync(AloneFor.Catalogue, ct).ConfigureAwait(false);
        return alone;
    }

    private static async Task<bool> KeepAsync(ClinicDb db, IDbContextTransaction alone, CancellationToken ct)
    {
        var saved = await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        if (saved)
        {
            await alone.CommitAsync(ct).ConfigureAwait(false);
        }

        return saved;
    }

    private static async Task<Outcome<StudioEntryView>> AnswerAsync(ClinicDb db, Actor actor, StudioEntryId id, CancellationToken ct) =>
        await db.Set<StudioEntry>().AsNoTracking().SingleOrDefaultAsync(row => actor.IsOwner && row.Id == id, ct).ConfigureAwait(false) is { } entry
            ? new Outcome<StudioEntryView>.Done(StudioEntryView.Of(entry, (await UsedAsync(db, ct).ConfigureAwait(false)).GetValueOrDefault(entry.Key)))
            : new Outcome<StudioEntryView>.NotFound();

    // On how many reeds each was ever noted. Kinds are stored by name, and only the studio’s own are asked for.
    private static async Task<Dictionary<string, int>> UsedAsync(ClinicDb db, CancellationToken ct)
    {
        var keys = await db.Set<StudioEntry>().Select(entry => entry.Key).ToListAsync(ct).ConfigureAwait(false);
        if (keys.Count == 0)
        {
            return [];
        }

        var kinds = keys.ConvertAll(key => new FindingKindId(key));
        var works = keys.ConvertAll(key => new AdjustmentKindId(key));
        var findings = await db.Set<Finding>().Where(row => kinds.Contains(row.FindingKind)).Select(row => new { row.FindingKind, row.ReedId }).Distinct().ToListAsync(ct).ConfigureAwait(false);
        var looked = await db.Set<LookedFor>().Where(row => kinds.Contains(row.FindingKind)).Select(row => new { row.FindingKind, row.ReedId }).Distinct().ToListAsync(ct).ConfigureAwait(false);
        var done = await db.Set<Adjustment>().Where(row => works.Contains(row.AdjustmentKind)).Select(row => new { row.AdjustmentKind, row.ReedId }).Distinct().ToListAsync(ct).ConfigureAwait(false);
        return findings.Concat(looked).Select(row => (row.FindingKind.Value, row.ReedId)).Concat(done.Select(row => (row.AdjustmentKind.Value, row.ReedId)))
            .Distinct().GroupBy(row => row.Value).ToDictionary(row => row.Key, row => row.Count());
    }

    private static Outcome<StudioEntry> TooMany =>
        new Outcome<StudioEntry>.Refused([new Problem("", $"There are {StudioEntry.Most} entries of your own already. Tell one of those better instead, or bring a retired one back.")]);
}
