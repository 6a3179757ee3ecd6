using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Data.Letters;

/// <summary>Letters as they are read: a student reads their own, once they were sent.</summary>
public sealed class LetterBoxBook(IDbContextFactory<ClinicDb> databases)
{
    /// <summary>The letter that was sent about a batch, as it was sent last; null when there is none that this actor may read.</summary>
    public Task<SentLetter?> ReadAsync(Actor actor, BatchCode code, CancellationToken ct) => OpenAsync(actor, code, null, ct);

    /// <summary>The letter as it was sent at first, or in one of its corrections, whatever was sent after it; null when there is none that this actor may read.</summary>
    public Task<SentLetter?> ReadSendingAsync(Actor actor, BatchCode code, int ordinal, CancellationToken ct) => OpenAsync(actor, code, ordinal, ct);

    private async Task<SentLetter?> OpenAsync(Actor actor, BatchCode code, int? ordinal, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.SentAsync(db.Set<Batch>().SeenBy(actor).Where(batch => batch.Code == code), ordinal, ct).ConfigureAwait(false);
    }

    /// <summary>What this person's last letter said that the reeds had in common; null when there is none.</summary>
    public async Task<LastLesson?> LastLessonAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.Student is not { } me)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var last = await (
            from batch in db.Set<Batch>()
            where batch.Student == me
            join letter in db.Set<Letter>() on batch.Id equals letter.Batch
            join version in db.Set<LetterVersion>()
                on new { letter.Batch, Number = letter.SentNumber } equals new { version.Batch, Number = (int?)version.Number }
            orderby letter.SentAt descending
            select new { batch.Code, version.Payload, letter.SentAt }).FirstOrDefaultAsync(ct).ConfigureAwait(false);
        if (last is null)
        {
            return null;
        }

        var blocks = LetterPayload.Read(last.Payload).Blocks;
        return blocks.FirstOrDefault(block => block.Kind == BlockKind.Lesson) is { IsEmpty: false } lesson
            ? new LastLesson(
                last.Code,
                string.Join("\n\n", lesson.Paragraphs.Select(paragraph => PictureMark.SaidIn(lesson, paragraph))),
                [.. blocks.Where(block => block.Kind == BlockKind.Plan).SelectMany(block => block.Paragraphs).Select(step => step.Text)],
                last.SentAt!.Value)
            : null;
    }
}
