namespace ReedClinic.Web.Features.Catalogues;

/// <summary>Something that can be chosen from a list.</summary>
/// <param name="Value">What is sent.</param>
/// <param name="Name">What stands there.</param>
/// <param name="Group">The heading it stands under; null for none.</param>
public sealed record ListedOption(string Value, string Name, string? Group = null);
