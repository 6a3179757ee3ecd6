using System.Text.Json.Serialization;

namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>Why one number can’t be read from a clip that can be heard.</summary>
public enum Unread
{
    /// <summary>The clip is shorter than the number needs.</summary>
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

/// <summary>A number with its uncertainty, or why there is none. There is no third.</summary>
public sealed record Figure
{
    /// <summary>Takes the parts as they were stored.</summary>
    /// <param name="value">The number, in the unit that whoever holds it names.</param>
    /// <param name="plusMinus">One standard deviation of its error, in the same unit; 0 or more.</param>
    /// <param name="why">Why there is none.</param>
    /// <exception cref="ArgumentException">There is a number and a reason, or neither, or one that isn’t finite.</exception>
    [JsonConstructor]
    public Figure(double? value, double? plusMinus, Unread? why)
    {
        if (value is null == why is null || value is null != plusMinus is null)
        {
            throw new ArgumentException("A number with its uncertainty, or a reason.", nameof(value));
        }

        if (!double.IsFinite(value ?? 0) || !double.IsFinite(plusMinus ?? 0) || plusMinus < 0)
        {
            throw new ArgumentException("Numbers are finite, and an uncertainty is no less than nothing.", nameof(plusMinus));
        }

        (Value, PlusMinus, Why) = (value, plusMinus, why);
    }

    /// <summary>The number; null where it can’t be read.</summary>
    public double? Value { get; }

    /// <summary>One standard deviation of its error, as far as it can be told; null where there is no number.</summary>
    public double? PlusMinus { get; }

    /// <summary>Why it can’t be read; null where it can.</summary>
    public Unread? Why { get; }

    /// <summary>A number.</summary>
    /// <param name="value">The number.</param>
    /// <param name="plusMinus">One standard deviation of its error.</param>
    public static Figure Of(double value, double plusMinus) => new(value, plusMinus, null);

    /// <summary>None.</summary>
    /// <param name="why">Why.</param>
    public static Figure None(Unread why) => new(null, null, why);
}
