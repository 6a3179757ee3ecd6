using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

/// <summary>
/// What goes along with the mail about a letter, decided when the mail is written and not when it was put out: what was taken
/// back meanwhile doesn't go.
/// </summary>
public sealed class LetterCourier(IDbContextFactory<ClinicDb> databases, TimeProvider time, MediaFolder media)
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
            if (await ReaderAsync(db, mail, ct).ConfigureAwait(false) is not { } reader)
            {
                return LetterParcel.Empty;
            }

            var letter = reader.WantsFile ? await db.SentAsync(db.Set<Batch>().Where(batch => batch.Id == reader.Batch.Id), null, ct).ConfigureAwait(false) : null;
            letter = letter is null ? null : await db.WithPicturesAsync(letter, media, ct).ConfigureAwait(false);
            if (!reader.ReadsByLink)
            {
                return LetterParcel.Empty with { Letter = letter };
            }

            var (made, secret) = (await LinkAsync(db, reader.Batch, new OperationId(job.Id), ct).ConfigureAwait(false), Tickets.NewSecret());
            if (!made.Renew(Tickets.HashOf(secret), time.GetUtcNow(), LetterLink.UsualDays))
            {
                return LetterParcel.Empty with { Letter = letter }; // somebody closed it while the mail waited
            }

            db.Tell(AuditEvent.LetterLinkMade, time.GetUtcNow(), whom: reader.Student.Value, about: made.Id.Value);
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                return new LetterParcel(secret, made.ExpiresAt) { Letter = letter };
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

    // To whom the mail goes, as far as the address is still theirs: the student, or the guardian who answers for a younger one.
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
            where person.Id == student
            select new { Batch = batch, person.Account, person.FoldedEmail, IsYounger = person.Age == AgeAnswer.Younger }).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (found is null || (!found.IsYounger && found.FoldedEmail != address))
        {
            return null;
        }

        var account = found.IsYounger ? await GuardianAsync(db, student, ct).ConfigureAwait(false) : found.Account;
        return new Reader(
            student,
            found.Batch,
            !found.IsYounger && (account is { } own && await OnlyLinkedAsync(db, own, ct).ConfigureAwait(false)),
            account is { } reads && await WantsFileAsync(db, reads, address, ct).ConfigureAwait(false));
    }

    // A guardian has a sign-in, and reads there.
    private static async Task<AccountId?> GuardianAsync(ClinicDb db, StudentId student, CancellationToken ct) =>
        (await db.Set<Guardianship>().AsNoTracking()
            .SingleOrDefaultAsync(row => row.Student == student && row.GivenAt != null && row.WithdrawnAt == null && row.EndedAt == null, ct).ConfigureAwait(false))?.Account;

    // One that was begun by a link that was mailed to the address: only then has somebody shown that they read its mail.
    private static async Task<bool> OnlyLinkedAsync(ClinicDb db, AccountId account, CancellationToken ct) =>
        await db.IsUnclaimedAsync(account, ct).ConfigureAwait(false) && await db.Users.AnyAsync(user => user.Id == account.Value && user.EmailConfirmed, ct).ConfigureAwait(false);

    // What they chose for the address that they have shown to be theirs.
    private static async Task<bool> WantsFileAsync(ClinicDb db, AccountId account, string address, CancellationToken ct) =>
        await db.Users.AsNoTracking()
            .SingleOrDefaultAsync(user => user.Id == account.Value && user.LetterFilesByMail && user.EmailConfirmed && user.DisabledAt == null, ct).ConfigureAwait(false) is { Email: { } email }
        && Folding.OfEmail(email) == address;

    private sealed record Reader(StudentId Student, Batch Batch, bool ReadsByLink, bool WantsFile);
}

/// <summary>What goes along with a mail about a letter.</summary>
/// <param name="Secret">The secret of a private link to it, for those who can't sign in; else null.</param>
/// <param name="ExpiresAt">Until when that link is good.</param>
public sealed record LetterParcel(string? Secret, DateTimeOffset? ExpiresAt)
{
    /// <summary>The letter itself as it was sent last, to be attached as a PDF, for those who chose so; else null.</summary>
    public SentLetter? Letter { get; init; }

    /// <summary>Nothing goes along.</summary>
    public static LetterParcel Empty { get; } = new(null, null);

    /// <summary>Keeps the secret out of logs.</summary>
    public override string ToString() => $"{nameof(LetterParcel)} {{ {(Secret is null ? "no link" : "a link")} }}";
}
