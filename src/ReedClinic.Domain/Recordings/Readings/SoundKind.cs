namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>What is played in a clip.</summary>
public enum SoundKind
{
    /// <summary>The reed alone, lips at the thread: octaves sounding together.</summary>
    Crow,

    /// <summary>The reed alone in playing position: one high note.</summary>
    Peep,

    /// <summary>A note that is held.</summary>
    LongTone,

    /// <summary>Notes that are begun and left.</summary>
    Attack,
}

/// <summary>How sure a guess is.</summary>
public enum GuessSureness
{
    /// <summary>It may as well be something else: nothing is judged by it.</summary>
    Perhaps,

    /// <summary>More likely than all else together.</summary>
    Probably,

    /// <summary>Little else comes into question.</summary>
    Like,
}

/// <summary>A guess of what is played, to be corrected by whoever knows.</summary>
/// <param name="Kind">What it seems to be.</param>
/// <param name="Share">How much of the weight it has among all kinds, 0 to 1; it rests on no recording of a real crow.</param>
public readonly record struct SoundGuess(SoundKind Kind, double Share)
{
    /// <summary>What is shorter than so many seconds is a scrap, of which nothing is known for sure. The house’s own choice, without a source.</summary>
    public const double ScrapSeconds = 0.5;

    /// <summary>How sure it is.</summary>
    /// <param name="seconds">How long the clip is, in seconds.</param>
    public GuessSureness Sureness(double seconds) =>
        seconds < ScrapSeconds || Share < 0.5 ? GuessSureness.Perhaps : Share < 0.8 ? GuessSureness.Probably : GuessSureness.Like;
}
