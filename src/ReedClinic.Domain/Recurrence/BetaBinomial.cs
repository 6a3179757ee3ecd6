using MathNet.Numerics;

namespace ReedClinic.Domain.Recurrence;

/// <summary>How often something turns up on the reeds of one batch when reeds of a batch are alike.</summary>
/// <remarks>
/// Share p, likeness ρ: the batch’s own share is drawn from a beta distribution with a = p(1 − ρ)/ρ and b = (1 − p)(1 − ρ)/ρ, which
/// gives two of its reeds the correlation ρ; ρ = 0 is the binomial distribution.
/// </remarks>
internal static class BetaBinomial
{
    /// <summary>The chances of 0, 1 … <paramref name="looked"/> of so many reeds.</summary>
    public static double[] Chances(int looked, double share, double likeness)
    {
        var chances = new double[looked + 1];
        for (var found = 0; found <= looked; found++)
        {
            chances[found] = Math.Exp(LogChance(found, looked, share, likeness));
        }

        return chances;
    }

    /// <summary>The logarithm of B(found + a, rest + b) / B(a, b), without the number of ways; counts need not be whole.</summary>
    public static double LogWeight(double found, double looked, double a, double b) =>
        SpecialFunctions.GammaLn(found + a) + SpecialFunctions.GammaLn(looked - found + b) - SpecialFunctions.GammaLn(looked + a + b)
        - SpecialFunctions.GammaLn(a) - SpecialFunctions.GammaLn(b) + SpecialFunctions.GammaLn(a + b);

    private static double LogChance(int found, int looked, double share, double likeness)
    {
        var ways = SpecialFunctions.BinomialLn(looked, found);
        if (likeness <= 0)
        {
            return ways + (found * Math.Log(share)) + ((looked - found) * Math.Log(1 - share));
        }

        var worth = (1 - likeness) / likeness;
        return ways + LogWeight(found, looked, share * worth, (1 - share) * worth);
    }
}
