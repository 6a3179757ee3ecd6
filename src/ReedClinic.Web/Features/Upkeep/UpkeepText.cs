namespace ReedClinic.Web.Features.Upkeep;

/// <summary>Names the words of the page about the machine behind the studio.</summary>
public sealed class UpkeepText;
