using System.Globalization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>On how many reeds the teachers here said that it was this cause, and on how many that it wasn’t.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Confirmed">On so many it was.</param>
/// <param name="Dismissed">On so many it wasn’t.</param>
public readonly record struct CauseCount(CauseId Cause, int Confirmed, int Dismissed)
{
    /// <summary>On how many reeds it was answered at all.</summary>
    public int Judged => Confirmed + Dismissed;

    /// <summary>The same in words, such as “3 confirmed of 4 here”.</summary>
    public string Words => string.Create(CultureInfo.InvariantCulture, $"{Confirmed} confirmed of {Judged} here");
}

/// <summary>
/// What this studio’s teachers have said of likely causes, as counts of reeds; it changes how often a cause is taken to be met here.
/// </summary>
/// <remarks>
/// A beta distribution: the catalogue’s number p counts as <see cref="DefaultWorth"/> reeds, of which p times as many had the cause; each
/// answer here is one reed more. Only causes that were thought of are answered, so the counts lean towards what is met; the result therefore
/// never leaves a third to three times the catalogue’s number. Worth and bounds are this program’s own defaults.
/// </remarks>
public sealed class StudioCounts
{
    /// <summary>As many reeds as the catalogue’s number counts for.</summary>
    public const int DefaultWorth = 40;

    /// <summary>The number for here is at most so many times the catalogue’s, and at least that part of it.</summary>
    public const double MostTimes = 3;

    private readonly Dictionary<CauseId, CauseCount> counts;

    private StudioCounts(IEnumerable<CauseCount> counts) => this.counts = counts.Where(one => one.Judged > 0).ToDictionary(one => one.Cause);

    /// <summary>Nothing was said yet.</summary>
    public static StudioCounts None { get; } = new([]);

    /// <summary>The counts, those that were answered most first.</summary>
    public IReadOnlyList<CauseCount> All => [.. counts.Values.OrderByDescending(one => one.Judged).ThenBy(one => one.Cause.Value, StringComparer.Ordinal)];

    /// <summary>Counts what was said: one answer for each reed and cause, the last.</summary>
    /// <param name="logs">The logs of the reeds.</param>
    /// <param name="since">What was said before this doesn’t count; null where everything does.</param>
    public static StudioCounts Of(IEnumerable<BenchLog> logs, DateTimeOffset? since = null)
    {
        ArgumentNullException.ThrowIfNull(logs);
        return new StudioCounts(logs.SelectMany(log => CauseJudged.Last(log).Values).Where(word => since is null || word.RecordedAt > since)
            .GroupBy(word => word.Cause).Select(words => new CauseCount(
                words.Key, words.Count(word => word.Answer == CauseAnswer.Confirmed), words.Count(word => word.Answer == CauseAnswer.Dismissed))));
    }

    /// <summary>What was said of one cause; null where nothing was.</summary>
    /// <param name="cause">The cause.</param>
    public CauseCount? Find(CauseId cause) => cause.Value is not null && counts.TryGetValue(cause, out var count) ? count : null;

    /// <summary>How often a cause is taken to be met here.</summary>
    /// <param name="cause">The cause as the catalogue has it.</param>
    public Marked<double> PriorOf(Cause cause)
    {
        ArgumentNullException.ThrowIfNull(cause);
        var usual = cause.Prior.Value;
        if (Find(cause.Id) is not { } count)
        {
            return cause.Prior;
        }

        var here = ((DefaultWorth * usual) + count.Confirmed) / (DefaultWorth + count.Judged);
        return new Marked<double>(
            Math.Clamp(here, usual / MostTimes, Math.Min(0.5, usual * MostTimes)),
            new EvidenceMark(Evidence.OnRecord, string.Create(
                CultureInfo.InvariantCulture, $"{count.Words}; this program’s own {usual:0.###} counts as {DefaultWorth} reeds")));
    }

    /// <summary>The catalogue with what was learned here. What is no longer in it is left out.</summary>
    /// <param name="catalogue">The catalogue, with the studio’s own changes.</param>
    public Catalogue LayOver(Catalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        return counts.Count == 0 ? catalogue : catalogue.WithPriors(PriorOf);
    }
}
