namespace ReedClinic.Web.Account;

/// <summary>Marks the words of signing in and up: <c>AccountText.resx</c>.</summary>
public sealed class AccountText;
