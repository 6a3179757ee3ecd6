using ReedClinic.Data.Jobs;
using ReedClinic.Web.Features.Letters.Links;

namespace ReedClinic.Web.Mailing;

/// <summary>Which page the link of a mail leads to.</summary>
public static class MailPaths
{
    /// <summary>The path, with the secret in it where the mail has one; null when it leads nowhere.</summary>
    /// <param name="mail">The mail.</param>
    public static string? Of(Mail mail)
    {
        ArgumentNullException.ThrowIfNull(mail);
        return (mail.Path, mail.Secret) switch
        {
            ({ } path, null) => path,
            (_, { } secret) when mail.Kind == MailKind.News => LetterLinkEndpoints.Page(secret),
            ({ } path, { } secret) => $"{path.TrimEnd('/')}/{secret}",
            (null, { } secret) => $"{OfSecret(mail.Kind)}/{secret}",
            _ => mail.Kind switch { MailKind.HaveAccount => "/account/sign-in", MailKind.Notice => "/account", _ => null },
        };
    }

    private static string OfSecret(MailKind kind) => kind switch
    {
        MailKind.NewPassword => "/account/new-password",
        MailKind.NewEmail => "/account/new-email",
        MailKind.JoinAsTeacher or MailKind.JoinAsStudent => "/join",
        MailKind.Begin => "/begin",
        MailKind.GuardianAsked => "/guardian/answer",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "A mail of this kind has no one-time link."),
    };
}
