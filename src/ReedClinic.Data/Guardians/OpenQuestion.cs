using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Guardians;

/// <summary>A question to a guardian that waits for its answer.</summary>
/// <param name="Ticket">The link it went out with.</param>
/// <param name="Student">About whom.</param>
/// <param name="Guardianship">Who is asked.</param>
internal sealed record OpenQuestion(Ticket Ticket, Student Student, Guardianship Guardianship);

/// <summary>Finds such a question by the secret of its link.</summary>
internal static class OpenQuestions
{
    /// <summary>The question, to be answered; null when its link is no good any more.</summary>
    public static async Task<OpenQuestion?> OpenQuestionAsync(this ClinicDb db, string? secret, DateTimeOffset now, CancellationToken ct)
    {
        if (await db.FindTicketAsync(secret, TicketPurpose.Guardian, now, ct).ConfigureAwait(false) is not { Student: { } id } ticket
            || await db.Set<Student>().SingleOrDefaultAsync(person => person.Id == id, ct).ConfigureAwait(false) is not { } student
            || await db.Set<Guardianship>().SingleOrDefaultAsync(row => row.Student == id, ct).ConfigureAwait(false) is not { Stands: Consent.Asked, EndedAt: null } guardianship)
        {
            return null;
        }

        return new OpenQuestion(ticket, student, guardianship);
    }

    /// <summary>True for a student who isn't old enough to answer for anybody, least of all for themselves.</summary>
    public static async Task<bool> MayNotAnswerAsync(this ClinicDb db, AccountId account, OpenQuestion open, CancellationToken ct) =>
        await db.Set<Student>().AnyAsync(person => person.Account == account && (person.Id == open.Student.Id || person.Age != AgeAnswer.OldEnough), ct).ConfigureAwait(false);
}
