using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>What a piece of advice is about; the more it matters the earlier it stands.</summary>
public enum AdviceKind
{
    /// <summary>The work stops, and what was done last wasn’t tried since.</summary>
    StoppedUntried,

    /// <summary>It goes further than the student asked for on this reed.</summary>
    Permission,

    /// <summary>The place is marked to be left alone.</summary>
    LeaveAlone,

    /// <summary>The blades lean against the winding: setting the overlap doesn’t last.</summary>
    AgainstWinding,

    /// <summary>The place was found to be thin already.</summary>
    ThinAlready,

    /// <summary>After this clip the reed is shorter than it may get.</summary>
    LengthFloor,

    /// <summary>The crow has fallen further than the length that is left can win back.</summary>
    FallNotWonBack,

    /// <summary>Hardly anything is left to blow against.</summary>
    ResistanceGone,

    /// <summary>Easy and sharp at once: too much cane has usually gone.</summary>
    EasyAndSharp,

    /// <summary>A clip while the latest crow is sharp.</summary>
    ClipWhenSharp,

    /// <summary>Scraping while the latest crow is flat and the reed easy.</summary>
    ScrapeWhenFlatAndEasy,

    /// <summary>Flat and hard: the closing comes first.</summary>
    ClosingFirst,

    /// <summary>The centre of the heart, the spine or the rails.</summary>
    NeverHurry,

    /// <summary>A clip where only safe changes were asked for: a small one is within that, and can’t be put back all the same.</summary>
    SafeClip,

    /// <summary>A clip on a reed whose crow nobody has heard yet: nothing says whether it may get higher.</summary>
    ClipUnheard,

    /// <summary>Worked three times over without a test.</summary>
    Untested,

    /// <summary>A clip on a reed that nobody has measured.</summary>
    LengthNotMeasured,

    /// <summary>A verdict that tells of work on a reed to which nothing was done.</summary>
    VerdictWithoutWork,

    /// <summary>A verdict that says “unplayed” of a reed that was blown here.</summary>
    UnplayedThoughTried,

    /// <summary>The verdict that stands already, with nothing tried or done since.</summary>
    SameVerdict,
}

/// <summary>A piece of advice: one quiet line, with its reason behind it. It never stops anybody.</summary>
/// <param name="Id">Its own name on this reed: what it is and since which entry it holds.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Line">One line in plain words.</param>
/// <param name="Reason">Why, in a sentence or two.</param>
/// <param name="Mark">How that is known.</param>
public sealed record AdviceLine(AdviceId Id, AdviceKind Kind, string Line, string Reason, EvidenceMark Mark);

/// <summary>An adjustment that is chosen and not recorded yet, or that was recorded last.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Place">Where.</param>
/// <param name="Amount">How much, as far as it was said.</param>
/// <param name="Recorded">Its first entry, when it stands in the log already.</param>
public sealed record PlannedWork(AdjustmentKindId Kind, Place Place, Amount Amount = default, EntryId? Recorded = null)
{
    /// <summary>An adjustment that stands in the log.</summary>
    /// <param name="work">The adjustment.</param>
    public static PlannedWork Of(LiveFact<Adjustment> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return new PlannedWork(work.Now.AdjustmentKind, work.Now.Place, work.Now.Amount, work.Root);
    }

    /// <summary>What was done last, as long as nothing was tried since: once it was, what could be said about it has been overtaken.</summary>
    /// <param name="log">The reed’s log.</param>
    /// <returns>The work; null when there is none, or when a test came after it.</returns>
    public static PlannedWork? Untried(BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return log.Work.LastOrDefault() is { } last && !log.Live<Test>().Any(test => test.Sequence > last.Sequence) ? Of(last) : null;
    }
}

/// <summary>What a clip does to the crow.</summary>
/// <param name="CentsPerTenth">Cents up for each tenth of a millimetre.</param>
/// <param name="Mark">How that is known.</param>
public sealed record ClipEffect(double CentsPerTenth, EvidenceMark Mark)
{
    /// <summary>The cane that stands free above the thread of a 70 mm reed on a 47 mm staple.</summary>
    public const double FreeCane = 23;

    /// <summary>
    /// A bound, not a promise: the blade as a clamped beam of even thickness, 23 mm long; its own tone rises by
    /// 1200·log₂((L ÷ (L − d))²) cents when d is cut off, which is 15 cents for a tenth. No study of cents by clip was found.
    /// </summary>
    public static ClipEffect OfABeam { get; } = new(
        BeamCents(FreeCane, 0.1),
        new EvidenceMark(Evidence.Calculated, "a clamped beam of even thickness, 23 mm long: 1200·log₂((L ÷ (L − d))²)"));

    /// <summary>How far a clamped beam of even thickness rises when it is shortened.</summary>
    /// <param name="length">Its length.</param>
    /// <param name="clip">What is cut off, in the same unit.</param>
    public static double BeamCents(double length, double clip) => 2400 * Math.Log2(length / (length - clip));
}
