namespace ReedClinic.Web.Features.Readings;

/// <summary>The words of this folder: see the resource file beside it.</summary>
public sealed class ReadingsText;
