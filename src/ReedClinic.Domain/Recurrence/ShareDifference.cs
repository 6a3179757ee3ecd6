namespace ReedClinic.Domain.Recurrence;

/// <summary>By how much one share is larger than another, with the interval in which the real difference may lie.</summary>
/// <remarks>
/// R. G. Newcombe (1998), "Interval estimation for the difference between independent proportions: comparison of eleven methods",
/// Statistics in Medicine 17, 873–890, method 10: built from the two Wilson intervals, so that it stays within −1 to 1.
/// </remarks>
/// <param name="Middle">The difference of the two shares; from −1 to 1.</param>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
public readonly record struct ShareDifference(double Middle, double Low, double High)
{
    /// <summary>Works out the difference; null when one of them wasn’t looked at.</summary>
    /// <param name="first">The count whose share is taken.</param>
    /// <param name="second">The count whose share is taken from it.</param>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <returns>The difference, or null.</returns>
    public static ShareDifference? Of(WorthCount first, WorthCount second, double confidence = WilsonInterval.UsualConfidence)
    {
        if (first.Looked <= 0 || second.Looked <= 0)
        {
            return null;
        }

        var (one, other) = (first.Found / first.Looked, second.Found / second.Looked);
        var (of, from) = (
            WilsonInterval.Of(first.Found, first.Looked, confidence),
            WilsonInterval.Of(second.Found, second.Looked, confidence));
        var difference = one - other;
        return new ShareDifference(
            difference,
            difference - Hypotenuse(one - of.Low, from.High - other),
            difference + Hypotenuse(of.High - one, other - from.Low));
    }

    private static double Hypotenuse(double one, double other) => Math.Sqrt((one * one) + (other * other));
}
