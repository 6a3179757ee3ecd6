namespace ReedClinic.Web.Features.OverTime;

/// <summary>Marks the words of reeds over time: <c>OverTimeText.resx</c>.</summary>
public sealed class OverTimeText;
