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
        var sums = new LikenessSums();
        foreach (var batches in histories)
        {
            sums.Add(batches);
        }

        return sums.Learned();
    }

    /// <summary>What the reeds of these batches are worth together.</summary>
    /// <param name="batches">The counts.</param>
    /// <returns>The same share, of fewer reeds.</returns>
    public WorthCount Worth(IReadOnlyCollection<BatchCount> batches)
    {
        ArgumentNullException.ThrowIfNull(batches);
        return Worth(StudentCount.Of(batches));
    }

    /// <summary>What a student’s reeds are worth together.</summary>
    /// <param name="count">Their count.</param>
    /// <returns>The same share, of fewer reeds.</returns>
    public WorthCount Worth(StudentCount count)
    {
        if (count.Looked <= 0)
        {
            return new WorthCount(0, 0);
        }

        var shrink = 1 + ((((double)count.Squares / count.Looked) - 1) * Usual);
        return new WorthCount(count.Found / shrink, count.Looked / shrink);
    }
}

/// <summary>What a likeness is learned from, added up batch by batch.</summary>
internal sealed class LikenessSums
{
    // As if these many pairs of reeds had been seen to be alike by the default: few pairs move it little.
    private const double PairsBehindTheDefault = 60;

    private double alike;
    private double room;

    /// <summary>Adds what one student’s batches show of one thing.</summary>
    public void Add(IReadOnlyList<BatchCount> batches)
    {
        double found = batches.Sum(batch => batch.Found), looked = batches.Sum(batch => batch.Looked);
        double within = batches.Sum(batch => batch.Looked * (batch.Looked - 1.0));
        var between = looked * (looked - 1) - within;
        if (within <= 0 || between <= 0)
        {
            return;
        }

        var bothWithin = batches.Sum(batch => batch.Found * (batch.Found - 1.0));
        var apart = (found * (found - 1) - bothWithin) / between;
        alike += within * ((bothWithin / within) - apart);
        room += within * ((found / looked) - apart);
    }

    /// <summary>What they show, drawn towards the default.</summary>
    public BatchLikeness Learned()
    {
        var behind = PairsBehindTheDefault * 0.2;
        var learned = Math.Clamp((alike + (BatchLikeness.Default.Usual * behind)) / (Math.Max(room, 0) + behind), 0, 0.9);
        return new BatchLikeness(learned, Math.Max(learned, BatchLikeness.Default.Most));
    }
}
