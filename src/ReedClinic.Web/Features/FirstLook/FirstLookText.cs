namespace ReedClinic.Web.Features.FirstLook;

/// <summary>Marks the words of the first look: <c>FirstLookText.resx</c>.</summary>
public sealed class FirstLookText;
