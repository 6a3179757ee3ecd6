namespace ReedClinic.Web.Features.Guardians;

/// <summary>Marks the words around guardians: <c>GuardianText.resx</c>.</summary>
public sealed class GuardianText;
