using MathNet.Numerics.Distributions;

namespace ReedClinic.Domain.Recurrence;

/// <summary>
/// The Wilson score interval, without continuity correction: between which shares the real one may lie when something
/// was seen <c>found</c> times in <c>looked</c>.
/// </summary>
/// <remarks>
/// Newcombe, R. G. (1998), "Two-sided confidence intervals for the single proportion: comparison of seven methods",
/// Statistics in Medicine 17, 857–872, method 3. Chosen because it stays inside 0 to 1 and is sensible for the three or
/// four reeds of a batch, where the textbook interval gives zero width for "all of them".
/// </remarks>
/// <param name="Low">The lower end, from 0 to 1.</param>
/// <param name="High">The upper end, from 0 to 1.</param>
public readonly record struct WilsonInterval(double Low, double High)
{
    /// <summary>The usual confidence.</summary>
    public const double UsualConfidence = 0.95;

    /// <summary>Works out the interval.</summary>
    /// <param name="found">How often it was seen; from 0 to <paramref name="looked"/>.</param>
    /// <param name="looked">How often it was looked for; 0 gives the whole range, because nothing is known.</param>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static WilsonInterval Of(int found, int looked, double confidence = UsualConfidence) =>
        Of((double)found, looked, confidence);

    /// <summary>The same for counts that were made smaller because reeds of one batch are alike (see <see cref="BatchLikeness"/>).</summary>
    /// <param name="found">From 0 to <paramref name="looked"/>; it need not be a whole number.</param>
    /// <param name="looked">0 or more; it need not be a whole number.</param>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static WilsonInterval Of(double found, double looked, double confidence = UsualConfidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(found);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(found, looked);
        if (confidence is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "Between 0 and 1.");
        }

        if (looked == 0)
        {
            return new WilsonInterval(0, 1);
        }

        var z = Normal.InvCDF(0, 1, (1 + confidence) / 2);
        var n = looked;
        var share = found / n;
        var centre = share + (z * z / (2 * n));
        var spread = z * Math.Sqrt((share * (1 - share) / n) + (z * z / (4 * n * n)));
        var scale = 1 + (z * z / n);

        // At the two ends the formula gives exactly 0 and 1; rounding must not put it a hair outside.
        return new WilsonInterval(
            found == 0 ? 0 : (centre - spread) / scale,
            found == looked ? 1 : (centre + spread) / scale);
    }
}
