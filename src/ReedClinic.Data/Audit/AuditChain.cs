using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Privacy;

namespace ReedClinic.Data.Audit;

/// <summary>
/// The audit as a chain: each link carries the hash of the one before, so that whoever changes, removes or slips in one
/// breaks every later one. OWASP ASVS 5.0: 16.4.2.
/// </summary>
public sealed class AuditChain(IDbContextFactory<ClinicDb> databases)
{
    private const int AtOnce = 500;

    private static readonly string Start = new('0', 64);

    /// <summary>Puts everything that was noted onto the chain, in order.</summary>
    /// <param name="ct">Stops it.</param>
    /// <returns>How many links were added.</returns>
    public Task<int> SealAsync(CancellationToken ct) => databases.PatientlyAsync(SealAsync, ct);

    private async Task<int> SealAsync(Attempt attempt, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        await db.HoldAloneAsync(Engine.AloneFor.AuditChain, ct).ConfigureAwait(false);
        var notes = await db.Set<AuditNote>().OrderBy(note => note.At).ThenBy(note => note.Id).Take(AtOnce).ToListAsync(ct).ConfigureAwait(false);
        if (notes.Count == 0)
        {
            return 0;
        }

        var last = await db.Set<AuditEntry>().AsNoTracking().OrderByDescending(entry => entry.Sequence).FirstOrDefaultAsync(ct).ConfigureAwait(false);
        var masks = await MasksAsync(db, notes, ct).ConfigureAwait(false);
        foreach (var note in notes)
        {
            last = Link(note, last, masks);
            db.Add(last);
        }

        db.RemoveRange(notes);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await ForgetErasedAsync(db, notes, ct).ConfigureAwait(false);
        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return notes.Count;
    }

    /// <summary>Follows the chain from its first link to its last.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task<AuditCheck> VerifyAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var (count, before) = (0L, Start);
        var entries = db.Set<AuditEntry>().AsNoTracking().OrderBy(entry => entry.Sequence).AsAsyncEnumerable().GetAsyncEnumerator(ct);
        await using var __ = entries.ConfigureAwait(false);
        while (await NextAsync(entries, ct).ConfigureAwait(false) is var (there, entry) && there)
        {
            if (entry is null || entry.Sequence != count + 1 || entry.Before != before || entry.Hash != HashOf(entry)
                || !IsWhole(entry.At) || !await IsAsWrittenAsync(entry, ct).ConfigureAwait(false))
            {
                return new AuditCheck(count, count + 1, before);
            }

            (count, before) = (entry.Sequence, entry.Hash);
        }

        return new AuditCheck(count, null, before);
    }

    // A link that can't even be read was changed: no entry then.
    private static async Task<(bool There, AuditEntry? Entry)> NextAsync(IAsyncEnumerator<AuditEntry> entries, CancellationToken ct)
    {
        try
        {
            return await entries.MoveNextAsync().ConfigureAwait(false) ? (true, entries.Current) : (false, null);
        }
        catch (Exception unreadable) when (!ct.IsCancellationRequested && unreadable is FormatException or InvalidOperationException or InvalidCastException or ArgumentException)
        {
            return (true, null);
        }
    }

    // Written to the millisecond, so anything finer was put in later.
    private static bool IsWhole(DateTimeOffset at) => at.Ticks % TimeSpan.TicksPerMillisecond == 0;

    // More than one text reads as the same value, in capitals, say: what stands there must be the one that was written.
    private async Task<bool> IsAsWrittenAsync(AuditEntry entry, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Set<AuditEntry>().AnyAsync(
            row => row.Sequence == entry.Sequence && row.At == entry.At && row.Event == entry.Event
                && row.Who == entry.Who && row.Whom == entry.Whom && row.What == entry.What,
            ct).ConfigureAwait(false);
    }

    private static AuditEntry Link(AuditNote note, AuditEntry? before, Dictionary<Guid, Guid> masks)
    {
        var entry = new AuditEntry
        {
            Sequence = (before?.Sequence ?? 0) + 1,
            At = note.At,
            Event = note.Event,
            Who = note.Who is { } who && masks.TryGetValue(who, out var theirs) ? theirs : null,
            Whom = note.Whom is { } whom && masks.TryGetValue(whom, out var mask) ? mask : null,
            What = note.What,
            Before = before?.Hash ?? Start,
        };
        entry.Hash = HashOf(entry);
        return entry;
    }

    private static string HashOf(AuditEntry entry) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(
        CultureInfo.InvariantCulture,
        $"{entry.Sequence}|{entry.At.ToUnixTimeMilliseconds()}|{entry.Event}|{entry.Who}|{entry.Whom}|{entry.What}|{entry.Before}"))));

    private static async Task<Dictionary<Guid, Guid>> MasksAsync(ClinicDb db, List<AuditNote> notes, CancellationToken ct)
    {
        var people = notes.SelectMany(note => new[] { note.Who, note.Whom }).OfType<Guid>().Distinct().ToList();
        var masks = await db.Set<Pseudonym>().Where(row => people.Contains(row.Person))
            .ToDictionaryAsync(row => row.Person, row => row.Mask, ct).ConfigureAwait(false);

        // Whoever was erased isn't given a new one: it would be the only row that still knows them.
        var erased = await db.Set<ErasedPerson>().Where(row => people.Contains(row.Person)).Select(row => row.Person).ToListAsync(ct).ConfigureAwait(false);
        foreach (var person in people.Where(person => !masks.ContainsKey(person)).Except(erased))
        {
            masks[person] = new Guid(RandomNumberGenerator.GetBytes(16));
            db.Add(new Pseudonym { Person = person, Mask = masks[person] });
        }

        return masks;
    }

    // The last thing the chain says of somebody is that they were erased; who that was is then known nowhere.
    private static async Task ForgetErasedAsync(ClinicDb db, List<AuditNote> notes, CancellationToken ct)
    {
        var erased = notes.Where(note => note.Event is AuditEvent.Erased or AuditEvent.LetGo && note.Whom is not null)
            .Select(note => note.Whom!.Value).ToList();
        if (erased.Count > 0)
        {
            await db.Set<Pseudonym>().Where(row => erased.Contains(row.Person)).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        }
    }
}

/// <summary>What came of following the chain.</summary>
/// <param name="Sound">How many links hold, from the first on.</param>
/// <param name="Broken">The place of the first link that doesn't hold; null when all do.</param>
/// <param name="Head">The hash of the last link that holds. Whoever writes it down elsewhere can tell later whether the end was cut off.</param>
public sealed record AuditCheck(long Sound, long? Broken, string Head);

/// <summary>Notes what happened.</summary>
internal static class AuditNotes
{
    /// <summary>Adds a note to what is about to be saved.</summary>
    public static void Tell(this ClinicDb db, AuditEvent what, DateTimeOffset at, Guid? who = null, Guid? whom = null, Guid? about = null) =>
        db.Add(new AuditNote
        {
            Id = Guid.CreateVersion7(at),
            At = DateTimeOffset.FromUnixTimeMilliseconds(at.ToUnixTimeMilliseconds()),
            Event = what,
            Who = who,
            Whom = whom,
            What = about,
        });
}
