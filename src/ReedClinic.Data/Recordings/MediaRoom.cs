using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Recordings;

/// <summary>Whether there is room for one more: on its reed, for its student, in the studio. What is on its way counts as if it were here.</summary>
internal static class MediaRoom
{
    /// <summary>Why one more has no room; null when it has.</summary>
    public static async Task<RecordingRefusal?> LacksRoomAsync(this ClinicDb db, StudentId student, Upload upload, CancellationToken ct)
    {
        var going = db.Set<Upload>().Where(row => row.Refusal == null);
        var reeds = db.Set<Reed>().Where(reed => db.Set<Batch>().Any(batch => batch.Id == reed.Batch && batch.Student == student)).Select(reed => reed.Id);
        var onReed = await db.Set<Recording>().CountAsync(row => row.Reed == upload.Reed && row.Kind == upload.Kind, ct).ConfigureAwait(false)
            + await going.CountAsync(row => row.Reed == upload.Reed && row.Kind == upload.Kind, ct).ConfigureAwait(false);
        if (onReed >= RecordingLimits.OnReed(upload.Kind))
        {
            return RecordingRefusal.ReedFull;
        }

        var kept = db.Set<Recording>();
        return await TakesAsync(kept.Where(row => reeds.Contains(row.Reed)), going.Where(row => reeds.Contains(row.Reed)), RecordingLimits.OfStudent, upload.Bytes, ct).ConfigureAwait(false)
            && await TakesAsync(kept, going, RecordingLimits.OfStudio, upload.Bytes, ct).ConfigureAwait(false)
            ? null
            : RecordingRefusal.NoRoom;
    }

    private static async Task<bool> TakesAsync(IQueryable<Recording> kept, IQueryable<Upload> going, RecordingRoom room, int more, CancellationToken ct) =>
        room.Takes(
            await kept.CountAsync(ct).ConfigureAwait(false) + await going.CountAsync(ct).ConfigureAwait(false),
            await kept.SumAsync(row => (long)row.Bytes, ct).ConfigureAwait(false) + await going.SumAsync(row => (long)row.Bytes, ct).ConfigureAwait(false),
            more);
}
