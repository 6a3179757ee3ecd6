using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>
/// What a teacher is told before something is recorded, since it can’t be put back or will be told to the student: cane that is
/// clipped, and a verdict that the log doesn’t bear out. It is advice with its reason and no lock: said once more, it is recorded,
/// and the advice stays set aside on this reed.
/// </summary>
/// <remarks>Common practice, with no source; the verdicts are held against this reed’s own log.</remarks>
public static class Beforehand
{
    private static readonly AdviceKind[] OfAClip =
        [AdviceKind.LeaveAlone, AdviceKind.LengthFloor, AdviceKind.ClipWhenSharp, AdviceKind.SafeClip, AdviceKind.ClipUnheard];

    private static readonly EvidenceMark ThisLog = new(Evidence.OnRecord, "this reed’s log");

    /// <summary>The weightiest thing to say before an entry is recorded; null where nothing is to be said.</summary>
    /// <param name="log">The reed’s log before it.</param>
    /// <param name="reed">The reed, with what the student allowed.</param>
    /// <param name="batch">Its batch.</param>
    /// <param name="entry">What is about to be recorded. Work of which it is said whether it was agreed has been asked about already.</param>
    /// <param name="earlier">What is said before it in the same breath.</param>
    public static AdviceLine? Of(BenchLog log, Reed reed, Batch batch, BenchEntry entry, params IReadOnlyList<BenchEntry> earlier) =>
        All(log, reed, batch, entry, earlier) is [var first, ..] ? first : null;

    /// <summary>Everything to say before an entry is recorded, the weightiest first: an answer to one is no answer to another.</summary>
    /// <param name="log">The reed’s log before it.</param>
    /// <param name="reed">The reed, with what the student allowed.</param>
    /// <param name="batch">Its batch.</param>
    /// <param name="entry">What is about to be recorded. Work that was agreed with the student has been asked about already.</param>
    /// <param name="earlier">What is said before it in the same breath.</param>
    public static IReadOnlyList<AdviceLine> All(BenchLog log, Reed reed, Batch batch, BenchEntry entry, params IReadOnlyList<BenchEntry> earlier) =>
        All(log, reed, batch, entry, default, earlier);

    /// <summary>The same, where it is known which operation will record it: what holds since something in the same breath is named by that.</summary>
    /// <param name="log">The reed’s log before it.</param>
    /// <param name="reed">The reed, with what the student allowed.</param>
    /// <param name="batch">Its batch.</param>
    /// <param name="entry">What is about to be recorded.</param>
    /// <param name="operation">The operation.</param>
    /// <param name="earlier">What is said before it in the same breath.</param>
    public static IReadOnlyList<AdviceLine> All(BenchLog log, Reed reed, Batch batch, BenchEntry entry, OperationId operation, IReadOnlyList<BenchEntry> earlier)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(earlier);
        var before = SameBreath.After(log, earlier, operation);
        return entry switch
        {
            Adjustment work when WorkKinds.IsClip(work.AdjustmentKind) && !Agreement.IsSaid(work.Words) =>
                OfClip(before, reed, batch, new PlannedWork(work.AdjustmentKind, work.Place, work.Amount)),
            Verdict verdict =>
                [.. new[] { Same(before, verdict), WithoutWork(before, verdict), Unplayed(before, verdict) }.OfType<AdviceLine>().Where(line => !log.Live<AdviceSetAside>().Any(aside => aside.Now.AdviceId == line.Id))],
            _ => [],
        };
    }

    /// <summary>Everything to say before a clip takes another entry’s place, judged by what stood before that; nothing where no more is cut than was said at first.</summary>
    /// <param name="fact">What is said better.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="reed">The reed, with what the student allowed.</param>
    /// <param name="batch">Its batch.</param>
    /// <param name="better">What is to stand in its place.</param>
    public static IReadOnlyList<AdviceLine> InPlaceOf(BenchFact fact, BenchLog log, Reed reed, Batch batch, BenchEntry better)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return better is not Adjustment work || !WorkKinds.IsClip(work.AdjustmentKind) || Agreement.IsSaid(work.Words)
            || (fact.Now is Adjustment was && IsNoLonger(work, was))
            ? []
            : OfClip(log, reed, batch, new PlannedWork(work.AdjustmentKind, work.Place, work.Amount, fact.Root));
    }

    private static bool IsNoLonger(Adjustment clip, Adjustment was) =>
        (was.AdjustmentKind == clip.AdjustmentKind && was.Amount == clip.Amount && was.Place == clip.Place)
        || ReedLengths.ClipOf(clip.AdjustmentKind, clip.Amount) <= ReedLengths.ClipOf(was.AdjustmentKind, was.Amount);

    private static IReadOnlyList<AdviceLine> OfClip(BenchLog log, Reed reed, Batch batch, PlannedWork clip) =>
        [.. BenchAdvice.For(log, reed, batch, clip).Where(line => OfAClip.Contains(line.Kind)).Select(AsDone)];

    // Whoever says a clip has mostly made it: what speaks of one to come says what is left to do, and what there is to do if it is to come.
    private static AdviceLine AsDone(AdviceLine line) => line.Kind switch
    {
        AdviceKind.SafeClip => line with
        {
            Line = "Safe changes only were asked for, and a clip stays: the crow next, before any more.",
            Reason = "A hair at a time keeps to what was asked for while the latest crow isn’t sharp. If it isn’t cut yet, hear the crow first.",
        },
        AdviceKind.ClipUnheard => line with
        {
            Line = "No crow with a pitch was said before this clip, so what it did to the pitch can’t be told.",
            Reason = "If it is cut, say the crow next. If it isn’t cut yet, leave this out, say the crow, and then the clip: the crow before it tells whether it may get higher.",
        },
        _ => line,
    };

    private static bool IsNews(BenchEntry said) => said is Test or Adjustment or Finding or FindingEnded;

    // Another day’s look may well come to the same; what stands already needs saying once.
    private static AdviceLine? Same(BenchLog log, Verdict verdict) =>
        log.Verdict is { } standing && standing.Now.VerdictKind == verdict.VerdictKind
        && !log.Live<BenchEntry>().Any(fact => fact.Sequence > standing.Sequence && IsNews(fact.Now))
            ? new AdviceLine(
                AdviceMatter.IdOf("same-verdict", standing.Root), AdviceKind.SameVerdict,
                $"This verdict stands already: {verdict.VerdictKind.Name()}.",
                "Nothing was tried or done since; once is enough.", ThisLog)
            : null;

    private static AdviceLine? WithoutWork(BenchLog log, Verdict verdict) =>
        verdict.VerdictKind is VerdictKind.Improved or VerdictKind.GoodOnArrivalRefined && !log.Work.Any()
            ? new AdviceLine(
                new AdviceId("verdict-without-work/start"), AdviceKind.VerdictWithoutWork,
                $"Nothing stands here as done to this reed: “{verdict.VerdictKind.Name()}” would tell of work.",
                $"Where nothing was done and nothing plays better, the letter leaves it out. What was done can be said first; if it was nothing, “{VerdictKind.LeftAsItCame.Name()}” says that.", ThisLog)
            : null;

    private static AdviceLine? Unplayed(BenchLog log, Verdict verdict) =>
        verdict.VerdictKind == VerdictKind.ReturnedUnplayed && log.Blown.LastOrDefault() is { } last
            ? new AdviceLine(
                AdviceMatter.IdOf("unplayed-though-tried", last.Root), AdviceKind.UnplayedThoughTried,
                $"This reed was blown here: its log has tests, and “{verdict.VerdictKind.Name()}” would say that it wasn’t.",
                "The letter would send it back unplayed beside what its tests told. Another verdict says how it goes back; a test that belongs to another reed can be taken back first.", ThisLog)
            : null;
}
