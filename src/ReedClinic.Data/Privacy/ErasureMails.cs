using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Privacy;

/// <summary>The last mails: that somebody was erased, to them and to the guardian who answered for them.</summary>
internal static class ErasureMails
{
    /// <summary>
    /// Puts them out, before the rows go. The mail to the erased is filed under nobody, because their erasure takes along what is
    /// filed under them; what stands in it is sealed, and is emptied once it was sent. While no mail goes out there is none:
    /// it would keep a name and an address of somebody who asked that nothing be kept.
    /// </summary>
    public static async Task PutErasedAsync(this Outbox outbox, ClinicDb db, Erasure whom, DateTimeOffset now, CancellationToken ct)
    {
        if (!outbox.GoesOut)
        {
            return;
        }

        var student = await db.Set<Student>().AsNoTracking().SingleOrDefaultAsync(person => person.Id == whom.Student, ct).ConfigureAwait(false);
        var account = await db.Users.AsNoTracking().Where(user => whom.Account != null && user.Id == whom.Account.Value.Value)
            .Select(user => new { user.Email, user.DisplayName }).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        var told = new[] { (student?.Email, student?.Name), (account?.Email, account?.DisplayName) };
        foreach (var (email, name) in told.Where(one => one.Item1 is not null).DistinctBy(one => Folding.OfEmail(one.Item1!)))
        {
            outbox.Put(db, new Mail(MailKind.Erased, email!, name?.Split(' ', 2)[0]) { At = now });
        }

        if (student is not null
            && await db.Set<Guardianship>().AsNoTracking()
                .SingleOrDefaultAsync(row => row.Student == student.Id && row.GivenAt != null && row.EndedAt == null, ct).ConfigureAwait(false) is { } guardian)
        {
            outbox.Put(db, new Mail(MailKind.WardErased, guardian.Email, guardian.Name) { Ward = student.FirstName, At = now, Path = "/wards", About = guardian.Account?.Value });
        }
    }
}
