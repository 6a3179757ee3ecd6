using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.People;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Web.Features.TeachingNotes;

/// <summary>What was typed for a note, as text.</summary>
public sealed class OwnNoteForm
{
    /// <summary>What it is called.</summary>
    public string? Title { get; set; }

    /// <summary>The passage.</summary>
    public string? Text { get; set; }

    /// <summary>Where one can read more.</summary>
    public string? Link { get; set; }

    /// <summary>The findings that were ticked.</summary>
    public string[] Kinds { get; set => field = value ?? []; } = [];

    /// <summary>The key of its picture.</summary>
    public string? Picture { get; set; }

    /// <summary>What the picture shows.</summary>
    public string? PictureWords { get; set; }

    /// <summary>Whether it was ticked that the picture shall go.</summary>
    public string? WithoutPicture { get; set; }

    /// <summary>The version that the form was opened on.</summary>
    public Guid Version { get; set; }

    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>Which button was pressed.</summary>
    public string? Step { get; set; }

    /// <summary>A form with what stands.</summary>
    /// <param name="note">The note.</param>
    public static OwnNoteForm Of(OwnNoteView note)
    {
        ArgumentNullException.ThrowIfNull(note);
        return new() { Title = note.Title, Text = note.Text, Link = note.Link, Kinds = [.. note.Kinds.Select(kind => kind.Value)], Version = note.Version, Picture = note.Picture, PictureWords = note.PictureWords };
    }

    /// <summary>What was typed, for the studio's rules.</summary>
    public OwnNoteWords ToDomain() => new(Title, Text, Link, [.. Kinds.Select(kind => new FindingKindId(kind))])
    {
        Picture = string.IsNullOrEmpty(Picture) ? null : Picture,
        PictureWords = PictureWords,
    };

    /// <summary>What the form was sent with.</summary>
    public OperationId OperationId => new(Operation);
}
