namespace ReedClinic.Web.Mailing;

/// <summary>Marks the words of mails: <c>MailText.resx</c>.</summary>
public sealed class MailText;
