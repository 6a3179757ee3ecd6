namespace ReedClinic.Web.Features.People;

/// <summary>Marks the words of the pages about who is here: <c>PeopleText.resx</c>.</summary>
public sealed class PeopleText;
