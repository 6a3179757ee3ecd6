namespace ReedClinic.Web.Shared;

/// <summary>Marks the words that every page shares: <c>SharedText.resx</c>.</summary>
public sealed class SharedText;
