namespace ReedClinic.Web.Features.Arrival;

/// <summary>Marks the words of the arrival pages: <c>ArrivalText.resx</c>.</summary>
public sealed class ArrivalText;
