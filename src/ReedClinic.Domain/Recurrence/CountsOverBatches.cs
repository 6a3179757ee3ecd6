namespace ReedClinic.Domain.Recurrence;

/// <summary>
/// How likely each outcome of a row of batches is while the share stays the same: by how many reeds had it altogether, and how late
/// in the row they came. Nothing is drawn at random: the chances are summed batch by batch.
/// </summary>
internal sealed class CountsOverBatches
{
    // Shares between these are near enough to one of them: the tail is smooth in the share.
    private static readonly double[] Shares =
        [0.01, 0.03, 0.06, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.94, 0.97, 0.99];

    // Above this nothing will be claimed, so the other shares need not be tried.
    private const double FarFromAnyClaim = 0.1;

    private readonly int[] sizes;
    private readonly int reeds;
    private readonly int latest;

    public CountsOverBatches(IEnumerable<int> sizes)
    {
        this.sizes = [.. sizes];
        reeds = this.sizes.Sum();
        latest = this.sizes.Select((size, place) => size * place).Sum();
    }

    /// <summary>How likely it is that so many or more have it when the share is this one.</summary>
    public double TailOfTotal(int found, double share, double likeness)
    {
        double[] totals = [1];
        foreach (var size in sizes)
        {
            var chances = BetaBinomial.Chances(size, share, likeness);
            var next = new double[totals.Length + size];
            for (var total = 0; total < totals.Length; total++)
            {
                for (var more = 0; more < chances.Length; more++)
                {
                    next[total + more] += totals[total] * chances[more];
                }
            }

            totals = next;
        }

        return Math.Min(1, totals.Skip(found).Sum());
    }

    /// <summary>
    /// How likely, at worst over all shares and all likenesses up to the most, a lean at least as strong as this is: towards the late
    /// batches, and towards the early ones. Where both are above 0.1 they are only “at least this”.
    /// </summary>
    public (double Late, double Early) Tails(IReadOnlyList<int> found, double most)
    {
        var total = found.Sum();
        var seen = (total + 0.5) / (reeds + 1);
        var lean = Lean(total, found.Select((count, place) => count * place).Sum());
        double[] likenesses = most > 0 ? [most, most / 2, 0] : [0];
        var worst = (Late: 0.0, Early: 0.0);
        foreach (var (share, likeness) in
            from likeness in likenesses
            from share in Shares.Prepend(seen).OrderBy(share => Math.Abs(share - seen))
            select (share, likeness))
        {
            var here = TailsAt(lean, share, likeness);
            worst = (Math.Max(worst.Late, here.Late), Math.Max(worst.Early, here.Early));
            if (Math.Min(worst.Late, worst.Early) > FarFromAnyClaim)
            {
                break;
            }
        }

        return worst;
    }

    /// <summary>The chance of a total and a lateness: the sum of the batches’ places over the reeds that have it.</summary>
    public double Chance(int total, int late, double share, double likeness) => Table(share, likeness)[(total * Width) + late];

    private double[] Table(double share, double likeness)
    {
        var table = new double[(reeds + 1) * Width];
        table[0] = 1;
        var (before, lateBefore) = (0, 0);
        for (var place = 0; place < sizes.Length; place++)
        {
            var chances = BetaBinomial.Chances(sizes[place], share, likeness);
            var next = new double[table.Length];
            for (var total = 0; total <= before; total++)
            {
                for (var late = 0; late <= lateBefore; late++)
                {
                    var at = (total * Width) + late;
                    var weight = table[at];
                    for (var found = 0; weight > 0 && found < chances.Length; found++)
                    {
                        next[at + (found * (Width + place))] += weight * chances[found];
                    }
                }
            }

            (table, before, lateBefore) = (next, before + sizes[place], lateBefore + (sizes[place] * place));
        }

        return table;
    }

    private (double Late, double Early) TailsAt(double lean, double share, double likeness)
    {
        var table = Table(share, likeness);
        var (toLate, toEarly) = (0.0, 0.0);
        for (var total = 0; total <= reeds; total++)
        {
            // Where the found ones of this total have to lie for a lean as strong as the one that was seen.
            var border = ((lean * Scatter(total)) + ((double)total * latest)) / reeds;
            for (var late = 0; late < Width; late++)
            {
                var chance = table[(total * Width) + late];
                toLate += late >= border - 1e-9 ? chance : 0;
                toEarly += late <= border + 1e-9 ? chance : 0;
            }
        }

        return (Math.Min(1, toLate), Math.Min(1, toEarly));
    }

    private int Width => latest + 1;

    /// <summary>
    /// How far the found ones lie towards the late batches, in units of chance: the statistic of Cochran and Armitage for a trend in
    /// proportions, with half a reed added on either side so that none and all are defined.
    /// </summary>
    private double Lean(int total, int late) => (((double)late * reeds) - ((double)total * latest)) / Scatter(total);

    private double Scatter(int total) => Math.Sqrt((total + 0.5) * (reeds - total + 0.5));
}
