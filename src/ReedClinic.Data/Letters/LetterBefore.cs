using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Data.Letters;

/// <summary>The letter that a student had before the reeds of a batch were sent, and what it taught.</summary>
/// <param name="Lesson">What it taught; null where nothing was found for certain.</param>
/// <param name="AtBench">The batch that it was about, with its logs.</param>
internal sealed record LetterBefore(EarlierLesson? Lesson, BatchAtBenchView AtBench)
{
    /// <summary>Reads it; null where none was sent before these reeds were.</summary>
    public static async Task<LetterBefore?> ReadAsync(ClinicDb db, Batch batch, CancellationToken ct)
    {
        var sent = await (
            from other in db.Set<Batch>()
            where other.Student == batch.Student && other.Id != batch.Id
            join letter in db.Set<Letter>() on other.Id equals letter.Batch
            join first in db.Set<LetterSending>() on other.Id equals first.Batch
            where first.Ordinal == 1 && first.SentAt < batch.SubmittedAt
            join version in db.Set<LetterVersion>() on new { letter.Batch, Number = letter.SentNumber ?? 0 } equals new { version.Batch, version.Number }
            orderby first.SentAt descending
            select new { other.Code, version.Payload }).FirstOrDefaultAsync(ct).ConfigureAwait(false);
        if (sent is null || LetterPayload.Read(sent.Payload) is not { } last || (last.LessonKind is null && last.LessonWords is null)
            || await BenchReader.Batch(db, sent.Code, ct).ConfigureAwait(false) is not { } atBench)
        {
            return null;
        }

        return new(EarlierLesson.Of(last, [.. atBench.Reeds.Select(row => (row.Reed, row.Log))]), atBench);
    }
}
