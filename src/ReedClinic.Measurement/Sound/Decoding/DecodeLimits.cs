namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>How much of an unknown file is read at the most. What is beyond is refused before it is worked on.</summary>
/// <param name="Bytes">Bytes of the file.</param>
/// <param name="Seconds">Seconds of sound.</param>
/// <param name="Channels">Channels that are mixed into one.</param>
/// <param name="LowestRate">Samples a second, at the least.</param>
/// <param name="HighestRate">Samples a second, at the most.</param>
public sealed record DecodeLimits(int Bytes, int Seconds, int Channels, int LowestRate, int HighestRate)
{
    /// <summary>A minute of anything a telephone or a computer records.</summary>
    public static DecodeLimits Usual { get; } = new(Bytes: 25_000_000, Seconds: 60, Channels: 8, LowestRate: 8_000, HighestRate: 192_000);

    /// <summary>Ends decoding between two pieces of a file, whatever its form; nothing unless said.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>Why sound of this shape isn’t read; nothing when it is.</summary>
    /// <param name="rate">Samples a second.</param>
    /// <param name="channels">Channels.</param>
    /// <param name="frames">Samples of one channel that are said to follow.</param>
    internal DecodeRefusal? Against(long rate, int channels, long frames = 0) =>
        rate < LowestRate || rate > HighestRate ? DecodeRefusal.RateNotRead
        : channels < 1 || channels > Channels ? DecodeRefusal.ChannelsNotRead
        : frames > rate * Seconds ? DecodeRefusal.TooLong
        : null;
}
