namespace ReedClinic.Domain.Recurrence;

/// <summary>On how many reeds of one batch something was found. What wasn’t looked for counts neither way.</summary>
public readonly record struct BatchCount
{
    /// <summary>Makes a count.</summary>
    /// <param name="found">The reeds on which it was found; from 0 to <paramref name="looked"/>.</param>
    /// <param name="looked">The reeds on which it was looked for; 0 when nobody looked.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public BatchCount(int found, int looked)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(found);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(found, looked);
        (Found, Looked) = (found, looked);
    }

    /// <summary>The reeds on which it was found.</summary>
    public int Found { get; }

    /// <summary>The reeds on which it was looked for.</summary>
    public int Looked { get; }
}

/// <summary>Counts of several batches taken for as much as they tell: less than their reeds when reeds of one batch are alike.</summary>
/// <param name="Found">Of those, found; it need not be a whole number.</param>
/// <param name="Looked">As many reeds, each made by itself, would tell as much; it need not be a whole number.</param>
public readonly record struct WorthCount(double Found, double Looked);
