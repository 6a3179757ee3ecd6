using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;

namespace ReedClinic.Data.People;

/// <summary>Whatever changes in how somebody signs in is told to them by mail, so that it can't happen unnoticed. OWASP ASVS 5.0: 6.3.7.</summary>
internal static class Notices
{
    /// <summary>Notes the change for the audit and puts a mail out, in what is about to be saved.</summary>
    public static void Notice(this ClinicDb db, Outbox outbox, ClinicAccount account, AuditEvent what, DateTimeOffset now)
    {
        db.Tell(what, now, account.Id);
        outbox.Put(db, new Mail(MailKind.Notice, account.Email!, account.DisplayName) { What = what.ToString(), At = now, About = account.Id });
    }
}
