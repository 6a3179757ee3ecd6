using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

/// <summary>Reading letters that were sent. Whose batches may be read is settled before.</summary>
internal static class SentLetters
{
    /// <summary>The letter of a batch as it was sent last, or in one of its sendings; null when there is none.</summary>
    public static async Task<SentLetter?> SentAsync(this ClinicDb db, IQueryable<Batch> which, int? ordinal, CancellationToken ct)
    {
        var sendings = db.Set<LetterSending>();
        var sent = await (
            from batch in which
            join letter in db.Set<Letter>() on batch.Id equals letter.Batch
            join sending in sendings on batch.Id equals sending.Batch
            where sending.Ordinal == (ordinal ?? letter.SentOrdinal)
            join version in db.Set<LetterVersion>() on new { sending.Batch, Number = sending.VersionNumber } equals new { version.Batch, version.Number }
            join student in db.Set<Student>() on batch.Student equals student.Id
            select new
            {
                version.Payload,
                sending.SentAt,
                student.Country,
                sending.Ordinal,
                sending.WhatChanged,
                sending.Page,
                Replaces = sendings.Where(other => other.Batch == sending.Batch && other.Ordinal == sending.Ordinal - 1).Select(other => (DateTimeOffset?)other.SentAt).FirstOrDefault(),
                ReplacedAt = sendings.Where(other => other.Batch == sending.Batch && other.Ordinal == sending.Ordinal + 1).Select(other => (DateTimeOffset?)other.SentAt).FirstOrDefault(),
            }).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        return sent is null ? null : new SentLetter(LetterPayload.Read(sent.Payload), sent.SentAt, sent.Country)
        {
            Ordinal = sent.Ordinal,
            WhatChanged = sent.WhatChanged,
            Page = sent.Page,
            Replaces = sent.Replaces,
            ReplacedAt = sent.ReplacedAt,
        };
    }
}
