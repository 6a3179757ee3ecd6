using ReedClinic.Domain.Diagnosis.Habits;

namespace ReedClinic.Domain.Recurrence;

/// <summary>The sheets of one student’s batches, the oldest first; the last one is the batch that is looked at now.</summary>
/// <param name="Batches">The sheets; one without reeds tells nothing.</param>
public sealed record StudentHistory(IReadOnlyList<FindingSheet> Batches)
{
    /// <summary>The batch that is looked at now; null when there is none.</summary>
    public FindingSheet? Now => Batches.Count == 0 ? null : Batches[^1];

    /// <summary>The counts of one theme, batch by batch.</summary>
    /// <param name="theme">The theme.</param>
    /// <returns>The counts, the oldest first.</returns>
    public IReadOnlyList<BatchCount> Counts(Theme theme)
    {
        ArgumentNullException.ThrowIfNull(theme);
        return [.. Batches.Select(sheet => theme.Count(sheet).Batch)];
    }

    /// <summary>How often each kind of finding was there, over all batches and in the one that is looked at now: what a habit is guessed from.</summary>
    public IEnumerable<Recurs> Tallies() =>
        from theme in Themes.All
        where !theme.IsFamily
        let count = StudentCount.Of(Counts(theme))
        where count.Looked > 0
        let here = theme.Count(Now!).Tally
        select new Recurs(theme.Kinds[0], count.Found, count.Looked) { Here = (here.Found, here.Looked) };
}

/// <summary>How often each theme turns up in a studio. It is made from the other students, never from the one it is held against.</summary>
/// <param name="Likeness">How alike the reeds of one batch are.</param>
/// <param name="Rates">The rate of each theme that enough students were looked at for.</param>
public sealed record StudioRates(BatchLikeness Likeness, IReadOnlyDictionary<string, StudioRate> Rates)
{
    /// <summary>A studio of which nothing is known.</summary>
    public static StudioRates Unknown { get; } = new(BatchLikeness.Default, new Dictionary<string, StudioRate>());

    /// <summary>Learns the rates from what the other students’ batches show.</summary>
    /// <param name="others">The other students.</param>
    /// <returns>The rates.</returns>
    public static StudioRates Of(IReadOnlyCollection<StudentHistory> others)
    {
        ArgumentNullException.ThrowIfNull(others);
        List<Theme> themes = [.. Themes.All, .. others.SelectMany(Themes.OwnIn).DistinctBy(theme => theme.Id)];
        var counts = themes.ToDictionary(theme => theme.Id, theme => others.Select(student => student.Counts(theme)).ToList());
        return Of(counts, BatchLikeness.Learn(themes.Where(theme => !theme.IsFamily).SelectMany(theme => counts[theme.Id])));
    }

    /// <summary>The same from counts that were rolled up before.</summary>
    /// <param name="counts">For each theme, each student’s batches.</param>
    /// <param name="likeness">How alike the reeds of one batch are.</param>
    /// <returns>The rates.</returns>
    public static StudioRates Of(IReadOnlyDictionary<string, List<IReadOnlyList<BatchCount>>> counts, BatchLikeness likeness)
    {
        ArgumentNullException.ThrowIfNull(counts);
        var rates = new Dictionary<string, StudioRate>();
        foreach (var (theme, students) in counts)
        {
            var alike = students.Select(likeness.Worth).GroupBy(count => count).Select(group => new StudentsWith(group.Key, group.Count()));
            if (StudioRate.Fit(alike) is { } rate)
            {
                rates[theme] = rate;
            }
        }

        return new StudioRates(likeness, rates);
    }
}
