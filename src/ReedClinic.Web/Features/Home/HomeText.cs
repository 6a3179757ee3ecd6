namespace ReedClinic.Web.Features.Home;

/// <summary>Marks the words of the first page: <c>HomeText.resx</c>.</summary>
public sealed class HomeText;
