namespace ReedClinic.Web.Features.Recordings;

/// <summary>The words of this folder: see the resource file beside it.</summary>
public sealed class RecordingsText;
