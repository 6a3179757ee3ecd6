namespace ReedClinic.Web.Features.TeachingNotes;

/// <summary>Marks the words of the studio's own teaching notes: <c>TeachingNotesText.resx</c>.</summary>
public sealed class TeachingNotesText;
