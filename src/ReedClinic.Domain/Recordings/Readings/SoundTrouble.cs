namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>Why nothing can be read from a file that is kept.</summary>
public enum SoundTrouble
{
    /// <summary>There is nothing in it.</summary>
    Empty,

    /// <summary>It has more bytes than are read.</summary>
    TooLarge,

    /// <summary>It doesn’t begin as sound does.</summary>
    NotSound,

    /// <summary>It is sound in a form that can be played and not measured.</summary>
    FormNotRead,

    /// <summary>It has more channels than are mixed.</summary>
    ChannelsNotRead,

    /// <summary>Its samples come more slowly or more quickly than is read.</summary>
    RateNotRead,

    /// <summary>It plays longer than is measured.</summary>
    TooLong,

    /// <summary>It contradicts itself or breaks off where nothing can be made of it.</summary>
    Damaged,

    /// <summary>Samples in it are no numbers.</summary>
    NotNumbers,

    /// <summary>There is no sound in it.</summary>
    NoSound,

    /// <summary>The file isn’t there any more.</summary>
    Missing,

    /// <summary>It was tried too often.</summary>
    GaveUp,
}

/// <summary>What reasons have in common with those for which a file isn’t taken.</summary>
public static class SoundTroubles
{
    /// <summary>The refusal of a file that says the same, so that both are told in one wording; null where there is none.</summary>
    /// <param name="trouble">Why nothing can be read.</param>
    public static RecordingRefusal? Same(this SoundTrouble trouble) => trouble switch
    {
        SoundTrouble.Empty => RecordingRefusal.Empty,
        SoundTrouble.TooLarge => RecordingRefusal.TooLarge,
        SoundTrouble.NotSound => RecordingRefusal.NotKnown,
        SoundTrouble.Damaged => RecordingRefusal.Broken,
        _ => null,
    };
}
