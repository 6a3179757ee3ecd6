namespace ReedClinic.Web.Features.Batches;

/// <summary>Marks the words of a batch's own page: <c>BatchText.resx</c>.</summary>
public sealed class BatchText;
