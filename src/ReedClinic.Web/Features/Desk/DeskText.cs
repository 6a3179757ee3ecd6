namespace ReedClinic.Web.Features.Desk;

/// <summary>Marks the words of the desk: <c>DeskText.resx</c>.</summary>
public sealed class DeskText;
