using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Domain.Recurrence;

/// <summary>Finds what comes back in a student’s reeds, from the sheets alone: what wasn’t looked for counts neither way.</summary>
public static class Recurrences
{
    /// <summary>
    /// Changes are looked for over so many of the latest batches: so many as the false alarms were counted for. Everything else
    /// counts all of them.
    /// </summary>
    public const int BatchesForATrend = 8;

    /// <summary>Looks at all themes.</summary>
    /// <param name="history">The student’s sheets.</param>
    /// <param name="studio">The studio’s rates, made from the other students.</param>
    /// <param name="own">What the studio added to the kinds of finding; it is counted by itself, as a fault.</param>
    /// <returns>What comes back; with a plain sentence where there is little to go by.</returns>
    public static RecurrenceReport Of(StudentHistory history, StudioRates studio, OwnKinds? own = null)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(studio);
        List<Line> strengths = [.. Lines(history, studio, Themes.Strengths)], faults = [.. Lines(history, studio, [.. Themes.Faults, .. Themes.Own(own, history)])];
        return new RecurrenceReport(Judged(strengths), Judged(faults), Plainly(history, studio, strengths.Count + faults.Count));
    }

    private static IEnumerable<Line> Lines(StudentHistory history, StudioRates studio, IReadOnlyList<Theme> themes) =>
        from theme in themes
        let tallies = history.Batches.Select(theme.Count).ToList()
        where tallies.Exists(tally => tally.Tally.Looked > 0)
        select Read(theme, tallies, studio);

    private static Line Read(Theme theme, List<ThemeTally> tallies, StudioRates studio)
    {
        List<BatchCount> counts = [.. tallies.Select(tally => tally.Batch)];
        var rate = studio.Rates.GetValueOrDefault(theme.Id);
        var worth = studio.Likeness.Worth(counts);
        var found = counts.Sum(count => count.Found);
        var recurring = new Recurring(
            theme,
            tallies[^1],
            tallies[..^1].Aggregate(default(ThemeTally), (sum, tally) => new ThemeTally(sum.Tally + tally.Tally, sum.InPart + tally.InPart)),
            WilsonInterval.Of(worth.Found, worth.Looked),
            rate?.ProbabilityAbove(worth),
            ShareDifference.Of(studio.Likeness.Worth(counts[^1..]), studio.Likeness.Worth(counts[..^1])),
            BatchTrend.Of(counts.TakeLast(BatchesForATrend), studio.Likeness),
            TrendKind.TooLittle,
            false);
        var above = rate is null ? (double?)null
            : new CountsOverBatches(counts.Select(count => count.Looked)).TailOfTotal(found, rate.Mean, studio.Likeness.Most);
        return new Line(recurring, above, counts.SkipLast(BatchesForATrend).Any(count => count.Found > 0));
    }

    private static IReadOnlyList<Recurring> Judged(List<Line> lines)
    {
        var trends = Adjusted(lines, line => line.Recurring.Trend.PValue);
        var above = Adjusted(lines, line => line.Above);
        return
        [
            .. lines.Select((line, at) => line.Recurring with
            {
                // What was there before the batches that the trend looks at isn’t new.
                Became = line.Recurring.Trend.Kind(trends[at]) is var became && became == TrendKind.New && line.SeenBefore ? TrendKind.Growing : became,
                StandsOut = above[at] <= FalseDiscovery.Allowed,
            })
                .OrderByDescending(line => line.InBatch.Tally.Found > 0)
                .ThenByDescending(line => line.Share.Low)
                .ThenByDescending(line => line.Altogether.Looked),
        ];
    }

    private static double?[] Adjusted(List<Line> lines, Func<Line, double?> value)
    {
        var asked = lines.Where(line => value(line) is not null).ToList();
        var adjusted = FalseDiscovery.Adjust([.. asked.Select(line => value(line)!.Value)]);
        return [.. lines.Select(line => asked.IndexOf(line) is var at && at >= 0 ? adjusted[at] : (double?)null)];
    }

    private static string? Plainly(StudentHistory history, StudioRates studio, int lines)
    {
        if (history.Batches.Sum(sheet => sheet.Reeds.Count) == 0)
        {
            return "There are no reeds to look at yet.";
        }

        if (lines == 0)
        {
            return "Nothing has been looked for on these reeds yet, so nothing can be said of what comes back.";
        }

        if (history.Now!.Reeds.Count == 0)
        {
            return "There are no reeds in this batch, so only the earlier ones are told of.";
        }

        if (history.Batches.Count(sheet => sheet.Kinds.Count > 0) < 2)
        {
            return "One batch alone shows what these reeds have in common. Whether it comes back, the next batch will tell.";
        }

        return studio.Rates.Count == 0 ? "There are too few other students here to compare with." : null;
    }

    private sealed record Line(Recurring Recurring, double? Above, bool SeenBefore);
}
