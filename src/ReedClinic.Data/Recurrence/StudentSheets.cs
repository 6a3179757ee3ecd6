using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Recurrence;

/// <summary>The sheet of one batch, and when it came.</summary>
/// <param name="Code">The batch’s code.</param>
/// <param name="SubmittedAt">When it was sent in.</param>
/// <param name="LetterSentAt">When its letter was sent; null while it wasn’t.</param>
/// <param name="Sheet">What was found on its reeds when they arrived.</param>
public sealed record SheetOfBatch(BatchCode Code, DateTimeOffset SubmittedAt, DateTimeOffset? LetterSentAt, FindingSheet Sheet);

/// <summary>What is held against each other when one student’s reeds are looked at.</summary>
/// <param name="Batches">The student’s batches, the oldest first.</param>
/// <param name="Studio">The studio’s rates, made from the others.</param>
/// <param name="AsOf">When the studio’s rates were counted; null where they never were.</param>
public sealed record StudentSheets(IReadOnlyList<SheetOfBatch> Batches, StudioRates Studio, DateTimeOffset? AsOf)
{
    /// <summary>The sheets alone.</summary>
    public StudentHistory History { get; } = new([.. Batches.Select(batch => batch.Sheet)]);
}

/// <summary>Reads one student’s sheets. It costs the same however many other students there are; whose they are is settled before.</summary>
internal static class StudentSheetReader
{
    /// <summary>Batches with their reeds, the oldest first.</summary>
    public static IQueryable<ReedsOfBatch> Reeds(IQueryable<Batch> batches) =>
        from batch in batches
        orderby batch.SubmittedAt, batch.Id
        select new ReedsOfBatch(
            batch.Code,
            batch.SubmittedAt,
            batch.LetterSentAt,
            batch.Reeds.Where(reed => reed.Presence != Presence.Missing).OrderBy(reed => reed.Number).Select(reed => reed.Id).ToList());

    /// <summary>The answers about these reeds.</summary>
    public static IQueryable<SheetRow> Rows(ClinicDb db, List<ReedId> reeds) =>
        db.Set<SheetRow>().AsNoTracking().Where(row => reeds.Contains(row.ReedId));

    /// <summary>The rates with these keys.</summary>
    public static IQueryable<StudioRateRow> Rates(ClinicDb db, List<string> keys) =>
        db.Set<StudioRateRow>().AsNoTracking().Where(row => keys.Contains(row.Key));

    /// <summary>When the rates were counted.</summary>
    public static IQueryable<DateTimeOffset?> AsOf(ClinicDb db) =>
        db.Set<StudioRateRow>().OrderBy(row => row.Key).Select(row => (DateTimeOffset?)row.AsOf);

    /// <summary>One student’s sheets.</summary>
    /// <param name="db">The context.</param>
    /// <param name="student">The student, whose own part is taken out of the studio’s rates.</param>
    /// <param name="batches">Those of their batches that are looked at.</param>
    /// <param name="ct">Cancels the reading.</param>
    public static async Task<StudentSheets> ReadAsync(ClinicDb db, StudentId student, IQueryable<Batch> batches, CancellationToken ct)
    {
        var sheets = await SheetsAsync(db, batches, ct).ConfigureAwait(false);
        if (sheets.TrueForAll(batch => batch.Sheet.Kinds.Count == 0) || await AsOf(db).FirstOrDefaultAsync(ct).ConfigureAwait(false) is not { } asOf)
        {
            return new StudentSheets(sheets, StudioRates.Unknown, null);
        }

        // What was counted then may be more than what is looked at now: batches that came later.
        var sent = db.Set<Batch>().Where(batch => batch.Student == student && batch.LetterSentAt <= asOf);
        var known = sheets.Select(batch => batch.Code).ToList();
        var later = await SheetsAsync(db, sent.Where(batch => !known.Contains(batch.Code)), ct).ConfigureAwait(false);
        List<SheetOfBatch> counted = [.. sheets.Where(batch => batch.LetterSentAt <= asOf), .. later];
        return new StudentSheets(sheets, await StudioAsync(db, sheets, new([.. counted.Select(batch => batch.Sheet)]), ct).ConfigureAwait(false), asOf);
    }

    private static async Task<List<SheetOfBatch>> SheetsAsync(ClinicDb db, IQueryable<Batch> batches, CancellationToken ct)
    {
        var read = await Reeds(batches).AsNoTracking().ToListAsync(ct).ConfigureAwait(false);
        List<ReedId> reeds = [.. read.SelectMany(batch => batch.Reeds)];
        var rows = reeds.Count == 0 ? [] : await Rows(db, reeds).ToListAsync(ct).ConfigureAwait(false);
        return [.. read.Select(batch => new SheetOfBatch(batch.Code, batch.SubmittedAt, batch.LetterSentAt, new FindingSheet(batch.Reeds, rows)))];
    }

    // The student’s own part, as it was counted then, is taken out. Where it isn’t known by its count any more, because a sheet was
    // changed after its letter, nothing is compared; among many students one hardly moves the rate, and that of all will do.
    private static async Task<StudioRates> StudioAsync(ClinicDb db, List<SheetOfBatch> sheets, StudentHistory counted, CancellationToken ct)
    {
        var looked = sheets.SelectMany(batch => batch.Sheet.Kinds).ToHashSet();
        var own = Themes.All.Where(theme => theme.Kinds.Any(looked.Contains)).Concat(Themes.OwnIn(new StudentHistory([.. sheets.Select(batch => batch.Sheet)])))
            .ToDictionary(theme => theme.Id, theme => StudioRateRow.KeyOf(theme.Id, StudentCount.Of(counted.Counts(theme))));
        List<string> keys = [.. own.Values, .. own.Keys.Select(theme => StudioRateRow.KeyOf(theme, default))];
        var rows = await Rates(db, [.. keys.Distinct()]).ToListAsync(ct).ConfigureAwait(false);
        var rates = rows.Where(row => row.Key == own[row.Theme] || row.Students > StudioTally.MostTakenOut)
            .GroupBy(row => row.Theme)
            .Select(theme => theme.OrderByDescending(row => row.Key == own[theme.Key]).First())
            .ToDictionary(row => row.Theme, row => new StudioRate(row.A, row.B, row.Students));
        var usual = rows.Count == 0 ? BatchLikeness.Default.Usual : rows[0].Likeness;
        return new StudioRates(new BatchLikeness(usual, Math.Max(usual, BatchLikeness.Default.Most)), rates);
    }
}

/// <summary>A batch with its reeds.</summary>
internal sealed record ReedsOfBatch(BatchCode Code, DateTimeOffset SubmittedAt, DateTimeOffset? LetterSentAt, List<ReedId> Reeds);
