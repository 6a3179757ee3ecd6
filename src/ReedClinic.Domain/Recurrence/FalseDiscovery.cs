namespace ReedClinic.Domain.Recurrence;

/// <summary>Many things are looked at together, so some seem to have changed by chance alone. This keeps the share of those small.</summary>
/// <remarks>
/// Y. Benjamini and Y. Hochberg (1995), "Controlling the false discovery rate: a practical and powerful approach to multiple
/// testing", Journal of the Royal Statistical Society B 57, 289–300: the step-up procedure, as adjusted p-values. Families hold the
/// kinds under them, so their p-values go together; under such dependence the rate still holds (Benjamini and Yekutieli 2001).
/// </remarks>
public static class FalseDiscovery
{
    /// <summary>The share of false claims among the claims that is allowed.</summary>
    public const double Allowed = 0.05;

    /// <summary>The smallest rate at which each would be claimed.</summary>
    /// <param name="values">The p-values, from 0 to 1.</param>
    /// <returns>The adjusted p-values, in the same order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A p-value is outside its range.</exception>
    public static IReadOnlyList<double> Adjust(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Any(value => value is not (>= 0 and <= 1)))
        {
            throw new ArgumentOutOfRangeException(nameof(values), "A p-value lies from 0 to 1.");
        }

        var adjusted = new double[values.Count];
        var smallest = 1.0;
        var order = Enumerable.Range(0, values.Count).OrderByDescending(at => values[at]).ToList();
        for (var place = 0; place < order.Count; place++)
        {
            var rank = values.Count - place;
            smallest = Math.Min(smallest, values[order[place]] * values.Count / rank);
            adjusted[order[place]] = smallest;
        }

        return adjusted;
    }
}
