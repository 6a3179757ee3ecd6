using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Recurrence;

/// <summary>What a student is told of one theme over their batches: no odds, no intervals.</summary>
/// <param name="Theme">The theme.</param>
/// <param name="Batches">Its counts, batch by batch, the oldest first.</param>
/// <param name="Became">What has surely become of it.</param>
public sealed record ThemeOverTime(Theme Theme, IReadOnlyList<ThemeTally> Batches, TrendKind Became)
{
    /// <summary>What it is now, in a few words: what is surely gone or new is said so, and no more than is known.</summary>
    public TimeWord Word => (Became, Now, Looked) switch
    {
        (_, { Looked: 0 }, _) => TimeWord.NotLookedNow,
        _ when IsOther => TimeWord.Other,
        _ when IsBack => TimeWord.Back,
        (TrendKind.Gone, { Found: 0 }, _) when !EarlierSoughtNow => TimeWord.NotNowInPart,
        (TrendKind.Gone, _, _) => TimeWord.Gone,
        (TrendKind.Fading, _, _) => TimeWord.Fading,
        (TrendKind.New, _, _) => TimeWord.New,
        (TrendKind.Growing, _, _) => TimeWord.Growing,
        (TrendKind.Persisting, _, _) => TimeWord.Persisting,
        (_, _, 1) => TimeWord.FirstLook,
        (_, { Found: 0 }, _) => Batches[^1].InPart > 0 ? TimeWord.NotNowInPart : TimeWord.NotNow,
        _ when Batches.SkipLast(1).All(one => one.Tally.Found == 0) => TimeWord.FirstSeen,
        _ => TimeWord.NowAndThen,
    };

    /// <summary>Whether it is a fault that was there before, was looked for on the latest reeds, and isn’t on them: good news.</summary>
    public bool IsMastered => Theme.Character == FindingCharacter.Fault && (Word is TimeWord.Gone or TimeWord.NotNow);

    /// <summary>Of a family: what of it was found on the latest reeds.</summary>
    public IReadOnlyList<FindingKindId> OnLatest { get; init; } = [];

    /// <summary>Of a family: what of it was found before.</summary>
    public IReadOnlyList<FindingKindId> Earlier { get; init; } = [];

    /// <summary>Of a family: what of it was looked for on the latest reeds.</summary>
    public IReadOnlyList<FindingKindId> LookedNow { get; init; } = [];

    /// <summary>Of a family: whether all of it that was found before was looked for on each of the latest reeds that were looked at for the family.</summary>
    public bool EarlierSoughtNow { get; init; } = true;

    /// <summary>Of a family: whatever of it was ever found, what was found before first. It is what its row shows.</summary>
    public IReadOnlyList<FindingKindId> Ever => [.. Earlier, .. OnLatest.Except(Earlier)];

    /// <summary>Of a family: what of it was found before, was looked for on the latest reeds, and isn’t on them.</summary>
    public IEnumerable<FindingKindId> OnlyBefore => Earlier.Except(OnLatest).Intersect(LookedNow);

    // The family stays, and nothing in it does: what was there has gone, and what is there is new.
    private bool IsOther => OnLatest.Count > 0 && Earlier.Count > 0 && !OnLatest.Intersect(Earlier).Any() && Earlier.All(LookedNow.Contains);

    // It was there, the batch before was looked at for all of it and had none, and now it is there again: it neither stayed nor is it new.
    private bool IsBack => Now.Found > 0 && Batches.SkipLast(1).Where(one => one.Tally.Looked > 0).ToList() is { Count: > 1 } before
        && before[^1] == Batches[^2] && before[^1] is { Tally.Found: 0, InPart: 0 } && before.Exists(one => one.Tally.Found > 0);

    /// <summary>Of a family: whether something of it has come back that was on none of the reeds before, while something else of it was there.</summary>
    private bool HasMixed { get; init; }

    /// <summary>On how many of the latest batch’s reeds it was.</summary>
    public Tally Now => Batches.Count == 0 ? default : Batches[^1].Tally;

    private int Looked => Batches.Count(one => one.Tally.Looked > 0);

    /// <summary>What a student’s reeds show over time: the widest families and what belongs to none, where anything was ever found.</summary>
    /// <param name="history">Their sheets, the oldest first.</param>
    /// <param name="report">What comes back in them.</param>
    /// <returns>What is done well first; within each, what is there now before what isn’t.</returns>
    public static IReadOnlyList<ThemeOverTime> Of(StudentHistory history, RecurrenceReport report)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(report);
        return
        [
            .. report.All.Where(line => line.Theme.Wider is null && line.Altogether.Found > 0).SelectMany(line => Whole(line, history) with { HasMixed = Mixes(line, history, report) } is var whole
                && (whole.Theme.Character == FindingCharacter.Strength ? whole.Ever.Count > 1 : whole.Word == TimeWord.Other || (whole.HasMixed && !whole.IsBack)) ? Apart(whole, history, report) : [whole]),
        ];
    }

    // One of its kinds is back, and so has a word of its own.
    private static bool Mixes(Recurring line, StudentHistory history, RecurrenceReport report) => line.Theme.IsFamily
        && line.Theme.Kinds.Any(kind => report.All.FirstOrDefault(one => one.Theme.Id == kind.Value) is { } own && new ThemeOverTime(own.Theme, [.. history.Batches.Select(own.Theme.Count)], own.Became).IsBack);

    // What has gone is good news by itself, and is not mixed with what has come in its place. Of what is done well each thing has its own count: “spine and heart” on three reeds would say both of each.
    private static IEnumerable<ThemeOverTime> Apart(ThemeOverTime family, StudentHistory history, RecurrenceReport report) =>
        family.Ever.Select(kind => Whole(report.All.First(line => line.Theme.Id == kind.Value), history));

    private static ThemeOverTime Whole(Recurring line, StudentHistory history) => new(line.Theme, [.. history.Batches.Select(line.Theme.Count)], line.Became)
    {
        OnLatest = Found(line.Theme, history.Batches.TakeLast(1)),
        LookedNow = [.. line.Theme.Kinds.Where(kind => history.Now!.Count(kind, line.Theme.Character).Looked > 0)],
        Earlier = Found(line.Theme, history.Batches.SkipLast(1)),
        EarlierSoughtNow = Found(line.Theme, history.Batches.SkipLast(1))
            .All(kind => history.Now!.Count(kind, line.Theme.Character).Looked == line.Theme.Count(history.Now!).Tally.Looked),
    };

    private static IReadOnlyList<FindingKindId> Found(Theme theme, IEnumerable<FindingSheet> sheets) => !theme.IsFamily ? []
        : [.. theme.Kinds.Where(kind => sheets.Any(sheet => sheet.Count(kind, theme.Character).Found > 0))];
}

/// <summary>What has become of something, in the words for a student.</summary>
public enum TimeWord
{
    /// <summary>Surely gone.</summary>
    Gone,

    /// <summary>Surely on fewer reeds than before.</summary>
    Fading,

    /// <summary>Surely new.</summary>
    New,

    /// <summary>Surely on more reeds than before.</summary>
    Growing,

    /// <summary>It stays.</summary>
    Persisting,

    /// <summary>Of a family: what of it was there before has gone, and something else of it is there now.</summary>
    Other,

    /// <summary>It was there, the batch before had none of it, and it is there again.</summary>
    Back,

    /// <summary>It wasn’t looked for on the latest reeds.</summary>
    NotLookedNow,

    /// <summary>It was looked for in one batch alone.</summary>
    FirstLook,

    /// <summary>Not on the latest reeds; too soon to say that it is gone.</summary>
    NotNow,

    /// <summary>Not on the latest reeds, but not all of it was looked for there.</summary>
    NotNowInPart,

    /// <summary>On the latest reeds and not before; too soon to say that it stays.</summary>
    FirstSeen,

    /// <summary>It comes and goes.</summary>
    NowAndThen,
}
