namespace ReedClinic.Web.Features.BenchNote;

/// <summary>Marks the words of the note page: <c>BenchNoteText.resx</c>.</summary>
public sealed class BenchNoteText;
