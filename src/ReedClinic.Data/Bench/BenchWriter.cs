using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>Puts entries into a log that others write in too: reads it, decides, writes, and begins again when somebody was quicker.</summary>
internal sealed class BenchWriter(IDbContextFactory<ClinicDb> databases, TimeProvider time, BenchNews? news)
{
    // Of all who write at once one gets through each time, so this is only reached when something else is broken.
    private const int MostTries = 200;

    /// <summary>What a log as it stands says to an entry: null to write it, else how it ends; and what it supersedes.</summary>
    internal delegate Outcome<BenchFact>? Decide(BenchLog log, out EntryId? supersedes);

    /// <summary>Writes one entry.</summary>
    internal async Task<Outcome<BenchFact>> OneAsync(
        Actor actor, ReedId reed, BenchEntry entry, OperationId operation, Decide decide, PassId? pass, CancellationToken ct, AdviceSetAside[]? asides = null) =>
        await AllAsync(actor, reed, [entry], operation, decide, pass, ct, asides).ConfigureAwait(false) switch
        {
            Outcome<IReadOnlyList<BenchFact>>.Done(var facts) => new Outcome<BenchFact>.Done(facts[0]),
            Outcome<IReadOnlyList<BenchFact>>.Conflict(var theirs) => new Outcome<BenchFact>.Conflict(theirs[0]),
            Outcome<IReadOnlyList<BenchFact>>.Refused(var problems) => new Outcome<BenchFact>.Refused(problems),
            _ => new Outcome<BenchFact>.NotFound(),
        };

    private static Outcome<IReadOnlyList<BenchFact>> Several(Outcome<BenchFact> ending) => ending switch
    {
        Outcome<BenchFact>.Done(var fact) => new Outcome<IReadOnlyList<BenchFact>>.Done([fact]),
        Outcome<BenchFact>.Conflict(var theirs) => new Outcome<IReadOnlyList<BenchFact>>.Conflict([theirs]),
        Outcome<BenchFact>.Refused(var problems) => new Outcome<IReadOnlyList<BenchFact>>.Refused(problems),
        _ => new Outcome<IReadOnlyList<BenchFact>>.NotFound(),
    };

    /// <summary>Writes what was said in one breath, and before it the advice that is set aside with it: all of it, or nothing. Each may supersede another entry.</summary>
    internal async Task<Outcome<IReadOnlyList<BenchFact>>> AllAsync(
        Actor actor, ReedId reed, IReadOnlyList<BenchEntry> entries, OperationId operation, Decide decide, PassId? pass, CancellationToken ct, AdviceSetAside[]? asides = null, IReadOnlyList<EntryId>? replaced = null)
    {
        operation = operation.OrFresh(time.GetUtcNow());
        var said = new Breath(entries, asides ?? [], operation, pass, replaced);
        for (var tries = 1; actor.WorksHere; tries++)
        {
            try
            {
                return await databases.PatientlyAsync((attempt, stop) => Try(attempt, actor, reed, said, decide, stop), ct).ConfigureAwait(false);
            }
            catch (DbUpdateException clash)
                when (tries < MostTries && (clash is DbUpdateConcurrencyException || clash.IsUniqueClash()))
            {
                // Somebody wrote to this log at the same moment: read it again and decide again. An id that stands in
                // another reed's log would clash for ever.
                if (clash.IsUniqueClashOn(nameof(BenchEntry.OperationId))
                    && await StandsElsewhereAsync(reed, operation, ct).ConfigureAwait(false))
                {
                    return new Outcome<IReadOnlyList<BenchFact>>.Refused([new Problem("", UsedElsewhere.Words)]);
                }
            }
        }

        return new Outcome<IReadOnlyList<BenchFact>>.NotFound();
    }

    private async Task<bool> StandsElsewhereAsync(ReedId reed, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Set<BenchEntry>().AnyAsync(entry => entry.OperationId == operation && entry.ReedId != reed, ct)
            .ConfigureAwait(false);
    }

    private async Task<Outcome<IReadOnlyList<BenchFact>>> Try(
        Attempt attempt, Actor actor, ReedId reed, Breath said, Decide decide, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldConsentAsync(attempt, db.Set<Batch>().Where(batch => batch.Reeds.Any(row => row.Id == reed)), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if (await OpenLog.Read(db, actor, reed, ct).ConfigureAwait(false) is not { } page)
        {
            return new Outcome<IReadOnlyList<BenchFact>>.NotFound();
        }

        if (page.Log.SaidBy(said.Operation) is { Count: > 0 } first)
        {
            return new Outcome<IReadOnlyList<BenchFact>>.Done(first);
        }

        var (entries, problem) = await page.TakeAsync(said.Entries, ct).ConfigureAwait(false);
        if (problem is { } against)
        {
            return new Outcome<IReadOnlyList<BenchFact>>.Refused([against]);
        }

        if (decide(page.Log, out var supersedes) is { } ending)
        {
            return Several(ending);
        }

        var stamped = Stamped(said with { Entries = entries }, page.Log, supersedes, reed, actor);
        var after = await page.Add(stamped, ct).ConfigureAwait(false);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await transaction.CommitAsync(ct).ConfigureAwait(false);
        BenchFact[] facts = [.. stamped.TakeLast(entries.Count).Select(entry => after.FactOf(entry.Id)!)];
        Tell(reed, facts);
        return new Outcome<IReadOnlyList<BenchFact>>.Done(facts);
    }

    // Advice goes before what it was told for, so that taking back begins with that; its ids come from the end, out of the way of what was said.
    private List<BenchEntry> Stamped(Breath said, BenchLog log, EntryId? supersedes, ReedId reed, Actor actor)
    {
        var now = time.GetUtcNow();
        var gone = log.Live<AdviceSetAside>().Select(aside => aside.Now.AdviceId).ToHashSet();
        List<BenchEntry> all = [.. said.Asides.Where(aside => !gone.Contains(aside.AdviceId)), .. said.Entries];
        var asides = all.Count - said.Entries.Count;
        return [.. all.Select((entry, index) => entry.StampedWith(new EntryStamp(
            new EntryId(Guid.CreateVersion7(now)), reed, log.LastSequence + 1 + index,
            said.Operation.Part(index < asides ? OperationId.MostParts - 1 - index : index - asides), now, actor.Account, index < asides ? null : said.Replaced?[index - asides] ?? supersedes, said.Pass)))];
    }

    private void Tell(ReedId reed, BenchFact[] facts)
    {
        if (facts.Any(fact => fact.Chain.Any(entry => entry is CauseJudged)))
        {
            news?.TellJudged();
        }

        news?.Tell(reed);
    }

    private sealed record Breath(IReadOnlyList<BenchEntry> Entries, IReadOnlyList<AdviceSetAside> Asides, OperationId Operation, PassId? Pass, IReadOnlyList<EntryId>? Replaced);
}
