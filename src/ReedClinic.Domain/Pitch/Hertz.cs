namespace ReedClinic.Domain.Pitch;

/// <summary>A frequency in hertz (cycles a second): finite and above zero.</summary>
public readonly record struct Hertz : IComparable<Hertz>
{
    /// <summary>Makes a frequency.</summary>
    /// <param name="value">Cycles a second, finite and above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite or not above zero.</exception>
    public Hertz(double value)
    {
        if (!double.IsFinite(value) || value <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A frequency is finite and above zero.");
        }

        Value = value;
    }

    /// <summary>Cycles a second.</summary>
    public double Value { get; }

    /// <inheritdoc/>
    public int CompareTo(Hertz other) => Value.CompareTo(other.Value);

    /// <summary>True when the left frequency is lower.</summary>
    /// <param name="left">One frequency.</param>
    /// <param name="right">The other.</param>
    public static bool operator <(Hertz left, Hertz right) => left.Value < right.Value;

    /// <summary>True when the left frequency is higher.</summary>
    /// <param name="left">One frequency.</param>
    /// <param name="right">The other.</param>
    public static bool operator >(Hertz left, Hertz right) => left.Value > right.Value;

    /// <summary>True when the left frequency is not higher.</summary>
    /// <param name="left">One frequency.</param>
    /// <param name="right">The other.</param>
    public static bool operator <=(Hertz left, Hertz right) => left.Value <= right.Value;

    /// <summary>True when the left frequency is not lower.</summary>
    /// <param name="left">One frequency.</param>
    /// <param name="right">The other.</param>
    public static bool operator >=(Hertz left, Hertz right) => left.Value >= right.Value;
}
