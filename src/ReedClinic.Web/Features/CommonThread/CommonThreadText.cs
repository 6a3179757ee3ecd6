namespace ReedClinic.Web.Features.CommonThread;

/// <summary>Marks the words of the common thread: <c>CommonThreadText.resx</c>.</summary>
public sealed class CommonThreadText;
