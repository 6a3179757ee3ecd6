using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;

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
    /// <param name="entry">What is about to be recorded. Work that was agreed with the student has been asked about already.</param>
    /// <param name="earlier">What is said before it in the same breath.</param>
    public static AdviceLine? Of(BenchLog log, Reed reed, Batch batch, BenchEntry entry, params IReadOnlyList<BenchEntry> earlier)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(earlier);
        var due = entry switch
        {
            Adjustment work when WorkKinds.IsClip(work.AdjustmentKind) && !Agreement.IsIn(work.Words) => BenchAdvice
                .For(log, reed, batch, new PlannedWork(work.AdjustmentKind, work.Place, work.Amount)).Where(line => OfAClip.Contains(line.Kind)),
            Verdict verdict => new[] { Same(log, verdict), WithoutWork(log, verdict) }.OfType<AdviceLine>()
                .Where(line => !log.Live<AdviceSetAside>().Any(aside => aside.Now.AdviceId == line.Id)),
            _ => [],
        };
        return due.FirstOrDefault(line => !earlier.Any(said => Answers(said, line.Kind)));
    }

    // What was asked for is said in the same breath.
    private static bool Answers(BenchEntry said, AdviceKind asked) => asked switch
    {
        AdviceKind.ClipUnheard => said is Test { TestKind: TestKind.Crow, Pitch: not null },
        AdviceKind.VerdictWithoutWork => said is Adjustment,
        AdviceKind.SameVerdict => IsNews(said),
        _ => false,
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
        verdict.VerdictKind is VerdictKind.Improved or VerdictKind.GoodOnArrivalRefined && !log.Live<Adjustment>().Any()
            ? new AdviceLine(
                new AdviceId("verdict-without-work/start"), AdviceKind.VerdictWithoutWork,
                $"Nothing stands here as done to this reed: “{verdict.VerdictKind.Name()}” would tell of work.",
                $"Where nothing was done and nothing plays better, the letter leaves it out. What was done can be said first; if it was nothing, “{VerdictKind.LeftAsItCame.Name()}” says that.", ThisLog)
            : null;
}
