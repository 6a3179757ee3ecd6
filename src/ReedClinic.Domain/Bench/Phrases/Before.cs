using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What stands in the log before the phrase, as far as a phrase can lean on it.</summary>
internal sealed class Before
{
    private readonly List<BenchEntry> entries;

    internal Before(BenchLog log)
    {
        Log = log;
        entries = [.. log.Facts.Where(fact => fact.Now is not null).OrderByDescending(fact => fact.Sequence).Select(fact => fact.Now!)];
    }

    internal BenchLog Log { get; }

    internal BenchEntry? Last => entries.Count > 0 ? entries[0] : null;

    internal Adjustment? LastWork => Find<Adjustment>();

    internal Finding? LastFinding => Find<Finding>();

    internal Test? LastTest => Find<Test>();

    /// <summary>The crow, peep or tuning note that was last spoken of.</summary>
    internal Test? LastPitched => entries.OfType<Test>().FirstOrDefault(test => TestScale.Of(test.TestKind).TakesPitch);

    /// <summary>The place that was last spoken of.</summary>
    internal Place? LastPlace => entries.Select(PlaceOf).FirstOrDefault(place => place is not null);

    /// <summary>The places that were spoken of, the last first.</summary>
    internal IEnumerable<Place> Places => entries.Select(PlaceOf).OfType<Place>();

    internal Risk? LastRisk => Find<Risk>();

    /// <summary>The finding that is meant: of this kind, at this place, or the last that stands.</summary>
    internal LiveFact<Finding>? FindingOf(string? kind, Zone? zone)
    {
        var live = Log.Findings.Select(finding => finding.Fact).OrderByDescending(fact => fact.Sequence).ToList();
        var named = kind is null ? null : live.FirstOrDefault(fact => fact.Now.FindingKind.Value == kind);
        var there = named ?? (zone is { } place ? live.FirstOrDefault(fact => fact.Now.Zone == place) : null);
        return there ?? (kind is null && zone is null ? live.FirstOrDefault() : null);
    }

    internal static Place? PlaceOf(BenchEntry entry) => entry switch
    {
        Adjustment work => work.Place,
        Finding finding => finding.Place,
        LeaveAlone leave => leave.Place,
        _ => null,
    };

    private T? Find<T>()
        where T : BenchEntry => entries.OfType<T>().FirstOrDefault();
}
