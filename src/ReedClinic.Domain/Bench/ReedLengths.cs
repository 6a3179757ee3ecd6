using System.Globalization;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>How short a reed may get before another clip should be thought over.</summary>
/// <param name="Millimetres">The length over all.</param>
/// <param name="Mark">How it is known.</param>
public sealed record LengthFloor(decimal Millimetres, EvidenceMark Mark);

/// <summary>The length over all that is left.</summary>
/// <param name="Millimetres">The last length that was measured, less the clips since.</param>
/// <param name="Measured">The measurement’s first entry.</param>
/// <param name="MeasuredAt">Its place in the log.</param>
/// <param name="IsGuessed">True when a clip since then had no size, so that its usual one was taken.</param>
public sealed record LengthLeft(decimal Millimetres, EntryId Measured, int MeasuredAt, bool IsGuessed);

/// <summary>
/// What a length over all can be, and how short a finished reed may get. The ranges catch slips of the finger and are this
/// program’s own; the floors say beside them what they come from.
/// </summary>
/// <remarks>
/// Long scrape: finished reeds of 69 to 71 mm in teaching texts and a lesson diary (oboeinsight.com, 12 September 2008;
/// blog.paddlefish.net), 67.5 to 68.5 mm as one player’s habit (woodwind.org forum, message 7822), and a story of reeds trimmed
/// from 72 to 65 mm that would no longer play in tune (woodwind.org forum, message 3724). Short scrape: a player who wanted 72 mm
/// and called 71 too short (auntymurielsoboe.wordpress.com); 71 to 73 mm from memory. Cor anglais: 54 to 58 mm from memory.
/// For oboe d’amore and bass oboe no source was found, so they have no floor.
/// </remarks>
public static class ReedLengths
{
    private static readonly LengthFloor LongScrape = new(66m, new EvidenceMark(
        Evidence.OwnDefault, "just above a story of reeds trimmed to 65 mm that would not play in tune: woodwind.org forum, message 3724"));

    private static readonly LengthFloor ShortScrape = new(70m, new EvidenceMark(
        Evidence.OwnDefault, "just below the 71 mm that a player called too short: auntymurielsoboe.wordpress.com, on reedmaking"));

    private static readonly LengthFloor CorAnglais = new(54m, new EvidenceMark(Evidence.FromMemory));

    /// <summary>What “a hair” is counted as, in millimetres, when no size was said.</summary>
    public const decimal UsualHair = 0.15m;

    /// <summary>What a clip is counted as, in millimetres, when no size was said.</summary>
    public const decimal UsualClip = 0.4m;

    /// <summary>What an adjustment takes off the length; the middle of the usual amount where no size was said (common practice).</summary>
    /// <param name="kind">What is done.</param>
    /// <param name="amount">How much.</param>
    /// <returns>Millimetres, or null when it takes no length off, or nobody can say how much.</returns>
    public static decimal? ClipOf(AdjustmentKindId kind, Amount amount) => kind.Value switch
    {
        "clip-hair" => amount.Millimetres ?? UsualHair,
        "clip" => amount.Millimetres ?? UsualClip,
        "square-tip" => amount.Millimetres,
        _ => null,
    };

    /// <summary>The length that is left: the last one that was measured, less the clips since.</summary>
    /// <param name="log">The reed’s log.</param>
    /// <param name="until">What is said from this place in the log on isn’t counted.</param>
    /// <returns>The length, or null when nobody has measured it.</returns>
    public static LengthLeft? Left(BenchLog log, int until = int.MaxValue)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (log.Live<Test>().LastOrDefault(test => test.Now.TestKind == TestKind.Length && test.Sequence < until) is not { } measured)
        {
            return null;
        }

        var clips = log.Live<Adjustment>()
            .Where(work => work.Sequence > measured.Sequence && work.Sequence < until)
            .Select(work => work.Now)
            .Where(work => ClipOf(work.AdjustmentKind, work.Amount) is not null).ToList();

        // One blade first and then the other makes one clip.
        var gone = new[] { Blades.Upper, Blades.Lower }.Max(blade => clips
            .Where(clip => clip.Blades == Blades.Both || clip.Blades == blade)
            .Sum(clip => ClipOf(clip.AdjustmentKind, clip.Amount)!.Value));
        return new LengthLeft(
            measured.Now.Millimetres!.Value - gone, measured.Root, measured.Sequence, clips.Exists(clip => clip.AmountMicrometres is null));
    }

    /// <summary>How short a finished reed may get.</summary>
    /// <param name="instrument">The instrument; an oboe when nobody said.</param>
    /// <param name="scrape">How it is scraped; the long scrape when nobody said.</param>
    /// <returns>The floor, or null where nothing is known.</returns>
    public static LengthFloor? FloorOf(Instrument? instrument, ScrapeStyle? scrape) => (instrument ?? Instrument.Oboe, scrape) switch
    {
        (Instrument.Oboe, ScrapeStyle.ShortScrape) => ShortScrape,
        (Instrument.Oboe, _) => LongScrape,
        (Instrument.CorAnglais, _) => CorAnglais,
        _ => null,
    };

    /// <summary>What is wrong with a length before it is known of which instrument it is.</summary>
    /// <param name="millimetres">The length over all.</param>
    /// <returns>The problem, or null.</returns>
    public static Problem? Check(decimal? millimetres) => millimetres switch
    {
        null => Refuse("Type the length in millimetres, such as 70.5."),
        { } mm when mm != Math.Round(mm, 1) => Refuse("Type the length to a tenth of a millimetre, such as 70.5."),
        < 40 or > 90 => Refuse("A reed is 40 to 90 mm long over all."),
        _ => null,
    };

    /// <summary>What is wrong with a measured length for this instrument.</summary>
    /// <param name="instrument">The instrument, if it was said.</param>
    /// <param name="entry">Any entry; only a length is looked at.</param>
    /// <returns>The problem, or null.</returns>
    public static Problem? Check(Instrument? instrument, BenchEntry entry)
    {
        if (instrument is not { } which || entry is not Test { TestKind: TestKind.Length, Millimetres: { } mm })
        {
            return null;
        }

        var (lowest, highest) = which switch
        {
            Instrument.Oboe => (60m, 80m),
            Instrument.CorAnglais => (48m, 68m),
            Instrument.OboeDAmore => (50m, 75m),
            _ => (45m, 75m),
        };
        return mm >= lowest && mm <= highest
            ? null
            : Refuse(string.Create(CultureInfo.InvariantCulture, $"For this instrument a reed is {lowest:0} to {highest:0} mm long over all."));
    }

    private static Problem Refuse(string words) => new(nameof(Test.Millimetres), words);
}
