namespace ReedClinic.Web.Features.Catalogues;

/// <summary>Names the words of the catalogue’s pages.</summary>
public sealed class CatalogueText;
