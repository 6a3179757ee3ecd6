namespace ReedClinic.Web.Account.Links;

/// <summary>Marks the words of the pages that one-time links lead to, and that ask for one: <c>LinkText.resx</c>.</summary>
public sealed class LinkText;
