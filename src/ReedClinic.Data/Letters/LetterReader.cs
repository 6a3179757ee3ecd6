using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.People;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Data.Letters;

/// <summary>Puts together what a letter is composed from and what was saved of it. Who may see it is settled before.</summary>
internal static class LetterReader
{
    public static async Task<LetterView?> ReadAsync(ClinicDb db, BatchCode code, AccountId signer, CancellationToken ct)
    {
        if (await BenchReader.Batch(db, code, ct).ConfigureAwait(false) is not { } atBench)
        {
            return null;
        }

        var batch = atBench.Batch.Id;
        var letter = await db.Set<Letter>().AsNoTracking().Include(row => row.Waivers)
            .SingleOrDefaultAsync(row => row.Batch == batch, ct).ConfigureAwait(false);
        var reasons = letter?.Waivers.ToDictionary(waiver => waiver.Gap, waiver => waiver.Reason) ?? [];
        // Once it was sent nothing is composed any more: a correction starts from what was sent, word for word.
        var sent = letter is { SentNumber: { } number } ? await LatestAsync(db, batch, number, ct).ConfigureAwait(false) : null;
        var saved = letter is { IsSent: true, CorrectingSince: null } ? sent : await LatestAsync(db, batch, int.MaxValue, ct).ConfigureAwait(false);
        var before = await LetterBefore.ReadAsync(db, atBench.Batch, ct).ConfigureAwait(false);
        var material = (await MaterialAsync(db, atBench, signer, ct).ConfigureAwait(false)) with { Earlier = before?.Lesson, Waived = reasons, Turns = saved?.Turns ?? new Dictionary<string, int>() };
        var composed = LetterComposer.Compose(material);
        var draft = sent is null ? composed.With(saved) : saved!;
        var pictures = await db.KnownPicturesAsync(draft, ct).ConfigureAwait(false);
        var gaps = (sent is null ? LetterEdits.AllGaps(draft, material) : []).Concat(NoteGaps.Of(draft, pictures)).ToLookup(gap => !gap.IsInTheWords && reasons.ContainsKey(gap.Key));
        return new LetterView(
            atBench,
            draft,
            sent ?? composed,
            [.. gaps[false].Where(gap => !gap.IsToldOnly)],
            [.. gaps[true].Select(gap => new WaivedGap(gap, reasons[gap.Key]))],
            await VersionsAsync(db, batch, ct).ConfigureAwait(false),
            letter?.Version ?? Guid.Empty,
            LetterPayload.Mark(draft),
            letter?.SentAt)
        {
            Material = material,
            Before = before?.AtBench,
            Notices = [.. gaps[false].Where(gap => gap.IsToldOnly)],
            CorrectingSince = letter?.CorrectingSince,
            WhatChanged = letter?.WhatChanged,
        };
    }

    public static async Task<LetterDraft?> LatestAsync(ClinicDb db, BatchId batch, int upTo, CancellationToken ct)
    {
        var payload = await db.Set<LetterVersion>().Where(version => version.Batch == batch && version.Number <= upTo)
            .OrderByDescending(version => version.Number)
            .Select(version => version.Payload)
            .FirstOrDefaultAsync(ct).ConfigureAwait(false);
        return payload is null ? null : LetterPayload.Read(payload);
    }

    public static async Task<LetterDraft?> VersionAsync(ClinicDb db, BatchId batch, int number, CancellationToken ct)
    {
        var payload = await db.Set<LetterVersion>().Where(version => version.Batch == batch && version.Number == number)
            .Select(version => version.Payload).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        return payload is null ? null : LetterPayload.Read(payload);
    }

    private static async Task<LetterMaterial> MaterialAsync(
        ClinicDb db, BatchAtBenchView atBench, AccountId signer, CancellationToken ct)
    {
        var name = await db.Set<ClinicAccount>().Where(account => account.Id == signer.Value)
            .Select(account => account.DisplayName).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        var studio = await db.Set<Studio>().Select(row => row.Name).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        return new LetterMaterial(
            atBench.Batch,
            atBench.Student.SharedName,
            name ?? "",
            atBench.Reeds.ToDictionary(row => row.Reed.Id, row => row.Log),
            Thread(atBench))
        {
            Studio = studio,
            Own = (await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false)).Own,
            Age = atBench.Student.Age,
        };
    }

    // The sheet is worked out from the logs that are at hand; the stored one says the same.
    private static LetterThread Thread(BatchAtBenchView atBench)
    {
        if (atBench.Thread is not { } thread)
        {
            return LetterThread.Nothing;
        }

        List<ReedId> here = [.. atBench.Batch.Reeds.Where(reed => reed.Presence != Presence.Missing).Select(reed => reed.Id)];
        var sheet = new FindingSheet(here, here.SelectMany(reed => SheetRow.Of(reed, atBench.LogOf(reed))));
        return new LetterThread(
            thread.LessonKind,
            thread.LessonWords,
            Evidence(sheet, thread.LessonKind, FindingCharacter.Fault),
            thread.StrengthKind,
            thread.StrengthWords,
            Evidence(sheet, thread.StrengthKind, FindingCharacter.Strength),
            thread.HabitSentence);
    }

    private static string? Evidence(FindingSheet sheet, FindingKindId? kind, FindingCharacter character) =>
        kind is { } id && sheet.Count(id, character) is { Found: > 0 } tally ? EvidenceSentence.For(tally, default) : null;

    private static async Task<IReadOnlyList<LetterVersionRow>> VersionsAsync(
        ClinicDb db, BatchId batch, CancellationToken ct)
    {
        var sent = await db.Set<LetterSending>().Where(sending => sending.Batch == batch)
            .Select(sending => sending.VersionNumber).ToListAsync(ct).ConfigureAwait(false);
        var rows = await db.Set<LetterVersion>().Where(version => version.Batch == batch)
            .OrderByDescending(version => version.Number)
            .Select(version => new { version.Number, version.SavedAt, version.SavedBy })
            .ToListAsync(ct).ConfigureAwait(false);
        var accounts = rows.Select(row => row.SavedBy.Value).Distinct().ToList();
        var names = await db.Set<ClinicAccount>().Where(account => accounts.Contains(account.Id))
            .ToDictionaryAsync(account => account.Id, account => account.DisplayName, ct).ConfigureAwait(false);
        return [.. rows.Select(row => new LetterVersionRow(
            row.Number, row.SavedAt, names.GetValueOrDefault(row.SavedBy.Value, ""), sent.Contains(row.Number)))];
    }
}
