namespace ReedClinic.Web.Features.Diagnosis;

/// <summary>What the quiet line and the page of evidence need.</summary>
public static class DiagnosisSetup
{
    /// <summary>Adds it to the host.</summary>
    /// <param name="builder">The host.</param>
    public static void AddReasoning(this WebApplicationBuilder builder) => builder.Services.AddSingleton<ReasonDesk>();
}
