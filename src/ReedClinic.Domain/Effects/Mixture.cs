using MathNet.Numerics.Distributions;

namespace ReedClinic.Domain.Effects;

/// <summary>What is thought of one number when several models are possible: each model’s own posterior, by how well it explains what was seen.</summary>
internal sealed class Mixture
{
    private readonly IReadOnlyList<(double Weight, double Middle, double Spread, double Freedom)> parts;

    public Mixture(IReadOnlyList<(double LogWeight, double Middle, double Spread, double Freedom)> models)
    {
        var most = models.Max(model => model.LogWeight);
        var sum = models.Sum(model => Math.Exp(model.LogWeight - most));
        parts = [.. models.Select(model => (Math.Exp(model.LogWeight - most) / sum, model.Middle, model.Spread, model.Freedom))
            .Where(part => part.Item1 > 1e-6)];
    }

    /// <summary>The mean.</summary>
    public double Middle => parts.Sum(part => part.Weight * part.Middle) / parts.Sum(part => part.Weight);

    /// <summary>How likely it lies below.</summary>
    public double Below(double value) => parts.Sum(part => part.Weight * Chance((value - part.Middle) / part.Spread, part.Freedom)) / parts.Sum(part => part.Weight);

    /// <summary>Below which value it lies with this chance.</summary>
    public double Quantile(double chance)
    {
        var (low, high) = (parts.Min(part => part.Middle - (60 * part.Spread)), parts.Max(part => part.Middle + (60 * part.Spread)));
        for (var round = 0; round < 60; round++)
        {
            var middle = (low + high) / 2;
            (low, high) = Below(middle) < chance ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static double Chance(double away, double freedom) => freedom > 1e6 ? Normal.CDF(0, 1, away) : StudentT.CDF(0, 1, freedom, away);
}
