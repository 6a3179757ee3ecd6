namespace ReedClinic.Web.Features.BenchNote;

/// <summary>What was typed on the note page.</summary>
public sealed class NoteForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The note.</summary>
    public string? Words { get; set; }
}
