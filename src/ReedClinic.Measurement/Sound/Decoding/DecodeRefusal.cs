namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Why a file isn’t read.</summary>
public enum DecodeRefusal
{
    /// <summary>There is nothing in it.</summary>
    Empty,

    /// <summary>It has more bytes than are taken.</summary>
    TooManyBytes,

    /// <summary>It doesn’t begin as sound does, whatever it is called.</summary>
    NotSound,

    /// <summary>It is sound, in a form that isn’t read here: <see cref="SoundForms.Read"/> are.</summary>
    FormNotRead,

    /// <summary>It has no channel, or more than are mixed.</summary>
    ChannelsNotRead,

    /// <summary>Its samples come more slowly or more quickly than is read.</summary>
    RateNotRead,

    /// <summary>It lasts longer than is taken, or says so.</summary>
    TooLong,

    /// <summary>It contradicts itself or breaks off where nothing can be made of it.</summary>
    Damaged,

    /// <summary>Samples in it are no numbers, or beyond all measure.</summary>
    NotNumbers,

    /// <summary>Everything about it is right, and there is no sound in it.</summary>
    NoSound,
}
