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

/// <summary>A guess of what is played, to be corrected by whoever knows.</summary>
/// <param name="Kind">What it seems to be.</param>
/// <param name="Share">How much of the weight it has among all kinds, 0 to 1; it rests on no recording of a real crow.</param>
public readonly record struct SoundGuess(SoundKind Kind, double Share);
