namespace ReedClinic.Domain.Recurrence;

/// <summary>What has become of something over a student’s batches.</summary>
public enum TrendKind
{
    /// <summary>It was looked for in fewer than two batches.</summary>
    TooLittle,

    /// <summary>It was looked for and never found.</summary>
    NeverSeen,

    /// <summary>It turns up, and nothing can be told of a change.</summary>
    Unclear,

    /// <summary>It stays: found in the latest batch and in at least half of all, with no sure change.</summary>
    Persisting,

    /// <summary>It was there, surely less and less, and in the latest batch on no reed.</summary>
    Gone,

    /// <summary>It is there on surely fewer reeds than before.</summary>
    Fading,

    /// <summary>It wasn’t there at first and surely is now.</summary>
    New,

    /// <summary>It was there from the first, and is there on surely more reeds than before.</summary>
    Growing,
}

/// <summary>Whether something has changed over the batches.</summary>
/// <remarks>
/// Cochran and Armitage’s statistic for a trend in proportions, without their distribution, which doesn’t hold for a few reeds
/// that are alike. Its chances under “nothing has changed” are summed exactly, for beta-binomial batches, and the worst over the
/// unknown share and over every likeness up to <see cref="BatchLikeness.Most"/> counts, in the manner of Barnard’s exact test.
/// Two batches can’t tell a change from a good evening when their reeds are very alike: then nothing is claimed. Batches in which
/// nobody looked are left out.
/// </remarks>
/// <param name="Batches">The batches in which it was looked for, the oldest first.</param>
/// <param name="PValue">How likely so strong a change, or a stronger one, is by chance; null when it can’t be asked. Above 0.2 it is only “at least this”.</param>
/// <param name="IsDownward">True when it leans towards fewer.</param>
public sealed record BatchTrend(IReadOnlyList<BatchCount> Batches, double? PValue, bool IsDownward)
{
    /// <summary>How often at most a change is claimed where there is none.</summary>
    public const double FalseAlarms = 0.05;

    /// <summary>Looks for a change.</summary>
    /// <param name="batches">All the student’s batches, the oldest first.</param>
    /// <param name="likeness">How alike the reeds of one batch are.</param>
    /// <returns>What can be told.</returns>
    public static BatchTrend Of(IEnumerable<BatchCount> batches, BatchLikeness likeness)
    {
        IReadOnlyList<BatchCount> looked = [.. batches.Where(batch => batch.Looked > 0)];
        if (looked.Count < 2 || looked.All(batch => batch.Found == 0))
        {
            return new BatchTrend(looked, null, false);
        }

        var (late, early) = new CountsOverBatches(looked.Select(batch => batch.Looked)).Tails([.. looked.Select(batch => batch.Found)], likeness.Most);
        return new BatchTrend(looked, Math.Min(1, 2 * Math.Min(late, early)), early < late);
    }

    /// <summary>What has become of it.</summary>
    /// <param name="adjusted">The p-value after the many others that were looked at together; its own where it stands alone.</param>
    /// <returns>The kind of trend.</returns>
    public TrendKind Kind(double? adjusted = null)
    {
        var times = Batches.Count(batch => batch.Found > 0);
        if (Batches.Count < 2 || times == 0)
        {
            return Batches.Count > 1 ? TrendKind.NeverSeen : TrendKind.TooLittle;
        }

        if ((adjusted ?? PValue) is { } chance && chance <= FalseAlarms)
        {
            return IsDownward
                ? Batches[^1].Found == 0 ? TrendKind.Gone : TrendKind.Fading
                : Batches[0].Found == 0 ? TrendKind.New : TrendKind.Growing;
        }

        return Batches[^1].Found > 0 && times > 1 && 2 * times >= Batches.Count ? TrendKind.Persisting : TrendKind.Unclear;
    }
}
