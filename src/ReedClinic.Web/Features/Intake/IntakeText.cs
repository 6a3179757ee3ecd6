namespace ReedClinic.Web.Features.Intake;

/// <summary>Marks the words of announcing a batch: <c>IntakeText.resx</c>.</summary>
public sealed class IntakeText;
