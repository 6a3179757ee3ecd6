using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Data.TeachingNotes;

internal sealed class NotePictureConfiguration : IEntityTypeConfiguration<NotePicture>
{
    public void Configure(EntityTypeBuilder<NotePicture> builder)
    {
        // A picture never changes: triggers in both databases say so too.
        builder.ToTable("NotePictures");
        builder.HasKey(picture => picture.Key);
        builder.Property(picture => picture.Key).HasMaxLength(PictureMark.KeyLength).ValueGeneratedNever();
        builder.Property(picture => picture.File).HasMaxLength(MediaFolder.NameLength);
        builder.Property(picture => picture.Sha256).HasMaxLength(64);
        builder.HasIndex(picture => picture.File).IsUnique();
    }
}

internal sealed class PictureUseConfiguration : IEntityTypeConfiguration<PictureUse>
{
    public void Configure(EntityTypeBuilder<PictureUse> builder)
    {
        builder.ToTable("LetterPictures");
        builder.HasKey(use => new { use.Batch, use.Picture });
        builder.Property(use => use.Picture).HasMaxLength(PictureMark.KeyLength);
        builder.HasOne<Batch>().WithMany().HasForeignKey(use => use.Batch).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<NotePicture>().WithMany().HasForeignKey(use => use.Picture).OnDelete(DeleteBehavior.Restrict);
    }
}

/// <summary>Which pictures stand where.</summary>
internal static class NotePictures
{
    /// <summary>The keys of a letter's pictures that there are.</summary>
    public static async Task<IReadOnlySet<string>> KnownPicturesAsync(this ClinicDb db, LetterDraft letter, CancellationToken ct)
    {
        var keys = PictureMark.KeysIn(letter);
        return keys.Count == 0 ? new HashSet<string>() : (await db.Set<NotePicture>().Where(picture => keys.Contains(picture.Key)).Select(picture => picture.Key).ToListAsync(ct).ConfigureAwait(false)).ToHashSet();
    }

    /// <summary>Notes which pictures a letter uses, in what is about to be saved. They stay with it, also when its words change: earlier versions keep theirs.</summary>
    public static async Task UsePicturesAsync(this ClinicDb db, LetterDraft letter, CancellationToken ct)
    {
        var known = await db.KnownPicturesAsync(letter, ct).ConfigureAwait(false);
        if (known.Count > 0)
        {
            var batch = letter.Batch;
            var noted = await db.Set<PictureUse>().Where(use => use.Batch == batch).Select(use => use.Picture).ToListAsync(ct).ConfigureAwait(false);
            db.AddRange(known.Except(noted).Select(key => new PictureUse(batch, key)));
        }
    }

    /// <summary>The pictures that letters about these batches use, sent or not.</summary>
    public static IQueryable<NotePicture> PicturesUsedIn(this ClinicDb db, IQueryable<Batch> batches) =>
        from picture in db.Set<NotePicture>()
        where db.Set<PictureUse>().Any(use => use.Picture == picture.Key && batches.Any(batch => batch.Id == use.Batch))
        select picture;

    /// <summary>One picture, if a letter about these batches was sent with it.</summary>
    public static IQueryable<NotePicture> PicturesSentIn(this ClinicDb db, IQueryable<Batch> batches, string key) =>
        db.PicturesUsedIn(
            from batch in batches
            where db.Set<LetterSending>().Any(sending => sending.Batch == batch.Id
                && db.Set<LetterVersion>().Any(version => version.Batch == sending.Batch && version.Number == sending.VersionNumber && version.Payload.Contains(key)))
            select batch).Where(picture => picture.Key == key);

    /// <summary>All the pictures of letters that were sent, as far as their files are there.</summary>
    public static async Task<IReadOnlyList<NotePictureFile>> PicturesOfAsync(this ClinicDb db, IReadOnlyList<SentLetter> letters, MediaFolder folder, CancellationToken ct)
    {
        List<string> keys = [.. letters.SelectMany(letter => PictureMark.KeysIn(letter.Letter)).Distinct()];
        var rows = keys.Count == 0 ? [] : await db.Set<NotePicture>().AsNoTracking().Where(picture => keys.Contains(picture.Key)).OrderBy(picture => picture.Key).ToListAsync(ct).ConfigureAwait(false);
        return [.. rows.Where(picture => folder.Has(picture.File)).Select(picture => picture.In(folder))];
    }

    /// <summary>A letter that was sent with its pictures.</summary>
    public static async Task<SentLetter> WithPicturesAsync(this ClinicDb db, SentLetter letter, MediaFolder folder, CancellationToken ct) =>
        letter with { Pictures = await db.PicturesOfAsync([letter], folder, ct).ConfigureAwait(false) };

    /// <summary>The batches whose letters use a picture and weren't sent yet.</summary>
    public static async Task<IReadOnlyList<BatchCode>> UnsentWithPictureAsync(this ClinicDb db, string key, CancellationToken ct) =>
        await (from batch in db.Set<Batch>()
               where db.Set<PictureUse>().Any(use => use.Batch == batch.Id && use.Picture == key) && !db.Set<LetterSending>().Any(sending => sending.Batch == batch.Id)
               orderby batch.Code
               select batch.Code).ToListAsync(ct).ConfigureAwait(false);

    /// <summary>
    /// Those that stood in no note and no letter when a moment came. While notes are being changed all are left alone: somebody may be
    /// writing a letter with a picture that was just taken out of its note, or went with it.
    /// </summary>
    public static IQueryable<NotePicture> PicturesUnused(this ClinicDb db, DateTimeOffset since) =>
        from picture in db.Set<NotePicture>()
        where picture.MadeAt <= since && !db.Set<OwnNote>().Any(note => note.ChangedAt > since) && !db.Set<DoneOperation>().Any(done => done.Verb == OwnNoteBook.DeleteVerb && done.DoneAt > since) && !db.Set<OwnNote>().Any(note => note.Picture == picture.Key) && !db.Set<PictureUse>().Any(use => use.Picture == picture.Key)
        select picture;

    public static NotePictureFile In(this NotePicture picture, MediaFolder folder) => new(picture.Key, picture.Type, folder.PathOf(picture.File), picture.Sha256);
}
