using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Letters;

/// <summary>What a private link opens at this moment.</summary>
internal static class LetterLinks
{
    /// <summary>
    /// The batch whose letter a secret opens now, asked anew each time: the link is neither over nor closed, the letter was
    /// sent, its student's sign-in isn't closed, and for a younger student a guardian agrees. Null for one that can't be any.
    /// </summary>
    /// <remarks>It is found by its hash: how long that takes tells nothing of a secret that is nearly right.</remarks>
    public static IQueryable<Batch>? OpenedBy(this ClinicDb db, string? secret, DateTimeOffset now)
    {
        if (!Tickets.CanBe(secret))
        {
            return null;
        }

        var hash = Tickets.HashOf(secret!);
        return db.WithOpenLinks().Where(batch => db.Set<LetterLink>().Any(link =>
            link.Batch == batch.Id && link.SecretHash == hash && link.ClosedAt == null && link.ExpiresAt > now));
    }

    /// <summary>The batches whose letters may be read by a link at all at this moment.</summary>
    public static IQueryable<Batch> WithOpenLinks(this ClinicDb db)
    {
        var letIn = db.WithOpenSignIn().Where(BatchQueries.MayBeWorkedFor);
        return db.Set<Batch>().Where(batch => letIn.Any(student => student.Id == batch.Student)
            && db.Set<Letter>().Any(letter => letter.Batch == batch.Id && letter.SentNumber != null));
    }

    /// <summary>
    /// Closes the open links to a student's letters for good, in what is about to be saved, because whoever agreed to them does
    /// so no longer. It is done once more when somebody agrees, so that one that was made meanwhile isn't opened by another yes.
    /// </summary>
    public static async Task CloseLinksAsync(this ClinicDb db, StudentId student, AccountId? by, DateTimeOffset now, CancellationToken ct)
    {
        foreach (var link in await db.OpenLinksOf(student, now).ToListAsync(ct).ConfigureAwait(false))
        {
            link.Close(now);
            db.Tell(AuditEvent.LetterLinkClosed, now, by?.Value, student.Value, link.Id.Value);
        }
    }

    /// <summary>The same at once, in a transaction: erasing mustn't fail because somebody closes one at the same moment.</summary>
    public static async Task CloseLinksNowAsync(this ClinicDb db, StudentId student, DateTimeOffset now, CancellationToken ct)
    {
        var open = await db.OpenLinksOf(student, now).Select(link => link.Id).ToListAsync(ct).ConfigureAwait(false);
        await db.OpenLinksOf(student, now).ExecuteUpdateAsync(
            links => links.SetProperty(row => row.ClosedAt, now).SetProperty(row => row.Version, Guid.CreateVersion7(now)), ct).ConfigureAwait(false);
        foreach (var link in open)
        {
            db.Tell(AuditEvent.LetterLinkClosed, now, whom: student.Value, about: link.Value);
        }
    }

    /// <summary>The sounds and photographs that a letter plays: of each reed the latest pairs of before and after, and the memos that were put into it.</summary>
    public static IEnumerable<Recording> InLetter(IReadOnlyList<Recording> all)
    {
        foreach (var reed in all.GroupBy(one => one.Reed))
        {
            foreach (var (before, after) in new[] { (RecordingKind.ArrivalSound, RecordingKind.FinalSound), (RecordingKind.ArrivalPhoto, RecordingKind.FinalPhoto) })
            {
                if (reed.LastOrDefault(one => one.Kind == before) is { } came && reed.LastOrDefault(one => one.Kind == after) is { } goes)
                {
                    yield return came;
                    yield return goes;
                }
            }

            foreach (var memo in reed.Where(one => one is { Kind: RecordingKind.VoiceMemo, InLetter: true }))
            {
                yield return memo;
            }
        }
    }

    private static IQueryable<LetterLink> OpenLinksOf(this ClinicDb db, StudentId student, DateTimeOffset now) => db.Set<LetterLink>().Where(link =>
        link.ClosedAt == null && link.ExpiresAt > now && db.Set<Batch>().Any(batch => batch.Id == link.Batch && batch.Student == student));

    // Accounts have plain ids, which no query compares with ours.
    private static IQueryable<Student> WithOpenSignIn(this ClinicDb db) => db.Set<Student>().FromSqlRaw(
        """SELECT * FROM "Students" WHERE NOT EXISTS (SELECT 1 FROM "AspNetUsers" WHERE "AspNetUsers"."Id" = "Students"."Account" AND "AspNetUsers"."DisabledAt" IS NOT NULL)""");
}
