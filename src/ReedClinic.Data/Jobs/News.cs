using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Jobs;

/// <summary>To whom mail about a student goes, and the mail that says that there is something to read.</summary>
internal static class News
{
    /// <summary>
    /// Where mail about a student goes: to their guardian for those who said they are younger, else to themselves.
    /// </summary>
    /// <returns>The address and what its holder is called; null when none is known.</returns>
    public static async Task<(string Email, string Name)?> AddressForAsync(this ClinicDb db, StudentId id, CancellationToken ct)
    {
        var student = await db.Set<Student>().AsNoTracking().SingleAsync(person => person.Id == id, ct).ConfigureAwait(false);
        if (student.Age is not AgeAnswer.Younger)
        {
            return student.Email is { } own ? (own, student.Name) : null;
        }

        var guardian = await db.Set<Guardianship>().AsNoTracking()
            .SingleOrDefaultAsync(row => row.Student == id && row.GivenAt != null && row.WithdrawnAt == null && row.EndedAt == null, ct).ConfigureAwait(false);
        return guardian is null ? null : (guardian.Email, guardian.Name);
    }

    /// <summary>Says that there is something to read of a batch: its address, and nothing of what stands there.</summary>
    /// <param name="outbox">Where mail waits.</param>
    /// <param name="db">The context that will be saved.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="path">The page.</param>
    /// <param name="ct">Cancels.</param>
    /// <param name="again">What asks for the same news once more; none for the first time.</param>
    /// <param name="corrected">Whether what is to be read takes the place of something that was sent before.</param>
    public static async Task PutNewsAsync(this Outbox outbox, ClinicDb db, Batch batch, string path, CancellationToken ct, OperationId? again = null, bool corrected = false)
    {
        if (await db.AddressForAsync(batch.Student, ct).ConfigureAwait(false) is var (email, name))
        {
            outbox.Put(db, new Mail(MailKind.News, email, name) { Path = path, What = corrected ? Mail.Corrected : null, About = batch.Student.Value }, OnceOf(batch, path) + (again is { } more ? $":{more.Value:N}" : ""));
        }
    }

    /// <summary>What the news of a page of a batch must not be told twice by; what tells them again begins with it.</summary>
    public static string OnceOf(Batch batch, string path) => $"news:{batch.Id.Value}:{path}";
}
