namespace ReedClinic.Web.Features.Journey;

/// <summary>Marks the words of a batch's journey: <c>JourneyText.resx</c>.</summary>
public sealed class JourneyText;
