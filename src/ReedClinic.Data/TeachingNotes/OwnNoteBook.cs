using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Data.TeachingNotes;

/// <summary>The studio's own teaching notes: everybody who teaches here uses and changes all of them. For teachers and owners.</summary>
public sealed class OwnNoteBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private const string WriteVerb = "write-teaching-note";
    private const string RetireVerb = "retire-teaching-note";
    internal const string DeleteVerb = "delete-teaching-note";

    /// <summary>All of them, those that were retired too, by title.</summary>
    public async Task<IReadOnlyList<OwnNoteView>> AllAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var notes = await db.Set<OwnNote>().AsNoTracking().Where(note => actor.WorksHere).ToListAsync(ct).ConfigureAwait(false);
        return [.. notes.OrderBy(note => note.Title, StringComparer.OrdinalIgnoreCase).Select(note => View(note, null))];
    }

    /// <summary>What the studio added to the kinds of finding: a note may be filed under those too. Null for whoever doesn’t work here.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<OwnKinds?> KindsAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return (await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false)).Own;
    }

    /// <summary>One of them; null when there is none such for this actor.</summary>
    public async Task<OwnNoteView?> FindAsync(Actor actor, OwnNoteId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await FindAsync(db, actor, id, ct).ConfigureAwait(false);
    }

    /// <summary>Those that are offered for a letter, their fields filled from its batch; none when there is no such batch for this actor.</summary>
    public async Task<IReadOnlyList<NoteOffer>> OfferAsync(Actor actor, BatchCode code, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var notes = await db.Set<OwnNote>().AsNoTracking().Where(note => actor.WorksHere && note.RetiredAt == null).ToListAsync(ct).ConfigureAwait(false);
        return notes.Count > 0 && await LetterReader.ReadAsync(db, code, actor.Account, ct).ConfigureAwait(false) is { } letter
            ? NoteOffer.Of(notes, letter.Material)
            : [];
    }

    /// <summary>Begins one. It will have the id of this operation, so that repeating it finds the same one.</summary>
    public Task<Outcome<OwnNoteView>> BeginAsync(Actor actor, OwnNoteWords words, OperationId operation, CancellationToken ct)
    {
        operation = operation.OrFresh(time.GetUtcNow());
        return ChangeAsync(new(actor, new(operation.Value), words, WriteVerb, operation, Guid.Empty), begins: true, ct);
    }

    /// <summary>Writes one anew. A conflict gives what somebody else wrote meanwhile; where nothing would change there is none.</summary>
    public Task<Outcome<OwnNoteView>> WriteAsync(Actor actor, OwnNoteId id, OwnNoteWords words, Guid version, OperationId operation, CancellationToken ct) =>
        ChangeAsync(new(actor, id, words, WriteVerb, operation, version), begins: false, ct);

    /// <summary>Writes one anew, and offers it no more, or again. A letter that holds its words keeps them.</summary>
    public Task<Outcome<OwnNoteView>> RetireAsync(
        Actor actor, OwnNoteId id, OwnNoteWords words, bool retired, Guid version, OperationId operation, CancellationToken ct) =>
        ChangeAsync(new(actor, id, words, RetireVerb, operation, version, retired), begins: false, ct);

    /// <summary>
    /// Takes one away for good. Letters that hold its words keep them, and so does its picture wherever a letter that was kept has it;
    /// one that isn't kept yet has a day.
    /// </summary>
    /// <param name="actor">Who does it.</param>
    /// <param name="id">Which.</param>
    /// <param name="version">The version that was looked at.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<OwnNoteId>> DeleteAsync(Actor actor, OwnNoteId id, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        operation = operation.OrFresh(now);
        if (actor.WorksHere && await db.WasDoneAsync(operation, DeleteVerb, id.Value, ct).ConfigureAwait(false))
        {
            return new Outcome<OwnNoteId>.Done(id);
        }

        if (await db.Set<OwnNote>().SingleOrDefaultAsync(row => actor.WorksHere && row.Id == id, ct).ConfigureAwait(false) is not { } note)
        {
            return new Outcome<OwnNoteId>.NotFound();
        }

        db.ExpectVersion(note, version);
        db.Remove(note);
        db.Note(operation, DeleteVerb, id.Value, now);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false) || await db.WasDoneAsync(operation, DeleteVerb, id.Value, ct).ConfigureAwait(false)
            ? new Outcome<OwnNoteId>.Done(id)
            : new Outcome<OwnNoteId>.Conflict(id);
    }

    private async Task<Outcome<OwnNoteView>> ChangeAsync(NoteDeed deed, bool begins, CancellationToken ct)
    {
        var (actor, id, _, verb, operation, version, _) = deed;
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        operation = Saying(operation.OrFresh(now), deed.Words);
        var note = await db.Set<OwnNote>().SingleOrDefaultAsync(row => actor.WorksHere && row.Id == id, ct).ConfigureAwait(false);
        if (!actor.WorksHere || (note is null && !begins))
        {
            return new Outcome<OwnNoteView>.NotFound();
        }

        if (await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false))
        {
            return new Outcome<OwnNoteView>.Done((await FindAsync(db, actor, id, ct).ConfigureAwait(false))!);
        }

        var changed = note ?? new OwnNote(id, actor.Account, now);
        if (await WriteAsync(db, changed, deed, now, ct).ConfigureAwait(false) is { Count: > 0 } problems)
        {
            return new Outcome<OwnNoteView>.Refused(problems);
        }

        if (note is null)
        {
            db.Add(changed);
        }
        else if (db.Entry(note).State != EntityState.Unchanged)
        {
            db.ExpectVersion(note, version);
        }

        db.Note(operation, verb, id.Value, now);
        var saved = await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false) || await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false);
        return Answer(await FindAsync(db, actor, id, ct).ConfigureAwait(false), saved);
    }

    // The same form again repeats nothing, and other words in an old form aren't taken for a repetition.
    private static OperationId Saying(OperationId operation, OwnNoteWords words) => new(new Guid(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join(
        '\u001f', [operation.Value.ToString("N"), words.Title, words.Text?.ReplaceLineEndings("\n"), words.Link, words.Picture, words.PictureWords, .. words.Kinds.Select(kind => kind.Value)]))).AsSpan(0, 16)));

    private static async Task<IReadOnlyList<Problem>> WriteAsync(ClinicDb db, OwnNote note, NoteDeed deed, DateTimeOffset now, CancellationToken ct)
    {
        List<Problem> problems = [.. note.Write(deed.Words, now, (await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false)).Own)];
        if (deed.Words.Picture is { } picture && !await db.Set<NotePicture>().AnyAsync(row => row.Key == picture, ct).ConfigureAwait(false))
        {
            problems.Add(new(nameof(OwnNote.Picture), "This picture isn’t here any more. Please choose it again."));
        }

        note.Retire(deed.Retired ?? note.RetiredAt is not null, now);
        return problems;
    }

    private static Outcome<OwnNoteView> Answer(OwnNoteView? stands, bool saved) => stands switch
    {
        null => new Outcome<OwnNoteView>.Refused([DoneOperations.NotSaved]),
        _ when saved => new Outcome<OwnNoteView>.Done(stands),
        _ => new Outcome<OwnNoteView>.Conflict(stands),
    };

    private static async Task<OwnNoteView?> FindAsync(ClinicDb db, Actor actor, OwnNoteId id, CancellationToken ct)
    {
        if (await db.Set<OwnNote>().AsNoTracking().SingleOrDefaultAsync(row => actor.WorksHere && row.Id == id, ct).ConfigureAwait(false) is not { } note)
        {
            return null;
        }

        var by = note.MadeBy.Value;
        return View(note, await db.Users.Where(user => user.Id == by).Select(user => user.DisplayName).SingleOrDefaultAsync(ct).ConfigureAwait(false)) with
        {
            InUnsent = note.Picture is { } picture ? await db.UnsentWithPictureAsync(picture, ct).ConfigureAwait(false) : [],
        };
    }

    private static OwnNoteView View(OwnNote note, string? by) =>
        new(note.Id, note.Title, note.Text, note.Link, note.Kinds, by, note.ChangedAt, note.RetiredAt, note.Version)
        {
            Picture = note.Picture,
            PictureWords = note.PictureWords,
        };

    private sealed record NoteDeed(Actor Actor, OwnNoteId Id, OwnNoteWords Words, string Verb, OperationId Operation, Guid Version, bool? Retired = null);
}

/// <summary>A teaching note of the studio's own.</summary>
/// <param name="Id">Which.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Text">The passage, with its fields.</param>
/// <param name="Link">Where one can read or see more.</param>
/// <param name="Kinds">The findings it is filed under.</param>
/// <param name="By">Who wrote it first; null when that account is gone, or in a list.</param>
/// <param name="ChangedAt">When it was last changed.</param>
/// <param name="RetiredAt">Since when it isn't offered; null while it is.</param>
/// <param name="Version">The version to save against.</param>
public sealed record OwnNoteView(
    OwnNoteId Id, string Title, string Text, string? Link, IReadOnlyList<FindingKindId> Kinds, string? By,
    DateTimeOffset ChangedAt, DateTimeOffset? RetiredAt, Guid Version)
{
    /// <summary>The key of its picture; null for none.</summary>
    public string? Picture { get; init; }

    /// <summary>What the picture shows.</summary>
    public string? PictureWords { get; init; }

    /// <summary>The batches whose letters have its picture and aren't sent; none in a list.</summary>
    public IReadOnlyList<BatchCode> InUnsent { get; init; } = [];
}
