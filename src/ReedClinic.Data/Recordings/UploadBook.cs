using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Data.Recordings;

/// <summary>
/// Sending a sound or a photograph, piece by piece, so that a lost connection loses one piece at most: begin, as many pieces as
/// it takes, finish. Each may be repeated. OWASP ASVS 5.0: 5.2.1, 5.2.2, 5.2.4.
/// </summary>
public sealed class UploadBook(IDbContextFactory<ClinicDb> databases, MediaFolder folder, TimeProvider time, BenchNews? news = null)
{
    private const string Keep = "keep-recording";

    // Reading a file takes twice its size in memory for a moment: two at a time are enough, and never the same one twice.
    private static readonly SemaphoreSlim[] Readers = [new(1), new(1)];

    /// <summary>Begins. The recording will have the id of this operation, so that repeating it finds the same one.</summary>
    public async Task<Outcome<UploadView>> StartAsync(Actor actor, RecordingWish wish, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(wish);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var id = new RecordingId(operation.OrFresh(now).Value);
        var place = await db.PlaceOfAsync(actor, wish.Reed, ct).ConfigureAwait(false);
        if (place is null || !(actor.WorksHere || wish.Kind.IsOfArrival()))
        {
            return new Outcome<UploadView>.NotFound();
        }

        if (await GoingAsync(db, actor, id, ct).ConfigureAwait(false) is { } going)
        {
            return new Outcome<UploadView>.Done(going);
        }

        var sequence = await db.Set<BenchEntry>().Where(entry => entry.ReedId == wish.Reed).MaxAsync(entry => (int?)entry.Sequence, ct).ConfigureAwait(false) ?? 0;
        var stamp = new UploadStamp(id, MediaFolder.NewName(), actor.Account, actor.WorksHere, sequence, now);
        return (place.Hindrance(actor, wish.Kind), Upload.Begin(stamp, wish)) switch
        {
            ({ } hindrance, _) => new Outcome<UploadView>.Refused([hindrance]),
            (_, Outcome<Upload>.Refused(var problems)) => new Outcome<UploadView>.Refused(problems),
            (_, Outcome<Upload>.Done(var upload)) => await databases.PatientlyAsync((attempt, stop) => BeginAsync(attempt, actor, upload, stop), ct).ConfigureAwait(false),
            _ => new Outcome<UploadView>.NotFound(),
        };
    }

    /// <summary>How much of a file is here; null when nothing is on its way that this actor sends.</summary>
    public async Task<UploadView?> FindAsync(Actor actor, RecordingId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await GoingAsync(db, actor, id, ct).ConfigureAwait(false);
    }

    /// <summary>
    /// Takes one piece. It is written through to the disk before it counts; a piece that is here already changes nothing, and
    /// one that is longer than announced is cut off while it comes. What arrived only in part isn't kept.
    /// </summary>
    /// <param name="actor">Who sends it.</param>
    /// <param name="id">Of which file.</param>
    /// <param name="offset">Where in the file it begins.</param>
    /// <param name="piece">The piece.</param>
    /// <param name="most">The longest piece that is taken, in bytes.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<ChunkAnswer> AppendAsync(Actor actor, RecordingId id, int offset, Stream piece, int most, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(piece);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await MineAsync(db, actor, id, ct).ConfigureAwait(false) is not { } upload)
        {
            return new ChunkAnswer(ChunkEnd.NotFound, 0);
        }

        if (offset != upload.Received)
        {
            return new ChunkAnswer(offset >= 0 && offset < upload.Received ? ChunkEnd.Taken : ChunkEnd.Elsewhere, upload.Received);
        }

        try
        {
            if (await folder.WritePartAsync(upload, piece, most, ct).ConfigureAwait(false) is not { } length)
            {
                return new ChunkAnswer(ChunkEnd.TooLarge, offset);
            }

            var now = offset + length;
            var taken = await db.Set<Upload>().Where(row => row.Id == id && row.Received == offset)
                .ExecuteUpdateAsync(row => row.SetProperty(part => part.Received, now), ct).ConfigureAwait(false);
            return taken == 1 ? new ChunkAnswer(ChunkEnd.Taken, now) : await StandsAsync(db, actor, id, ct).ConfigureAwait(false);
        }
        catch (Exception trouble) when (MediaFolder.IsFull(trouble))
        {
            return new ChunkAnswer(ChunkEnd.DiskFull, offset);
        }
        catch (PartInUseException)
        {
            return await StandsAsync(db, actor, id, ct).ConfigureAwait(false);
        }
    }

    /// <summary>Finishes: what arrived is compared with what was sent, read, and what is kept of it is kept.</summary>
    /// <param name="actor">Who sends it.</param>
    /// <param name="id">Which file.</param>
    /// <param name="sha256">The sum over the whole file as it was sent, in hexadecimal; null where nobody made one.</param>
    /// <param name="operation">What finishes it.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<RecordingView>> FinishAsync(Actor actor, RecordingId id, string? sha256, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var readers = Readers[id.GetHashCode() & 1];
        await readers.WaitAsync(ct).ConfigureAwait(false);
        try
        {
            return await FinishAloneAsync(actor, id, sha256, operation, ct).ConfigureAwait(false);
        }
        finally
        {
            readers.Release();
        }
    }

    private async Task<Outcome<RecordingView>> FinishAloneAsync(Actor actor, RecordingId id, string? sha256, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await KeptAsync(db, actor, id, ct).ConfigureAwait(false) is { } before)
        {
            return new Outcome<RecordingView>.Done(before);
        }

        if (await MineAsync(db, actor, id, ct).ConfigureAwait(false) is not { } upload)
        {
            return new Outcome<RecordingView>.NotFound();
        }

        if ((upload.Refusal ?? (upload.IsWhole ? null : RecordingRefusal.NotWhole)) is { } why)
        {
            return new Outcome<RecordingView>.Refused([why.Problem(upload.Kind)]);
        }

        try
        {
            return await ReadAsync(db, actor, upload, sha256, operation, ct).ConfigureAwait(false);
        }
        catch (Exception trouble) when (MediaFolder.IsFull(trouble))
        {
            return new Outcome<RecordingView>.Refused([RecordingRefusal.DiskFull.Problem(upload.Kind)]);
        }
    }

    private async Task<Outcome<RecordingView>> ReadAsync(ClinicDb db, Actor actor, Upload upload, string? sha256, OperationId operation, CancellationToken ct)
    {
        var bytes = await folder.ReadPartAsync(upload.File, ct).ConfigureAwait(false);
        RecordingRefusal? refusal = null;
        if (bytes.Length != upload.Bytes || (sha256 is not null && !string.Equals(sha256, Convert.ToHexString(SHA256.HashData(bytes)), StringComparison.OrdinalIgnoreCase)))
        {
            upload.StartAgain();
            refusal = RecordingRefusal.Changed;
        }

        var read = refusal is null ? MediaFile.Read(bytes, upload.Kind) : null;
        if (read is MediaReading.Refused(var why))
        {
            upload.Refuse(why);
            refusal = why;
        }

        if (read is not MediaReading.Clean clean)
        {
            await db.SaveChangesAsync(ct).ConfigureAwait(false);
            folder.RemovePart(upload.File);
            return new Outcome<RecordingView>.Refused([refusal!.Value.Problem(upload.Kind)]);
        }

        await folder.KeepAsync(upload.File, clean.Bytes, ct).ConfigureAwait(false);
        return await databases.PatientlyAsync((attempt, stop) => SaveAsync(attempt, actor, upload.Id, clean, operation, stop), ct).ConfigureAwait(false);
    }

    // First the file, then its row: a row never lacks its file, and a file without a row is swept.
    private async Task<Outcome<RecordingView>> SaveAsync(Attempt attempt, Actor actor, RecordingId id, MediaReading.Clean clean, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.Set<Upload>().SingleOrDefaultAsync(row => row.Id == id && row.By == actor.Account, ct).ConfigureAwait(false) is not { } upload)
        {
            return await StandsOrNotAsync(db, actor, id, ct).ConfigureAwait(false); // an earlier try kept it, or somebody removed it
        }

        var now = time.GetUtcNow();
        var transaction = await db.HoldConsentAsync(attempt, db.BatchOf(upload.Reed), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var place = await db.PlaceOfAsync(actor, upload.Reed, ct).ConfigureAwait(false);
        if (place is null || place.Hindrance(actor, upload.Kind) is not null)
        {
            // Where the reed went, the file is swept.
            return place?.Hindrance(actor, upload.Kind) is { } hindrance ? new Outcome<RecordingView>.Refused([hindrance]) : new Outcome<RecordingView>.NotFound();
        }

        var recording = new Recording(upload, clean, Convert.ToHexStringLower(SHA256.HashData(clean.Bytes.Span)), now);
        db.Add(recording);
        if (recording.Kind.IsPlayed())
        {
            db.Add(new SoundReading(recording.Id, now));
            db.AskToRead(recording.Id, place.Student, SoundJobs.First(recording.Id), now);
        }

        db.Remove(upload);
        db.Note(operation, Keep, id.Value, now);
        if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            await transaction.CommitAsync(ct).ConfigureAwait(false);
            folder.RemovePart(upload.File);
            news?.Tell(upload.Reed);
        }

        return await StandsOrNotAsync(db, actor, id, ct).ConfigureAwait(false);
    }

    private static async Task<Outcome<RecordingView>> StandsOrNotAsync(ClinicDb db, Actor actor, RecordingId id, CancellationToken ct) =>
        await KeptAsync(db, actor, id, ct).ConfigureAwait(false) is { } kept
            ? new Outcome<RecordingView>.Done(kept)
            : new Outcome<RecordingView>.Refused([DoneOperations.NotSaved]);

    // Nobody else begins meanwhile, so that many at once can't take more room than there is.
    private async Task<Outcome<UploadView>> BeginAsync(Attempt attempt, Actor actor, Upload upload, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldConsentAsync(attempt, db.BatchOf(upload.Reed), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        await db.HoldAloneAsync(AloneFor.MediaRoom, ct).ConfigureAwait(false);
        if (await db.PlaceOfAsync(actor, upload.Reed, ct).ConfigureAwait(false) is not { } place)
        {
            return new Outcome<UploadView>.NotFound();
        }

        if ((place.Hindrance(actor, upload.Kind) ?? (await db.LacksRoomAsync(place.Student, upload, ct).ConfigureAwait(false))?.Problem(upload.Kind)) is { } why)
        {
            return new Outcome<UploadView>.Refused([why]);
        }

        db.Add(upload);
        if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            await transaction.CommitAsync(ct).ConfigureAwait(false);
            return new Outcome<UploadView>.Done(new UploadView(upload.Id, 0, upload.Bytes));
        }

        // The same beginning was quicker, or somebody else's operation has this id.
        await transaction.RollbackAsync(ct).ConfigureAwait(false);
        return await GoingAsync(db, actor, upload.Id, ct).ConfigureAwait(false) is { } going
            ? new Outcome<UploadView>.Done(going)
            : new Outcome<UploadView>.Refused([DoneOperations.NotSaved]);
    }

    private static async Task<ChunkAnswer> StandsAsync(ClinicDb db, Actor actor, RecordingId id, CancellationToken ct) =>
        await GoingAsync(db, actor, id, ct).ConfigureAwait(false) is { } stands
            ? new ChunkAnswer(ChunkEnd.Elsewhere, stands.Received)
            : new ChunkAnswer(ChunkEnd.NotFound, 0);

    // Rights are asked for with every piece: whoever lost them in between sends nothing more.
    private static async Task<Upload?> MineAsync(ClinicDb db, Actor actor, RecordingId id, CancellationToken ct)
    {
        var upload = await db.Set<Upload>().SingleOrDefaultAsync(row => row.Id == id && row.By == actor.Account, ct).ConfigureAwait(false);
        return upload is not null && (actor.WorksHere || upload.Kind.IsOfArrival())
            && await db.PlaceOfAsync(actor, upload.Reed, ct).ConfigureAwait(false) is { } place && place.Hindrance(actor, upload.Kind) is null
            ? upload
            : null;
    }

    private static async Task<RecordingView?> KeptAsync(ClinicDb db, Actor actor, RecordingId id, CancellationToken ct) =>
        await db.RecordingsSeenBy(actor).AsNoTracking().SingleOrDefaultAsync(row => row.Id == id && row.RecordedBy == actor.Account, ct).ConfigureAwait(false) is { } kept
        && await db.PlaceOfAsync(actor, kept.Reed, ct).ConfigureAwait(false) is { } place
            ? kept.ViewFor(actor, place)
            : null;

    private static async Task<UploadView?> GoingAsync(ClinicDb db, Actor actor, RecordingId id, CancellationToken ct) =>
        await MineAsync(db, actor, id, ct).ConfigureAwait(false) is { } upload ? new UploadView(upload.Id, upload.Received, upload.Bytes)
        : await KeptAsync(db, actor, id, ct).ConfigureAwait(false) is { } kept ? new UploadView(kept.Id, kept.Bytes, kept.Bytes)
        : null;
}
