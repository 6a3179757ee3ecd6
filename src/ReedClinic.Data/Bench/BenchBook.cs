using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>
/// Writes the bench log. Each operation gives the fact as it stands afterwards; repeating one gives the first answer.
/// </summary>
/// <remarks>
/// Appending never conflicts: when two teachers write at once, the later one takes the next place in the log. Only what
/// replaces an entry checks that nothing else has replaced it. Teachers and owners may write; for everybody else, and for
/// a reed that isn't there, the answer is <see cref="Outcome{T}.NotFound"/>.
/// </remarks>
public sealed class BenchBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, BenchNews? news = null)
{
    private readonly BenchWriter writer = new(databases, time, news);

    /// <summary>Puts a new entry at the end of a reed's log.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="entry">What is said, as the kind's own factory makes it.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    /// <param name="pass">The pass it belongs to, when that isn't the present one.</param>
    public Task<Outcome<BenchFact>> RecordAsync(
        Actor actor, ReedId reed, BenchEntry entry, OperationId operation, PassId? pass, CancellationToken ct) =>
        writer.OneAsync(actor, reed, entry, operation, Append(entry), pass, ct);

    /// <summary>As above, in the present pass, with advice that was shown before it and is set aside with it.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="entry">What is said, as the kind's own factory makes it.</param>
    /// <param name="heeded">The advice that was shown; fewer than <see cref="OperationId.MostParts"/>.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<BenchFact>> RecordAsync(
        Actor actor, ReedId reed, BenchEntry entry, IReadOnlyList<AdviceId> heeded, OperationId operation, CancellationToken ct) =>
        writer.OneAsync(actor, reed, entry, operation, Append(entry), null, ct, AsidesOf(heeded, 1));

    /// <summary>Puts everything that was said in one breath at the end of a reed's log: all of it, or nothing.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="entries">What is said, in order; 1 to <see cref="OperationId.MostParts"/>.</param>
    /// <param name="operation">Made when the line was opened; the entries after the first get ids made from it.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    /// <returns>The facts, in the same order.</returns>
    public Task<Outcome<IReadOnlyList<BenchFact>>> SayAsync(
        Actor actor, ReedId reed, IReadOnlyList<BenchEntry> entries, OperationId operation, CancellationToken ct) =>
        SayAsync(actor, reed, entries, [], operation, ct);

    /// <summary>The same, with advice that was shown before it: it is set aside with the entries, and stays due where they can’t stand.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="entries">What is said, in order; 1 to <see cref="OperationId.MostParts"/>, with advice fewer.</param>
    /// <param name="heeded">The advice that was shown.</param>
    /// <param name="operation">Made when the line was opened; the other entries get ids made from it.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    /// <returns>The facts of the entries, in the same order.</returns>
    public Task<Outcome<IReadOnlyList<BenchFact>>> SayAsync(
        Actor actor, ReedId reed, IReadOnlyList<BenchEntry> entries, IReadOnlyList<AdviceId> heeded, OperationId operation, CancellationToken ct)
    {
        ArgumentOutOfRangeException.ThrowIfZero(entries.Count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(entries.Count, OperationId.MostParts);
        return writer.AllAsync(actor, reed, entries, operation, Append([.. entries]), null, ct, AsidesOf(heeded, entries.Count));
    }

    /// <summary>As above, in the present pass.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="entry">What is said, as the kind's own factory makes it.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<BenchFact>> RecordAsync(
        Actor actor, ReedId reed, BenchEntry entry, OperationId operation, CancellationToken ct) =>
        RecordAsync(actor, reed, entry, operation, null, ct);

    /// <summary>Says a fact in a better wording. A conflict gives the fact as it stands now; nothing is written then.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="seen">The last entry of the fact, as the form saw it (<see cref="BenchFact.Tail"/>).</param>
    /// <param name="entry">The better wording; of another kind where the first was misheard. It keeps the place of the first in the log.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<BenchFact>> CorrectAsync(
        Actor actor, ReedId reed, EntryId seen, BenchEntry entry, OperationId operation, CancellationToken ct) =>
        CorrectAsync(actor, reed, seen, entry, [], operation, ct);

    /// <summary>The same, with advice that was shown before it and is set aside with it.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="seen">The last entry of the fact, as the form saw it (<see cref="BenchFact.Tail"/>).</param>
    /// <param name="entry">The better wording.</param>
    /// <param name="heeded">The advice that was shown; fewer than <see cref="OperationId.MostParts"/>.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<BenchFact>> CorrectAsync(
        Actor actor, ReedId reed, EntryId seen, BenchEntry entry, IReadOnlyList<AdviceId> heeded, OperationId operation, CancellationToken ct)
    {
        Outcome<BenchFact>? Supersede(BenchLog log, out EntryId? supersedes)
        {
            supersedes = seen;
            return log.FactOf(seen) switch
            {
                null => new Outcome<BenchFact>.NotFound(),
                { } fact when fact.Tail != seen => new Outcome<BenchFact>.Conflict(fact),
                { } fact when !fact.MayBecome(entry) => Refused("", "This can’t be said better as something else: take it back, and say the other by itself."),
                _ => Hindrance(log, entry),
            };
        }

        return writer.OneAsync(actor, reed, entry, operation, Supersede, null, ct, AsidesOf(heeded, 1));
    }

    /// <summary>
    /// Takes back the last wording of this teacher that stands on this reed: a correction gives way to the earlier
    /// wording, a first wording disappears from today's state. Not found when nothing of theirs stands.
    /// </summary>
    /// <param name="actor">Who takes it back.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="seen">The fact's last entry as the form saw it; a conflict when another one would be taken back.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<BenchFact>> UndoAsync(
        Actor actor, ReedId reed, EntryId? seen, OperationId operation, CancellationToken ct)
    {
        Outcome<BenchFact>? TakeBack(BenchLog log, out EntryId? supersedes)
        {
            var last = log.LastOf(actor.Account);
            supersedes = last?.Tail;
            return last switch
            {
                null => new Outcome<BenchFact>.NotFound(),
                _ when seen is { } expected && expected != last.Tail => new Outcome<BenchFact>.Conflict(last),
                _ => null,
            };
        }

        return writer.OneAsync(actor, reed, Domain.Bench.Undo.Entry(), operation, TakeBack, null, ct);
    }

    /// <summary>Takes back several wordings of this teacher, what they said last first: all of them, or nothing.</summary>
    /// <param name="actor">Who takes them back.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="seen">The last entry of each fact, as the form saw it; a conflict when one has become another, or something was said since.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<IReadOnlyList<BenchFact>>> UndoTogetherAsync(
        Actor actor, ReedId reed, IReadOnlyList<EntryId> seen, OperationId operation, CancellationToken ct)
    {
        Outcome<BenchFact>? TakeBack(BenchLog log, out EntryId? supersedes)
        {
            supersedes = null;
            var facts = seen.Select(log.FactOf).ToList();
            return log.LastOf(actor.Account) is not { } last || facts.Contains(null) ? new Outcome<BenchFact>.NotFound()
                : last.Tail != seen[0] ? new Outcome<BenchFact>.Conflict(last)
                : facts.Zip(seen).FirstOrDefault(pair => pair.First!.Tail != pair.Second || pair.First.Now?.RecordedBy != actor.Account).First is { } other ? new Outcome<BenchFact>.Conflict(other)
                : null;
        }

        return writer.AllAsync(actor, reed, [.. seen.Select(_ => Domain.Bench.Undo.Entry())], operation, TakeBack, null, ct, replaced: seen);
    }

    /// <summary>
    /// Takes back the wording of a fact that stands, whoever said it and whatever was said since: a correction gives way to the earlier
    /// wording, a first wording disappears from today’s state. A conflict gives the fact as it stands now; nothing is written then.
    /// </summary>
    /// <param name="actor">Who takes it back.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="seen">The last entry of the fact, as the page saw it (<see cref="BenchFact.Tail"/>).</param>
    /// <param name="operation">Made when it was pressed.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<BenchFact>> TakeBackAsync(
        Actor actor, ReedId reed, EntryId seen, OperationId operation, CancellationToken ct)
    {
        Outcome<BenchFact>? TakeBack(BenchLog log, out EntryId? supersedes)
        {
            supersedes = seen;
            return log.FactOf(seen) switch
            {
                null => new Outcome<BenchFact>.NotFound(),
                { } fact when fact.Tail != seen || fact.Now is null => new Outcome<BenchFact>.Conflict(fact),
                _ => null,
            };
        }

        return writer.OneAsync(actor, reed, Domain.Bench.Undo.Entry(), operation, TakeBack, null, ct);
    }

    /// <summary>What the bench shows of one reed; null when there is none, or it isn't this actor's to see.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="ct">Cancels the reading.</param>
    public async Task<BenchView?> FindAsync(Actor actor, ReedId reed, CancellationToken ct)
    {
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await BenchReader.Reed(db, reed, ct).ConfigureAwait(false);
    }

    /// <summary>All the reeds of a batch with their logs; null when there is none, or it isn't this actor's to see.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="code">The batch's code.</param>
    /// <param name="ct">Cancels the reading.</param>
    public async Task<BatchAtBenchView?> FindBatchAsync(Actor actor, BatchCode code, CancellationToken ct)
    {
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await BenchReader.Batch(db, code, ct).ConfigureAwait(false);
    }

    /// <summary>
    /// What this teacher has done at the bench: the last 500 of their own tests and adjustments that nobody took back or put
    /// better. Null for whoever doesn’t work here.
    /// </summary>
    /// <param name="actor">Who asks, and whose entries.</param>
    /// <param name="ct">Cancels the reading.</param>
    public async Task<HabitsView?> HabitsAsync(Actor actor, CancellationToken ct)
    {
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await BenchReader.Habits(db, actor.Account, ct).ConfigureAwait(false);
    }

    /// <summary>The reeds of a batch with their states; null when there is none, or it isn’t this actor’s to see.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="ct">Cancels the reading.</param>
    public async Task<StripView?> StripAsync(Actor actor, BatchId batch, CancellationToken ct)
    {
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await BenchReader.Strip(db, batch, ct).ConfigureAwait(false);
    }

    private static BenchWriter.Decide Append(params BenchEntry[] entries) => (BenchLog log, out EntryId? supersedes) =>
    {
        supersedes = null;
        return entries.Select(entry => Hindrance(log, entry)).FirstOrDefault(hindrance => hindrance is not null);
    };

    private static AdviceSetAside[] AsidesOf(IReadOnlyList<AdviceId> heeded, int beside)
    {
        // A part between the two stays free: what one operation said ends there.
        if (heeded.Count > 0)
        {
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(heeded.Count + beside, OperationId.MostParts);
        }

        return [.. heeded.Select(advice => AdviceSetAside.Of(advice)).OfType<Outcome<AdviceSetAside>.Done>().Select(made => made.Value)];
    }

    private static Outcome<BenchFact>? Hindrance(BenchLog log, BenchEntry entry) => entry switch
    {
        FindingEnded ended when log.FactOf(ended.FindingId)?.Kind != EntryKind.Finding =>
            Refused(nameof(FindingEnded.FindingId), "Choose the finding that this is about."),
        RiskClosed closed when log.FactOf(closed.RiskId)?.Kind != EntryKind.Risk =>
            Refused(nameof(RiskClosed.RiskId), "Choose the risk that this is about."),
        Adjustment { ForFindingId: { } finding } when log.FactOf(finding)?.Kind != EntryKind.Finding =>
            Refused(nameof(Adjustment.ForFindingId), "Choose the finding that this was done for."),
        _ => null,
    };

    private static Outcome<BenchFact>.Refused Refused(string field, string message) => new([new Problem(field, message)]);
}
