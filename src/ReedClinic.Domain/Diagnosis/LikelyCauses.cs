using System.Globalization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>One cause, and how likely it is.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Chance">How likely it is by what was seen, from 0 to 1.</param>
/// <param name="Low">Not less likely than this; the same as the chance where it is exact.</param>
/// <param name="High">Not more likely than this; the same as the chance where it is exact.</param>
public sealed record LikelyCause(Cause Cause, double Chance, double Low, double High);

/// <summary>
/// Which causes are likely behind what was seen on one reed. Several may hold at once: the chances don’t add up to 1. They rest on priors
/// and strengths that are this program’s own defaults, so their order tells more than their size.
/// </summary>
public sealed class LikelyCauses
{
    /// <summary>What a teacher’s “it was this” counts for before the signs are weighed: it may still be a mistake. This program’s own default.</summary>
    public const double SaidToBe = 0.97;

    /// <summary>What a teacher’s “it wasn’t this” counts for. This program’s own default.</summary>
    public const double SaidNotToBe = 0.001;

    private readonly Catalogue catalogue;
    private readonly IReadOnlyList<Sighting> sightings;
    private readonly NoisyOr network;
    private readonly List<Observed> evidence;
    private readonly BoundedPosterior posterior;
    private readonly Dictionary<CauseId, int> places;
    private readonly Dictionary<int, double[]> without = [];

    private LikelyCauses(Catalogue catalogue, SettledSigns settled, IReadOnlyDictionary<CauseId, CauseAnswer> said)
    {
        this.catalogue = catalogue;
        sightings = settled.Sightings;
        places = catalogue.Causes.Select((cause, at) => (cause.Id, at)).ToDictionary(one => one.Id, one => one.at);
        network = new NoisyOr([.. catalogue.Causes.Select(cause => Before(cause, said))]);
        evidence = [.. sightings.Select(Observe)];
        posterior = ManySigns.Infer(network, evidence);
        Causes =
        [
            .. catalogue.Causes.Select((cause, at) => new LikelyCause(cause, posterior.Chances[at], posterior.Low[at], posterior.High[at]))
                .OrderByDescending(one => one.Chance).ThenBy(one => one.Cause.Id.Value, StringComparer.Ordinal),
        ];
        Remarks = [.. settled.Remarks, .. Limits()];
    }

    /// <summary>Every cause in use, the likeliest first.</summary>
    public IReadOnlyList<LikelyCause> Causes { get; }

    /// <summary>False when there were too many signs at once for exact chances; each then lies between its bounds.</summary>
    public bool Exact => posterior.Exact;

    /// <summary>Plain sentences: what was left out, what doesn’t fit, and how far the chances can be relied on.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>What was counted, one for each sign.</summary>
    public IReadOnlyList<Sighting> Counted => sightings;

    /// <summary>Works out the likely causes.</summary>
    /// <param name="catalogue">The catalogue, with the studio’s own changes.</param>
    /// <param name="sightings">What was seen, and what was looked for and not there; in any order, and as contradictory as it is.</param>
    /// <param name="said">What a teacher said of causes on this very reed; it takes the place of how often they are met.</param>
    /// <returns>The causes.</returns>
    public static LikelyCauses Of(Catalogue catalogue, IEnumerable<Sighting> sightings, IReadOnlyDictionary<CauseId, CauseAnswer>? said = null)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(sightings);
        return new LikelyCauses(catalogue, SettledSigns.Of(catalogue, sightings), said ?? new Dictionary<CauseId, CauseAnswer>());
    }

    /// <summary>Why a cause is as likely as it is.</summary>
    /// <param name="id">A cause in use.</param>
    /// <returns>The explanation; null for a cause that isn’t in use.</returns>
    public Explanation? Explain(CauseId id)
    {
        if (id.Value is null || !places.TryGetValue(id, out var at))
        {
            return null;
        }

        var odds = Odds(posterior.Chances[at]);
        var reasons = posterior.Impossible ? [] : sightings.Select((sighting, which) => Reason.Of(
            catalogue.Find(sighting.Sign)!, sighting.Present, Exact ? odds / WithoutOdds(which)[at] : Directly(which, at),
            catalogue.LinksOf(sighting.Sign).FirstOrDefault(link => link.Cause == id)));
        return new Explanation(catalogue.Causes[at], posterior.Chances[at], [.. reasons.Where(reason => reason.Tells)
            .OrderByDescending(reason => Math.Abs(Math.Log(reason.Ratio))).ThenBy(reason => reason.Sign.Id.Value, StringComparer.Ordinal)]);
    }

    private static double Before(Cause cause, IReadOnlyDictionary<CauseId, CauseAnswer> said) => said.GetValueOrDefault(cause.Id, CauseAnswer.Open) switch
    {
        CauseAnswer.Confirmed => Math.Max(SaidToBe, cause.Prior.Value),
        CauseAnswer.Dismissed => Math.Min(SaidNotToBe, cause.Prior.Value),
        _ => cause.Prior.Value,
    };

    private static double Odds(double chance) => Math.Clamp(chance / (1 - chance), 1e-12, 1e12);

    /// <summary>The odds of all causes when one piece of evidence is taken out; kept, since each explanation asks for the same.</summary>
    private double[] WithoutOdds(int which)
    {
        if (!without.TryGetValue(which, out var odds))
        {
            odds = [.. network.Infer([.. evidence.Where((_, at) => at != which)]).Chances.Select(Odds)];
            without[which] = odds;
        }

        return odds;
    }

    /// <summary>Where chances are estimates: what the evidence alone does to this cause, the other causes taken as likely as they are now.</summary>
    private double Directly(int which, int cause)
    {
        var one = evidence[which];
        var stay = one.Strengths.Where(link => link.Cause == cause).Aggregate(1.0, (part, link) => part * (1 - link.Strength));
        var others = one.Strengths.Where(link => link.Cause != cause).Aggregate(1 - one.Leak, (part, link) => part * (1 - (posterior.Chances[link.Cause] * link.Strength)));
        return one.Present ? (1 - (others * stay)) / (1 - others) : stay;
    }

    private Observed Observe(Sighting sighting)
    {
        var sign = catalogue.Find(sighting.Sign)!;
        var (leak, share) = (sign.Unasked.Value, 1.0);
        if (!sighting.Sure)
        {
            var unsure = sighting.Slight ? catalogue.Defaults.ALittle : catalogue.Defaults.Suspected;
            (leak, share) = sighting.Present ? (Math.Max(leak, unsure.Value), 1) : (leak, catalogue.Defaults.UnsureDenial.Value);
        }

        return new Observed(sighting.Present, leak, [.. catalogue.LinksOf(sign.Id)
            .Where(link => places.ContainsKey(link.Cause)).Select(link => (places[link.Cause], link.Strength.Value * share))]);
    }

    private IEnumerable<string> Limits()
    {
        if (sightings.Count == 0)
        {
            yield return "Nothing has been looked at yet: this is only how often each cause is met.";
        }

        if (posterior.Impossible)
        {
            yield return "Nothing on the list explains all of this together. Look again at what was noted; until then this is only how often each cause is met.";
        }
        else if (!Exact)
        {
            var widest = Causes.Max(one => one.High - one.Low);
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"More than {ManySigns.ExactPresent} signs hold at once, so this is an estimate: each chance lies between two bounds, up to {widest:0.00} apart.");
        }
    }
}
