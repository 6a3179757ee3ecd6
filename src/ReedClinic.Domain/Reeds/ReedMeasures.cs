namespace ReedClinic.Domain.Reeds;

/// <summary>The lengths that a drawing of a finished reed is made from, in millimetres. A picture to point at, not a norm for any one reed.</summary>
/// <param name="Staple">The staple, whose narrow end lies under the last turns of the thread.</param>
/// <param name="TipAtCentre">Length of the tip on the centre line.</param>
/// <param name="TipAtSides">Length of the tip along the edges.</param>
/// <param name="Heart">Length of the heart along the edges; in the short scrape the rest of the scraped part.</param>
/// <param name="Windows">Length of the back with its windows; nothing in the short scrape.</param>
/// <param name="Bark">The band of bark above the thread, along the edges.</param>
/// <param name="TipWidth">Width at the tip.</param>
/// <param name="ThroatWidth">Width where the cane enters the thread.</param>
public sealed record ReedMeasures(
    double Staple,
    double TipAtCentre,
    double TipAtSides,
    double Heart,
    double Windows,
    double Bark,
    double TipWidth,
    double ThroatWidth)
{
    /// <summary>
    /// Long scrape. Tip 2 at the centre and 4 at the sides, heart about 5, windows about 11, bark about 3: a teacher's open
    /// pages (oboeinsight.com, instruction, reed-making, reed-definitions). Tip width about 7: common practice. Throat
    /// width: a drawing default, no source.
    /// </summary>
    public static ReedMeasures LongScrape { get; } = new(47, 2, 4, 5, 11, 3, 7, 4.1);

    /// <summary>
    /// Short scrape. Staple 46 and an overall length near 72 (common practice), scraped for less than half of the cane, bark
    /// from there to the thread; the split between tip and lay is a drawing default, no source.
    /// </summary>
    public static ReedMeasures ShortScrape { get; } = new(46, 2, 3.4, 4.6, 0, 18, 7.2, 4.3);

    /// <summary>
    /// Cor anglais, long scrape: about 57 over all on a tube of about 27, wider at the tip than an oboe's (all from memory); how
    /// the cane is divided is a drawing default, no source. Oboe d'amore and bass oboe are drawn like it, for want of a source.
    /// </summary>
    public static ReedMeasures CorAnglaisLong { get; } = new(27, 2.4, 4.6, 6.2, 14, 5.2, 8, 4.9);

    /// <summary>Cor anglais, short scrape: as the long one over all; the split is a drawing default, no source.</summary>
    public static ReedMeasures CorAnglaisShort { get; } = new(27, 2.4, 4.2, 5.8, 0, 20, 8, 4.9);

    /// <summary>The free cane above the thread.</summary>
    public double Cane => TipAtSides + Heart + Windows + Bark;

    /// <summary>From the cork end of the staple to the tip: the length that players quote.</summary>
    public double Overall => Staple + Cane;

    /// <summary>The measures that a reed is drawn with.</summary>
    /// <param name="style">How the reed is scraped.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    /// <returns>The lengths.</returns>
    public static ReedMeasures For(ScrapeStyle style, Instrument? instrument = null) => (IsOboe(instrument), style) switch
    {
        (true, ScrapeStyle.ShortScrape) => ShortScrape,
        (true, _) => LongScrape,
        (false, ScrapeStyle.ShortScrape) => CorAnglaisShort,
        (false, _) => CorAnglaisLong,
    };

    /// <summary>Whether a reed sits on a staple with a cork: an oboe's does, the lower ones' tubes are pushed onto a bocal.</summary>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    public static bool IsOboe(Instrument? instrument) => (instrument ?? Instrument.Oboe) == Instrument.Oboe;
}
