using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>
/// What a teacher has typed at the bench and not saved yet: one draft for each reed and teacher. Keeping the same text
/// twice is the same as once, so these operations need no id of their own.
/// </summary>
public sealed class BenchDraftBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    /// <summary>The draft of this teacher for this reed.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="ct">Cancels the reading.</param>
    /// <returns>What was typed, or null.</returns>
    public async Task<string?> FindAsync(Actor actor, ReedId reed, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await Mine(db, actor, reed).AsNoTracking().Select(draft => draft.Typed).SingleOrDefaultAsync(ct).ConfigureAwait(false);
    }

    /// <summary>Keeps what is typed now in place of what was typed before.</summary>
    /// <param name="actor">Who types.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="typed">The form as text.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    /// <returns>False when it is too long, or there is no such reed that this actor may work on.</returns>
    public async Task<bool> KeepAsync(Actor actor, ReedId reed, string typed, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(typed);
        if (typed.Length > BenchDraft.LongestTyped || !actor.WorksHere)
        {
            return false;
        }

        // Two tabs may begin a draft at once: the second finds the first one's row and keeps its own text in it.
        return await KeepOnceAsync(actor, reed, typed, ct).ConfigureAwait(false) ?? await KeepOnceAsync(actor, reed, typed, ct).ConfigureAwait(false) ?? false;
    }

    /// <summary>Forgets the draft: what was typed is saved, or was given up.</summary>
    /// <param name="actor">Whose draft.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="ct">Cancels before it is gone.</param>
    public async Task DropAsync(Actor actor, ReedId reed, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        await Mine(db, actor, reed).ExecuteDeleteAsync(ct).ConfigureAwait(false);
    }

    private static IQueryable<BenchDraft> Mine(ClinicDb db, Actor actor, ReedId reed) =>
        db.Set<BenchDraft>().Where(draft => draft.ReedId == reed && draft.Account == actor.Account && actor.WorksHere);

    private Task<bool?> KeepOnceAsync(Actor actor, ReedId reed, string typed, CancellationToken ct) =>
        databases.PatientlyAsync((attempt, stop) => TryKeep(attempt, actor, reed, typed, stop), ct);

    private async Task<bool?> TryKeep(Attempt attempt, Actor actor, ReedId reed, string typed, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldConsentAsync(attempt, db.Set<Batch>().Where(batch => batch.Reeds.Any(row => row.Id == reed)), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if (!await db.WorkedBy(actor).AnyAsync(batch => batch.Reeds.Any(row => row.Id == reed), ct).ConfigureAwait(false))
        {
            return false;
        }

        var draft = await Mine(db, actor, reed).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (draft is null)
        {
            draft = BenchDraft.For(reed, actor.Account);
            db.Add(draft);
        }

        draft.Keep(typed, time.GetUtcNow());
        try
        {
            await db.SaveChangesAsync(ct).ConfigureAwait(false);
            await transaction.CommitAsync(ct).ConfigureAwait(false);
            return true;
        }
        catch (DbUpdateException clash) when (clash.IsUniqueClash() || clash is DbUpdateConcurrencyException)
        {
            return null;
        }
    }
}
