using System.Buffers.Binary;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Privacy;

/// <summary>When somebody was heard of last.</summary>
internal static class SignsOfLife
{
    private const int AtOnce = 200;

    /// <summary>Students and guardians of whom nothing was heard since a moment, at most so many of each at once.</summary>
    public static async Task<List<Erasure>> QuietSinceAsync(this ClinicDb db, DateTimeOffset before, HashSet<Guid?> waiting, CancellationToken ct)
    {
        var students = await db.QuietStudentsAsync(before, ct).ConfigureAwait(false);
        var guardians = await db.QuietGuardiansAsync(before, ct).ConfigureAwait(false);
        return
        [
            .. students.Where(id => MadeAt(id) <= before && !waiting.Contains(id.Value)).OrderBy(id => id.Value).Take(AtOnce).Select(id => new Erasure(id, null)),
            .. guardians.Where(id => !waiting.Contains(id.Value)).OrderBy(id => id.Value).Take(AtOnce).Select(id => new Erasure(null, id)),
        ];
    }

    /// <summary>
    /// For a student the latest of what they did, what became of their reeds, what their guardian answered, and when the
    /// guardian came by. For somebody who is nothing here any more, when they came by; null for anybody else.
    /// </summary>
    public static async Task<DateTimeOffset?> LastSignAsync(this ClinicDb db, Erasure whom, CancellationToken ct)
    {
        if (whom.Student is { } student)
        {
            return await db.LastSignAsync(student, ct).ConfigureAwait(false);
        }

        var account = whom.Account!.Value;
        if (!(await db.NothingHereAsync(ct).ConfigureAwait(false)).TryGetValue(account, out var made))
        {
            return null;
        }

        var seen = await db.Set<Session>().Where(session => session.Account == account).MaxAsync(session => (DateTimeOffset?)session.SeenAt, ct).ConfigureAwait(false);
        return seen > made ? seen : made;
    }

    /// <summary>Until the transaction ends nobody changes this person, a session of theirs or one of their guardian's. False when they are gone.</summary>
    public static async Task<bool> HoldAsync(this ClinicDb db, Erasure whom, CancellationToken ct)
    {
        if (whom.Student is { } student)
        {
            await db.HoldAloneAsync(student, ct).ConfigureAwait(false);
            await db.HoldSessionsAsync(student, ct).ConfigureAwait(false);
            return await db.Set<Student>().AnyAsync(row => row.Id == student, ct).ConfigureAwait(false);
        }

        await db.HoldAloneAsync(whom.Account!.Value, ct).ConfigureAwait(false);
        return await db.Users.AnyAsync(user => user.Id == whom.Account.Value.Value, ct).ConfigureAwait(false);
    }

    // When a student was first known: their id is a version 7 identifier, which begins with its millisecond (RFC 9562, 5.7).
    private static DateTimeOffset MadeAt(StudentId id)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.Value.TryWriteBytes(bytes, bigEndian: true, out _);
        return DateTimeOffset.FromUnixTimeMilliseconds(BinaryPrimitives.ReadInt64BigEndian(bytes) >> 16);
    }

    private static async Task<DateTimeOffset?> LastSignAsync(this ClinicDb db, StudentId id, CancellationToken ct)
    {
        var account = await db.Set<Student>().Where(student => student.Id == id).Select(student => student.Account).SingleAsync(ct).ConfigureAwait(false);
        var batches = await db.Set<Batch>().AsNoTracking().Where(batch => batch.Student == id).ToListAsync(ct).ConfigureAwait(false);
        var guardians = await db.Set<Guardianship>().AsNoTracking().Where(row => row.Student == id).ToListAsync(ct).ConfigureAwait(false);
        DateTimeOffset?[] signs =
        [
            MadeAt(id),
            .. batches.SelectMany(batch => batch.Journey.Select(step => (DateTimeOffset?)step.Since)),
            .. guardians.SelectMany(row => new[] { row.AskedAt, row.GivenAt, row.WithdrawnAt }),
            .. await db.Set<IntakeDraft>().Where(draft => draft.Student == id).Select(draft => (DateTimeOffset?)draft.SavedAt).ToListAsync(ct).ConfigureAwait(false),
            .. await db.Set<Session>().Where(session => (session.Account == account && account != null) || db.Set<Guardianship>().Any(row => row.Student == id && row.EndedAt == null && row.Account == session.Account))
                .Select(session => (DateTimeOffset?)session.SeenAt).ToListAsync(ct).ConfigureAwait(false),
        ];
        return signs.Max();
    }

    // Those who have no parcel at the studio.
    private static async Task<List<StudentId>> QuietStudentsAsync(this ClinicDb db, DateTimeOffset before, CancellationToken ct) =>
        await db.Set<Student>().AsNoTracking()
            .Where(student => !db.Set<Batch>().Any(batch => batch.Student == student.Id
                && ((batch.Stage != Stage.Home && batch.Stage != Stage.OnItsWayHome && batch.Stage != Stage.OnItsWay)
                    || batch.SubmittedAt > before || batch.LetterSentAt > before || batch.PostedBackAt > before || batch.HomeAt > before)))
            .Where(student => !db.Set<Session>().Any(session => session.SeenAt > before
                    && (session.Account == student.Account || db.Set<Guardianship>().Any(row => row.Student == student.Id && row.EndedAt == null && row.Account == session.Account)))
                && !db.Set<IntakeDraft>().Any(draft => draft.Student == student.Id && draft.SavedAt > before)
                && !db.Set<Guardianship>().Any(row => row.Student == student.Id && (row.AskedAt > before || row.GivenAt > before || row.WithdrawnAt > before)))
            .Select(student => student.Id)
            .ToListAsync(ct).ConfigureAwait(false);

    private static async Task<List<AccountId>> QuietGuardiansAsync(this ClinicDb db, DateTimeOffset before, CancellationToken ct)
    {
        var nothing = await db.NothingHereAsync(ct).ConfigureAwait(false);
        var heard = await db.Set<Session>().Where(session => session.SeenAt > before).Select(session => session.Account).Distinct().ToListAsync(ct).ConfigureAwait(false);
        return [.. nothing.Where(account => account.Value <= before).Select(account => account.Key).Except(heard)];
    }

    // Sign-ins without a role whose holder sends no reeds and answers for nobody, with when each was made: guardians once. Accounts
    // have plain ids, which no query compares with ours; there are few of these.
    private static async Task<Dictionary<AccountId, DateTimeOffset>> NothingHereAsync(this ClinicDb db, CancellationToken ct)
    {
        var students = await db.Set<Student>().Where(student => student.Account != null).Select(student => student.Account!.Value).ToHashSetAsync(ct).ConfigureAwait(false);
        var guardians = await db.Set<Guardianship>().Where(row => row.Account != null && row.EndedAt == null).Select(row => row.Account!.Value).ToHashSetAsync(ct).ConfigureAwait(false);
        var free = await db.Users.Where(user => !db.UserRoles.Any(held => held.UserId == user.Id)).Select(user => new { user.Id, user.CreatedAt }).ToListAsync(ct).ConfigureAwait(false);
        return free.Where(user => !students.Contains(new AccountId(user.Id)) && !guardians.Contains(new AccountId(user.Id))).ToDictionary(user => new AccountId(user.Id), user => user.CreatedAt);
    }
}
