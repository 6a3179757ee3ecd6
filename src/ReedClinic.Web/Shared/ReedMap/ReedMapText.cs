namespace ReedClinic.Web.Shared.ReedMap;

/// <summary>Marks the words of the reed map: <c>ReedMapText.resx</c>.</summary>
public sealed class ReedMapText;
