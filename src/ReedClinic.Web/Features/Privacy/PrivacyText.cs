namespace ReedClinic.Web.Features.Privacy;

/// <summary>Marks the words about what is kept: <c>PrivacyText.resx</c>.</summary>
public sealed class PrivacyText;
