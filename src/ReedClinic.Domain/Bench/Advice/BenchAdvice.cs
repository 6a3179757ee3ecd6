using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>
/// What a teacher may want to remember before the next stroke: advice with its reason, never a lock.
/// </summary>
/// <remarks>
/// A piece of advice holds since some entry (the crow with which the reed became sharp, the last test, the finding), and its name
/// says so. It isn’t due again on this reed once it was set aside, nor once it was acted upon: when what it asked for has been
/// done, or when the same work was recorded all the same since that entry, which means that the teacher chose otherwise. When the
/// crow comes back to its note and becomes sharp again later, that is another occurrence with another name.
/// </remarks>
public static class BenchAdvice
{
    private static readonly IReadOnlyList<Func<AdviceMatter, AdviceLine?>> Rules =
    [
        RecordRules.StoppedUntried,
        RecordRules.Permission,
        RecordRules.LeaveAlone,
        PlaceRules.AgainstWinding,
        PlaceRules.ThinAlready,
        LengthRules.Floor,
        LengthRules.FallNotWonBack,
        CrowRules.ResistanceGone,
        CrowRules.EasyAndSharp,
        CrowRules.ClipWhenSharp,
        CrowRules.ScrapeWhenFlatAndEasy,
        CrowRules.ClosingFirst,
        PlaceRules.NeverHurry,
        RecordRules.SafeClip,
        CrowRules.ClipUnheard,
        RecordRules.Untested,
        LengthRules.NotMeasured,
    ];

    /// <summary>The advice that is due now, most important first; at most one line of a kind.</summary>
    /// <param name="log">The reed’s log.</param>
    /// <param name="reed">The reed, with what the student allowed.</param>
    /// <param name="batch">Its batch: instrument, scrape, and what the student tunes to.</param>
    /// <param name="planned">An adjustment that is chosen, or was recorded last; null when there is none.</param>
    /// <param name="clip">What a clip does at this bench, when the studio knows; otherwise a bound that is worked out.</param>
    /// <param name="stops">True while it is being said that the work stops here.</param>
    public static IReadOnlyList<AdviceLine> For(
        BenchLog log, Reed reed, Batch batch, PlannedWork? planned = null, ClipEffect? clip = null, bool stops = false)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(reed);
        ArgumentNullException.ThrowIfNull(batch);
        var matter = new AdviceMatter(log, reed, batch, planned, clip) { Stops = stops };
        var gone = log.Live<AdviceSetAside>().Select(aside => SameBreath.Lasting(log, aside.Now.AdviceId)).ToHashSet();
        return [.. Rules.Select(rule => rule(matter)).OfType<AdviceLine>().Where(line => !gone.Contains(line.Id))];
    }
}
