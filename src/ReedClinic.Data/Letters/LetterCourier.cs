using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

/// <summary>
/// What goes along with the mail about a letter, decided when the mail is written and not when it was put out: what was taken
/// back meanwhile doesn't go.
/// </summary>
public sealed class LetterCourier(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private const string Letters = "/letters/";

    /// <summary>Packs it. A mail that is tried again gets a new secret in place of the former, which nobody can know any more.</summary>
    /// <param name="job">The mail's job.</param>
    /// <param name="mail">The mail.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<LetterParcel> PackAsync(Job job, Mail mail, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(mail);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await ReaderAsync(db, mail, ct).ConfigureAwait(false) is not { ReadsByLink: true } reader)
            {
                return LetterParcel.Empty;
            }

            var (made, secret) = (await LinkAsync(db, reader.Batch, new OperationId(job.Id), ct).ConfigureAwait(false), Tickets.NewSecret());
            if (!made.Renew(Tickets.HashOf(secret), time.GetUtcNow(), LetterLink.UsualDays))
            {
                return LetterParcel.Empty; // somebody closed it while the mail waited
            }

            db.Tell(AuditEvent.LetterLinkMade, time.GetUtcNow(), whom: reader.Student.Value, about: made.Id.Value);
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                return new LetterParcel(secret, made.ExpiresAt);
            }
        }

        throw new DbUpdateConcurrencyException("Somebody else changed the links of this letter each time.");
    }

    private async Task<LetterLink> LinkAsync(ClinicDb db, Batch batch, OperationId operation, CancellationToken ct)
    {
        if (await db.Set<LetterLink>().SingleOrDefaultAsync(link => link.Operation == operation, ct).ConfigureAwait(false) is { } former)
        {
            return former;
        }

        var now = time.GetUtcNow();
        var first = new LetterLink(new LetterLinkId(Guid.CreateVersion7(now)), batch.Id, "", null, operation, now, LetterLink.UsualDays);
        db.Add(first);
        return first;
    }

    // Whose letter it is, as far as the mail goes to the student's own address of today. A guardian has a sign-in, and reads there.
    private static async Task<Reader?> ReaderAsync(ClinicDb db, Mail mail, CancellationToken ct)
    {
        if (mail is not { Kind: MailKind.News, Path: { } path, About: { } about } || !path.StartsWith(Letters, StringComparison.Ordinal)
            || BatchCode.Read(path[Letters.Length..]) is not Outcome<BatchCode>.Done(var code))
        {
            return null;
        }

        var (student, address) = (new StudentId(about), Folding.OfEmail(mail.To));
        var found = await (
            from batch in db.WithOpenLinks().AsNoTracking()
            where batch.Code == code
            join person in db.Set<Student>() on batch.Student equals person.Id
            where person.Id == student && person.FoldedEmail == address && person.Age != AgeAnswer.Younger
            select new { Batch = batch, person.Account }).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        return found is null ? null : new Reader(student, found.Batch, found.Account is not { } account || await OnlyLinkedAsync(db, account, ct).ConfigureAwait(false));
    }

    // One that was begun by a link that was mailed to the address: only then has somebody shown that they read its mail.
    private static async Task<bool> OnlyLinkedAsync(ClinicDb db, AccountId account, CancellationToken ct) =>
        await db.IsUnclaimedAsync(account, ct).ConfigureAwait(false) && await db.Users.AnyAsync(user => user.Id == account.Value && user.EmailConfirmed, ct).ConfigureAwait(false);

    private sealed record Reader(StudentId Student, Batch Batch, bool ReadsByLink);
}

/// <summary>What goes along with a mail about a letter.</summary>
/// <param name="Secret">The secret of a private link to it, for those who can't sign in; else null.</param>
/// <param name="ExpiresAt">Until when that link is good.</param>
public sealed record LetterParcel(string? Secret, DateTimeOffset? ExpiresAt)
{
    /// <summary>Nothing goes along.</summary>
    public static LetterParcel Empty { get; } = new(null, null);

    /// <summary>Keeps the secret out of logs.</summary>
    public override string ToString() => $"{nameof(LetterParcel)} {{ {(Secret is null ? "no link" : "a link")} }}";
}
