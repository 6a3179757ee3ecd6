namespace ReedClinic.Web.Features.Letters.Links;

/// <summary>Marks the words round private links to letters: <c>LetterLinkText.resx</c>.</summary>
public sealed class LetterLinkText;
