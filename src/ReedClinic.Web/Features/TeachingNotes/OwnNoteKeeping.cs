using System.Security.Cryptography;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Web.Features.TeachingNotes;

/// <summary>
/// Takes what the form of a note brought. A picture is kept before anything else, so that it isn't lost with a word that is refused:
/// a browser doesn't put a file back into its field.
/// </summary>
public sealed class OwnNoteKeeping(OwnNoteBook notes, NotePictureBook pictures)
{
    /// <summary>The button that offers a note no more.</summary>
    public const string Retire = "retire";

    /// <summary>The button that offers it again.</summary>
    public const string BringBack = "bring-back";

    /// <summary>The button that takes it away for good.</summary>
    public const string Delete = "delete";

    /// <summary>Keeps the picture that came with a form, and lets go of one that shall go; the form names it from then on.</summary>
    /// <param name="actor">Who sends it.</param>
    /// <param name="form">The form.</param>
    /// <param name="file">The file that came with it, if one did.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>Why the file isn't taken; empty when it was, or none came.</returns>
    public async Task<IReadOnlyList<Problem>> TakePictureAsync(Actor actor, OwnNoteForm form, IFormFile? file, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (form.WithoutPicture is not null)
        {
            (form.Picture, form.WithoutPicture) = (null, null);
        }

        if (file is not { Length: > 0 })
        {
            return [];
        }

        var bytes = new byte[Math.Min(file.Length, NotePicture.MostBytes + 1)];
        var stream = file.OpenReadStream();
        await using var _ = stream.ConfigureAwait(false);
        await stream.ReadExactlyAsync(bytes, ct).ConfigureAwait(false);
        var operation = new OperationId(new Guid(SHA256.HashData([.. form.Operation.ToByteArray(), .. SHA256.HashData(bytes)]).AsSpan(0, 16)));
        switch (await pictures.KeepAsync(actor, bytes, operation, ct).ConfigureAwait(false))
        {
            case Outcome<NotePictureView>.Done(var kept):
                form.Picture = kept.Key;
                return [];
            case Outcome<NotePictureView>.Refused(var problems):
                return problems;
            default:
                return [];
        }
    }

    /// <summary>Takes a note away for good; nothing that was typed beside the button counts.</summary>
    /// <param name="actor">Who presses it.</param>
    /// <param name="id">The note.</param>
    /// <param name="form">The form.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>Null when it is gone; else the note as it stands, which somebody changed meanwhile.</returns>
    public async Task<OwnNoteView?> DeleteAsync(Actor actor, OwnNoteId id, OwnNoteForm form, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(form);
        return await notes.DeleteAsync(actor, id, form.Version, form.OperationId, ct).ConfigureAwait(false) is Outcome<OwnNoteId>.Conflict
            ? await notes.FindAsync(actor, id, ct).ConfigureAwait(false)
            : null;
    }

    /// <summary>Keeps a note, or retires it, or brings it back, by the button that was pressed.</summary>
    /// <param name="actor">Who presses it.</param>
    /// <param name="id">The note; null for a new one.</param>
    /// <param name="form">The form.</param>
    /// <param name="ct">Stops it.</param>
    public Task<Outcome<OwnNoteView>> TakeAsync(Actor actor, OwnNoteId? id, OwnNoteForm form, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(form);
        return (id, form.Step) switch
        {
            (null, _) => notes.BeginAsync(actor, form.ToDomain(), form.OperationId, ct),
            ({ } known, Retire or BringBack) => notes.RetireAsync(actor, known, form.ToDomain(), form.Step == Retire, form.Version, form.OperationId, ct),
            ({ } known, _) => notes.WriteAsync(actor, known, form.ToDomain(), form.Version, form.OperationId, ct),
        };
    }
}
