namespace ReedClinic.Web.Features.Slip;

/// <summary>Marks the words of the slip: <c>SlipText.resx</c>.</summary>
public sealed class SlipText;
