namespace ReedClinic.Domain.Reeds;

/// <summary>One reed in one batch.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything.</param>
public readonly record struct ReedId(Guid Value);

/// <summary>One parcel of reeds, from intake to return.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything.</param>
public readonly record struct BatchId(Guid Value);

/// <summary>How a reed is scraped.</summary>
public enum ScrapeStyle
{
    /// <summary>Scraped down almost to the thread, with windows.</summary>
    LongScrape,

    /// <summary>Tip and a short lay; bark down to the thread.</summary>
    ShortScrape,
}

/// <summary>The instrument a reed belongs to.</summary>
public enum Instrument
{
    /// <summary>Oboe, in C.</summary>
    Oboe,

    /// <summary>Cor anglais, a fifth lower.</summary>
    CorAnglais,

    /// <summary>Oboe d'amore, a minor third lower.</summary>
    OboeDAmore,

    /// <summary>Bass oboe, an octave lower.</summary>
    BassOboe,
}
