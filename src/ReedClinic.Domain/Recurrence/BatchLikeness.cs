namespace ReedClinic.Domain.Recurrence;

/// <summary>
/// How alike the reeds of one batch are, as an intraclass correlation: 0 when each is as if made by itself, 1 when all of a batch
/// share everything. Reeds that were made on one evening with one knife tell less than as many reeds of different weeks.
/// </summary>
/// <remarks>
/// What <em>n</em> alike reeds are worth: n / (1 + (m − 1)·ρ), the design effect of L. Kish, Survey Sampling (1965), with
/// m = Σm²/Σm for batches of different sizes. No published ρ for reeds is known to us: <see cref="Default"/> is this program’s own.
/// </remarks>
public readonly record struct BatchLikeness
{
    // As if these many pairs of reeds had been seen to be alike by the default: few pairs move it little.
    private const double PairsBehindTheDefault = 60;

    /// <summary>Makes a likeness.</summary>
    /// <param name="usual">What is expected; from 0 to below 1.</param>
    /// <param name="most">What must still not mislead; from <paramref name="usual"/> to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public BatchLikeness(double usual, double most)
    {
        if (usual is not (>= 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(usual), usual, "From 0 to below 1.");
        }

        if (!(most >= usual && most < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(most), most, "From what is usual to below 1.");
        }

        (Usual, Most) = (usual, most);
    }

    /// <summary>Where nothing is known of a studio: 0.3 is expected, and up to 0.5 is reckoned with. Our own default.</summary>
    public static BatchLikeness Default { get; } = new(0.3, 0.5);

    /// <summary>What is expected.</summary>
    public double Usual { get; }

    /// <summary>What must still not mislead: tests hold their promise up to here.</summary>
    public double Most { get; }

    /// <summary>
    /// Learns it: how much more often two reeds of one batch agree than two of the same student’s different batches, drawn towards
    /// the default while there is little.
    /// </summary>
    /// <param name="histories">For each student and each thing looked for, the counts of the batches.</param>
    /// <returns>The likeness.</returns>
    public static BatchLikeness Learn(IEnumerable<IReadOnlyList<BatchCount>> histories)
    {
        ArgumentNullException.ThrowIfNull(histories);
        var (alike, room) = (0.0, 0.0);
        foreach (var batches in histories)
        {
            double found = batches.Sum(batch => batch.Found), looked = batches.Sum(batch => batch.Looked);
            double within = batches.Sum(batch => batch.Looked * (batch.Looked - 1.0));
            var between = looked * (looked - 1) - within;
            if (within <= 0 || between <= 0)
            {
                continue;
            }

            var bothWithin = batches.Sum(batch => batch.Found * (batch.Found - 1.0));
            var apart = (found * (found - 1) - bothWithin) / between;
            alike += within * ((bothWithin / within) - apart);
            room += within * ((found / looked) - apart);
        }

        var behind = PairsBehindTheDefault * 0.2;
        var learned = Math.Clamp((alike + (Default.Usual * behind)) / (Math.Max(room, 0) + behind), 0, 0.9);
        return new BatchLikeness(learned, Math.Max(learned, Default.Most));
    }

    /// <summary>What the reeds of these batches are worth together.</summary>
    /// <param name="batches">The counts.</param>
    /// <returns>The same share, of fewer reeds.</returns>
    public WorthCount Worth(IReadOnlyCollection<BatchCount> batches)
    {
        ArgumentNullException.ThrowIfNull(batches);
        double looked = batches.Sum(batch => batch.Looked);
        if (looked <= 0)
        {
            return new WorthCount(0, 0);
        }

        var size = batches.Sum(batch => (double)batch.Looked * batch.Looked) / looked;
        var shrink = 1 + ((size - 1) * Usual);
        return new WorthCount(batches.Sum(batch => batch.Found) / shrink, looked / shrink);
    }
}
