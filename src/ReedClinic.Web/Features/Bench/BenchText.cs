namespace ReedClinic.Web.Features.Bench;

/// <summary>Marks the words of the bench: <c>BenchText.resx</c>.</summary>
public sealed class BenchText;
