namespace ReedClinic.Domain.Pitch;

/// <summary>What an ensemble tunes to: the frequency of the A above middle C (A4).</summary>
/// <remarks>
/// From 380 to 500 Hz, which leaves room for low historical pitch (415 Hz is usual there) and catches slips of the finger.
/// </remarks>
public readonly record struct Tuning
{
    /// <summary>The lowest A4 that is taken, in hertz.</summary>
    public const double LowestA4Hz = 380;

    /// <summary>The highest A4 that is taken, in hertz.</summary>
    public const double HighestA4Hz = 500;

    /// <summary>Makes a tuning.</summary>
    /// <param name="a4">The A above middle C, from 380 to 500 Hz.</param>
    /// <exception cref="ArgumentOutOfRangeException">The A is outside that range.</exception>
    public Tuning(Hertz a4)
    {
        if (a4.Value is < LowestA4Hz or > HighestA4Hz)
        {
            throw new ArgumentOutOfRangeException(nameof(a4), a4.Value, "A4 lies between 380 and 500 Hz.");
        }

        A4 = a4;
    }

    /// <summary>A4 = 440 Hz, the standard tuning frequency (ISO 16:1975).</summary>
    public static Tuning Standard => new(new Hertz(440));

    /// <summary>The A above middle C.</summary>
    public Hertz A4 { get; }
}
