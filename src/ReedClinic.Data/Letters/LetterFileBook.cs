using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

/// <summary>
/// Whether the mail about a letter brings its PDF. Whoever gets the mail chooses, for what goes to their own address: a student,
/// or the guardian who answers for a younger one.
/// </summary>
public sealed class LetterFileBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private const string Choose = "letter-files";

    /// <summary>Why it can't be chosen yet.</summary>
    internal static Problem Unproved { get; } = new("Wanted", "First show that the address is yours: else a letter might go to somebody else.");

    /// <summary>What the account that asks has chosen; null when it is gone.</summary>
    public async Task<LetterFileChoice?> ReadAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.OwnAccountAsync(actor, ct).ConfigureAwait(false) is not { } account)
        {
            return null;
        }

        var own = await db.Set<Student>().AnyAsync(person => person.Account == actor.Account && person.Age != AgeAnswer.Younger, ct).ConfigureAwait(false);
        var wards = await db.Set<Guardianship>().AnyAsync(
            row => row.Account == actor.Account && row.GivenAt != null && row.WithdrawnAt == null && row.EndedAt == null, ct).ConfigureAwait(false);
        return new LetterFileChoice(account.LetterFilesByMail, account.EmailConfirmed, own, wards);
    }

    /// <summary>Chooses for the account that asks. It can be taken back at any time; what was mailed stays where it went.</summary>
    /// <param name="actor">Who chooses.</param>
    /// <param name="wanted">True for the PDF with each mail.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<bool>> ChooseAsync(Actor actor, bool wanted, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await db.OwnAccountAsync(actor, ct).ConfigureAwait(false) is not { } account)
            {
                return new Outcome<bool>.NotFound();
            }

            if (await db.WasDoneAsync(operation, Choose, account.Id, ct).ConfigureAwait(false))
            {
                return new Outcome<bool>.Done(account.LetterFilesByMail);
            }

            if (wanted && !account.EmailConfirmed)
            {
                return new Outcome<bool>.Refused([Unproved]);
            }

            if (account.LetterFilesByMail != wanted)
            {
                // Two forms at once: whoever is second reads what the first chose, and it is noted once.
                (account.LetterFilesByMail, account.ConcurrencyStamp) = (wanted, AccountRegister.NewStamp());
                db.Tell(wanted ? AuditEvent.LetterFilesOn : AuditEvent.LetterFilesOff, time.GetUtcNow(), account.Id);
            }

            db.Note(operation, Choose, account.Id, time.GetUtcNow());
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                return new Outcome<bool>.Done(wanted);
            }
        }

        return new Outcome<bool>.Refused([DoneOperations.NotSaved]);
    }
}

/// <summary>Whether the mails about letters that go to somebody bring the PDF.</summary>
/// <param name="Wanted">What they chose; no until they did.</param>
/// <param name="AddressProved">Whether they have shown that the address is theirs.</param>
/// <param name="ForOwn">Whether mails about their own letters go to them: for a younger student they go to the guardian.</param>
/// <param name="ForWards">Whether mails about letters go to them as a guardian.</param>
public sealed record LetterFileChoice(bool Wanted, bool AddressProved, bool ForOwn, bool ForWards);
