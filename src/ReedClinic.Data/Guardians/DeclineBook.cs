using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Guardians;

/// <summary>A guardian's no, by the link that was sent to them.</summary>
public sealed class DeclineBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    /// <summary>By what a no is found again.</summary>
    internal const string Decline = "decline-as-guardian";

    /// <summary>
    /// A guardian who was asked says no. Whoever has the link has the address that was asked: no sign-in is needed, and none is
    /// made. The student can ask somebody else, or the same address after a day. A student who is signed in can't be the one who answers.
    /// </summary>
    /// <param name="actor">Who is signed in; null for nobody.</param>
    /// <param name="secret">The secret of the link.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>The first name of the student; NotFound for a link that is no good any more.</returns>
    public async Task<Outcome<string>> DeclineAsync(Actor? actor, string? secret, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await FirstAnswerAsync(db, secret, operation, ct).ConfigureAwait(false) is { } told)
            {
                return new Outcome<string>.Done(told);
            }

            var now = time.GetUtcNow();
            if (await db.OpenQuestionAsync(secret, now, ct).ConfigureAwait(false) is not { } open)
            {
                await databases.NoteRefusedLinkAsync(other => other.TicketOfAsync(secret, TicketPurpose.Guardian, ct), now, ct).ConfigureAwait(false);
                return new Outcome<string>.NotFound();
            }

            if (actor is not null && await db.MayNotAnswerAsync(actor.Account, open, ct).ConfigureAwait(false))
            {
                return new Outcome<string>.Refused([GuardianRules.NotForStudents]);
            }

            Put(db, open, actor, operation, now);
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                return new Outcome<string>.Done(open.Student.FirstName);
            }
        }

        return new Outcome<string>.Refused([DoneOperations.NotSaved]);
    }

    private void Put(ClinicDb db, OpenQuestion open, Actor? actor, OperationId operation, DateTimeOffset now)
    {
        open.Ticket.Use(now);
        open.Guardianship.Decline(now);
        open.Student.Follow(Consent.Declined);
        db.Tell(AuditEvent.LinkUsed, now, actor?.Account.Value, about: open.Ticket.Id.Value);
        db.Tell(AuditEvent.ConsentDeclined, now, actor?.Account.Value, open.Student.Id.Value, open.Guardianship.Id.Value);
        outbox.PutDeclined(db, open.Guardianship, open.Student, now);
        db.Note(operation, Decline, open.Ticket.Id.Value, now);
    }

    // The form sent twice gives the first answer.
    private static async Task<string?> FirstAnswerAsync(ClinicDb db, string? secret, OperationId operation, CancellationToken ct) =>
        await db.TicketOfAsync(secret, TicketPurpose.Guardian, ct).ConfigureAwait(false) is { Student: { } id } ticket
            && await db.WasDoneAsync(operation, Decline, ticket.Id.Value, ct).ConfigureAwait(false)
            ? (await db.Set<Student>().AsNoTracking().SingleOrDefaultAsync(person => person.Id == id, ct).ConfigureAwait(false))?.FirstName
            : null;
}
