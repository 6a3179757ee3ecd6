using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Data.TeachingNotes;

/// <summary>The pictures of notes and letters: bringing one, and giving it out to whoever may read what it stands in.</summary>
public sealed class NotePictureBook(IDbContextFactory<ClinicDb> databases, MediaFolder folder, TimeProvider time)
{
    private const string Verb = "keep-note-picture";
    private const string KeySigns = "abcdefghijkmnpqrstuvwxyz23456789";

    /// <summary>Keeps what is seen of a file. Its key comes from the operation, so that repeating it finds the same one.</summary>
    /// <param name="actor">Who brings it; only those who work here may.</param>
    /// <param name="file">The file as it came.</param>
    /// <param name="operation">What brings it.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<NotePictureView>> KeepAsync(Actor actor, ReadOnlyMemory<byte> file, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return new Outcome<NotePictureView>.NotFound();
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        operation = operation.OrFresh(time.GetUtcNow());
        var key = KeyOf(operation);
        if (await FindAsync(db, key, ct).ConfigureAwait(false) is { } kept)
        {
            return new Outcome<NotePictureView>.Done(kept);
        }

        var (clean, why) = NotePicture.Read(file.Span);
        if (clean is null)
        {
            return Refused(why!);
        }

        if (await db.Set<NotePicture>().CountAsync(ct).ConfigureAwait(false) >= NotePicture.Most)
        {
            return Refused("There is no room for more pictures. Please take one out of a note that isn’t needed any more.");
        }

        try
        {
            return await SaveAsync(db, actor, key, clean, operation, ct).ConfigureAwait(false);
        }
        catch (Exception trouble) when (MediaFolder.IsFull(trouble))
        {
            return Refused(RecordingRefusal.DiskFull.Words(RecordingKind.ArrivalPhoto));
        }
    }

    /// <summary>A picture, for those who work here; null when there is none such for this actor.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="key">Its key.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<NotePictureFile?> OpenAsync(Actor actor, string key, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await FileAsync(db.Set<NotePicture>().Where(picture => actor.WorksHere && picture.Key == key), ct).ConfigureAwait(false);
    }

    /// <summary>A picture of a letter, for whoever may read that letter: a student, and who answers for them, once it was sent with it.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="code">The batch that the letter is about.</param>
    /// <param name="key">The picture's key.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<NotePictureFile?> OpenInLetterAsync(Actor actor, BatchCode code, string key, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var batches = db.Set<Batch>().SeenBy(actor).Where(batch => batch.Code == code);
        return await FileAsync(actor.WorksHere ? db.PicturesUsedIn(batches).Where(picture => picture.Key == key) : db.PicturesSentIn(batches, key), ct).ConfigureAwait(false);
    }

    /// <summary>All the pictures of a letter as it stands, to be printed; none when there is no such batch for this actor.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="letter">The letter, which this actor read.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<IReadOnlyList<NotePictureFile>> OfLetterAsync(Actor actor, LetterDraft letter, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var keys = PictureMark.KeysIn(letter);
        if (keys.Count == 0)
        {
            return [];
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var batch = letter.Batch;
        var seen = db.PicturesUsedIn(db.Set<Batch>().SeenBy(actor).Where(row => row.Id == batch)).Where(picture => keys.Contains(picture.Key));
        return [.. (await seen.AsNoTracking().ToListAsync(ct).ConfigureAwait(false)).Select(picture => picture.In(folder))];
    }

    // First the file, then its row: a file without a row is swept.
    private async Task<Outcome<NotePictureView>> SaveAsync(ClinicDb db, Actor actor, string key, MediaReading.Clean clean, OperationId operation, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var file = MediaFolder.NewName();
        await folder.KeepAsync(file, clean.Bytes, ct).ConfigureAwait(false);
        db.Add(new NotePicture(key, file, clean, Convert.ToHexStringLower(SHA256.HashData(clean.Bytes.Span)), actor.Account, now));
        db.Note(operation, Verb, operation.Value, now);
        await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        return await FindAsync(db, key, ct).ConfigureAwait(false) is { } kept
            ? new Outcome<NotePictureView>.Done(kept)
            : new Outcome<NotePictureView>.Refused([DoneOperations.NotSaved]);
    }

    private static Outcome<NotePictureView> Refused(string why) => new Outcome<NotePictureView>.Refused([new(nameof(OwnNote.Picture), why)]);

    private static string KeyOf(OperationId operation) =>
        string.Concat(SHA256.HashData(operation.Value.ToByteArray()).Take(PictureMark.KeyLength).Select(part => KeySigns[part % KeySigns.Length]));

    private static Task<NotePictureView?> FindAsync(ClinicDb db, string key, CancellationToken ct) =>
        db.Set<NotePicture>().Where(picture => picture.Key == key).Select(picture => new NotePictureView(picture.Key, picture.Type, picture.Bytes)).SingleOrDefaultAsync(ct);

    private async Task<NotePictureFile?> FileAsync(IQueryable<NotePicture> which, CancellationToken ct) =>
        (await which.AsNoTracking().SingleOrDefaultAsync(ct).ConfigureAwait(false))?.In(folder);
}

/// <summary>A picture that is kept.</summary>
/// <param name="Key">The key that a letter names it by.</param>
/// <param name="Type">What kind of file it is.</param>
/// <param name="Bytes">How large it is.</param>
public sealed record NotePictureView(string Key, MediaType Type, int Bytes);

/// <summary>A picture to give out.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Type">What kind of file it is.</param>
/// <param name="Path">Where it lies.</param>
/// <param name="Sha256">The sum over it.</param>
public sealed record NotePictureFile(string Key, MediaType Type, string Path, string Sha256)
{
    /// <summary>A name of ours.</summary>
    public string FileName => $"picture-{Key}.{Type.Ending()}";
}
