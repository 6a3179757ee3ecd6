namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>Why something can’t be read from a clip.</summary>
public enum Unreadable
{
    /// <summary>The clip is shorter than the reading needs.</summary>
    TooShort,

    /// <summary>No tone is heard in it.</summary>
    NoTone,

    /// <summary>Nothing quiet is before the sound: the recording began too late, or the room is as loud.</summary>
    NoQuietBefore,

    /// <summary>The recording is cut off at full scale.</summary>
    Clipped,

    /// <summary>What is asked for is too close to the noise.</summary>
    TooFaint,
}

/// <summary>A number that was read, with its uncertainty, or the reason why it can’t be read. There is no third.</summary>
public abstract record Reading
{
    private Reading()
    {
    }

    /// <summary>The number; nothing where it can’t be read.</summary>
    public double? Value => this is Known known ? known.Amount : null;

    /// <summary>A number.</summary>
    /// <param name="Amount">In the unit that the reading names.</param>
    /// <param name="PlusMinus">One standard deviation of its error, as far as it can be told.</param>
    public sealed record Known(double Amount, double PlusMinus) : Reading;

    /// <summary>None.</summary>
    /// <param name="Reason">Why.</param>
    public sealed record Unknown(Unreadable Reason) : Reading;

    /// <summary>Makes a number.</summary>
    /// <param name="amount">In the unit that the reading names.</param>
    /// <param name="plusMinus">One standard deviation of its error.</param>
    internal static Reading Of(double amount, double plusMinus) => new Known(amount, plusMinus);

    /// <summary>Says why there is none.</summary>
    /// <param name="reason">Why.</param>
    internal static Reading Not(Unreadable reason) => new Unknown(reason);
}
