using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>A test that wasn’t made yet, and how much it would tell.</summary>
/// <param name="Test">The test.</param>
/// <param name="Sign">What it would show.</param>
/// <param name="Cause">The cause of which it would tell most.</param>
/// <param name="IfThere">How likely that cause is then, should the sign be there.</param>
/// <param name="IfNot">And should it not.</param>
/// <param name="Bits">How much it is expected to tell of all causes together, in bits; it orders tests.</param>
/// <remarks>
/// The expected information of a sign about each cause (Shannon 1948), the other causes taken as likely as they are now. It orders what could
/// be looked at; the chances that follow a look are worked out exactly once it was made.
/// </remarks>
public sealed record WouldTell(TestCard Test, Sign Sign, Cause Cause, double IfThere, double IfNot, double Bits)
{
    private const double LeastBits = 0.002;

    /// <summary>The tests that would tell most, best first; one for each way to try a reed.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="causes">What is thought now.</param>
    /// <param name="most">At most so many.</param>
    public static IReadOnlyList<WouldTell> Of(Catalogue catalogue, LikelyCauses causes, int most)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(causes);
        var chances = causes.Causes.ToDictionary(one => one.Cause.Id);
        var looked = causes.Counted.Select(one => one.Sign).ToHashSet();
        return
        [
            .. catalogue.Signs.Where(sign => !looked.Contains(sign.Id)).Select(sign => Weigh(catalogue, sign, chances)).OfType<WouldTell>()
                .Where(one => one.Bits >= LeastBits).GroupBy(one => one.Test.Id).Select(cards => cards.MaxBy(one => one.Bits)!)
                .OrderByDescending(one => one.Bits).ThenBy(one => one.Sign.Id.Value, StringComparer.Ordinal).Take(most),
        ];
    }

    private static WouldTell? Weigh(Catalogue catalogue, Sign sign, Dictionary<CauseId, LikelyCause> chances)
    {
        List<(LikelyCause One, double Strength)> links =
            [.. catalogue.LinksOf(sign.Id).Where(link => chances.ContainsKey(link.Cause)).Select(link => (chances[link.Cause], link.Strength.Value))];
        if (links.Count == 0 || catalogue.Find(sign.Test) is not { Retired: false } test)
        {
            return null;
        }

        var absent = links.Aggregate(1 - sign.Unasked.Value, (part, link) => part * (1 - (link.Strength * link.One.Chance)));
        var (bits, best) = (0.0, default(WouldTell));
        foreach (var (one, strength) in links)
        {
            var without = absent / (1 - (strength * one.Chance));
            var withIt = without * (1 - strength);
            var told = Entropy(absent) - (one.Chance * Entropy(withIt)) - ((1 - one.Chance) * Entropy(without));
            bits += Math.Max(0, told);
            if (best is null || told > best.Bits)
            {
                best = new WouldTell(test, sign, one.Cause, one.Chance * (1 - withIt) / (1 - absent), one.Chance * withIt / absent, told);
            }
        }

        return best! with { Bits = bits };
    }

    private static double Entropy(double chance) =>
        chance is <= 0 or >= 1 ? 0 : -((chance * Math.Log2(chance)) + ((1 - chance) * Math.Log2(1 - chance)));
}
