using System.Globalization;

namespace ReedClinic.Domain.Pitch;

/// <summary>
/// A distance between two pitches in cents: a hundredth of an equal-tempered semitone, 1200 to the octave.
/// Plus is sharper, minus is flatter.
/// </summary>
public readonly record struct Cents : IComparable<Cents>
{
    /// <summary>Makes a distance.</summary>
    /// <param name="value">Cents; plus is sharper, minus is flatter.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public Cents(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A distance in cents is finite.");
        }

        Value = value;
    }

    /// <summary>No distance at all.</summary>
    public static Cents Zero => default;

    /// <summary>Cents; plus is sharper, minus is flatter.</summary>
    public double Value { get; }

    /// <summary>
    /// The same distance with whole octaves taken away, above −600 and up to +600: what is left when the octave
    /// of a crow doesn't matter.
    /// </summary>
    public Cents FoldedToOneOctave
    {
        get
        {
            var turn = Value - 1200 * Math.Floor(Value / 1200);
            return new Cents(turn > 600 ? turn - 1200 : turn);
        }
    }

    /// <summary>The distance in words, such as “-12.5 cents”.</summary>
    /// <returns>The words.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.##} cents");

    /// <inheritdoc/>
    public int CompareTo(Cents other) => Value.CompareTo(other.Value);

    /// <summary>Adds two distances.</summary>
    /// <param name="left">One distance.</param>
    /// <param name="right">The other.</param>
    public static Cents operator +(Cents left, Cents right) => new(left.Value + right.Value);

    /// <summary>Takes one distance from another.</summary>
    /// <param name="left">The distance to take from.</param>
    /// <param name="right">The distance to take.</param>
    public static Cents operator -(Cents left, Cents right) => new(left.Value - right.Value);

    /// <summary>True when the left distance is flatter.</summary>
    /// <param name="left">One distance.</param>
    /// <param name="right">The other.</param>
    public static bool operator <(Cents left, Cents right) => left.Value < right.Value;

    /// <summary>True when the left distance is sharper.</summary>
    /// <param name="left">One distance.</param>
    /// <param name="right">The other.</param>
    public static bool operator >(Cents left, Cents right) => left.Value > right.Value;

    /// <summary>True when the left distance is not sharper.</summary>
    /// <param name="left">One distance.</param>
    /// <param name="right">The other.</param>
    public static bool operator <=(Cents left, Cents right) => left.Value <= right.Value;

    /// <summary>True when the left distance is not flatter.</summary>
    /// <param name="left">One distance.</param>
    /// <param name="right">The other.</param>
    public static bool operator >=(Cents left, Cents right) => left.Value >= right.Value;
}
