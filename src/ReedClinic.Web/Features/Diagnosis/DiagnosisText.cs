namespace ReedClinic.Web.Features.Diagnosis;

/// <summary>Marker for the words of what is reasoned of a reed.</summary>
public sealed class DiagnosisText;
