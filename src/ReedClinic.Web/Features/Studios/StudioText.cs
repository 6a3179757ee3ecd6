namespace ReedClinic.Web.Features.Studios;

/// <summary>Names the words of the studio's own page.</summary>
public sealed class StudioText;
