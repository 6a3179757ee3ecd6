namespace ReedClinic.Web.Features.Letters;

/// <summary>Marks the words round a letter: <c>LetterText.resx</c>. The letter's own words are composed in Domain.</summary>
public sealed class LetterText;
