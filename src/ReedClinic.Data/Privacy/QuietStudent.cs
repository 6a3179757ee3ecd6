using System.Buffers.Binary;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Privacy;

/// <summary>A student of whom nothing was heard for long.</summary>
/// <param name="Id">Which.</param>
/// <param name="LastSign">When something was heard last.</param>
internal sealed record QuietStudent(StudentId Id, DateTimeOffset LastSign)
{
    /// <summary>When a student was first known: their id is a version 7 identifier, which begins with its millisecond (RFC 9562, 5.7).</summary>
    public static DateTimeOffset MadeAt(StudentId id)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.Value.TryWriteBytes(bytes, bigEndian: true, out _);
        return DateTimeOffset.FromUnixTimeMilliseconds(BinaryPrimitives.ReadInt64BigEndian(bytes) >> 16);
    }
}

/// <summary>When somebody was heard of last.</summary>
internal static class SignsOfLife
{
    /// <summary>The latest of what a student did, what became of their reeds, what their guardian answered, and when the guardian came by.</summary>
    public static async Task<DateTimeOffset> LastSignAsync(this ClinicDb db, StudentId id, CancellationToken ct)
    {
        var account = await db.Set<Student>().Where(student => student.Id == id).Select(student => student.Account).SingleAsync(ct).ConfigureAwait(false);
        var batches = await db.Set<Batch>().AsNoTracking().Where(batch => batch.Student == id).ToListAsync(ct).ConfigureAwait(false);
        var guardians = await db.Set<Guardianship>().AsNoTracking().Where(row => row.Student == id).ToListAsync(ct).ConfigureAwait(false);
        DateTimeOffset?[] signs =
        [
            QuietStudent.MadeAt(id),
            .. batches.SelectMany(batch => batch.Journey.Select(step => (DateTimeOffset?)step.Since)),
            .. guardians.SelectMany(row => new[] { row.AskedAt, row.GivenAt, row.WithdrawnAt }),
            .. await db.Set<IntakeDraft>().Where(draft => draft.Student == id).Select(draft => (DateTimeOffset?)draft.SavedAt).ToListAsync(ct).ConfigureAwait(false),
            .. await db.Set<Session>().Where(session => (session.Account == account && account != null) || db.Set<Guardianship>().Any(row => row.Student == id && row.EndedAt == null && row.Account == session.Account)).Select(session => (DateTimeOffset?)session.SeenAt).ToListAsync(ct).ConfigureAwait(false),
        ];
        return signs.Max()!.Value;
    }
}
