namespace ReedClinic.Domain.Intake;

/// <summary>The reeds of a batch that aren't played for now, by the numbers on their tags, in order.</summary>
/// <param name="Mouldy">Those with mould: nobody plays or works on them.</param>
/// <param name="Damp">Those that dry first.</param>
public sealed record UnfitReeds(IReadOnlyList<int> Mouldy, IReadOnlyList<int> Damp)
{
    /// <summary>None.</summary>
    public static UnfitReeds None { get; } = new([], []);

    /// <summary>True when there is one.</summary>
    public bool Any => Mouldy.Count + Damp.Count > 0;

    /// <summary>What was noted of these reeds.</summary>
    /// <param name="reeds">The reeds of one batch.</param>
    public static UnfitReeds Of(IEnumerable<Reed> reeds)
    {
        ArgumentNullException.ThrowIfNull(reeds);
        return Of(reeds.Select(reed => (reed.Number, reed.Fitness)));
    }

    /// <summary>What was noted of reeds of which only number and fitness are known.</summary>
    /// <param name="reeds">The number on the tag, from 1, and how fit it is.</param>
    public static UnfitReeds Of(IEnumerable<(int Number, Fitness? Fitness)> reeds)
    {
        var inOrder = reeds.OrderBy(reed => reed.Number).ToList();
        return new(
            [.. inOrder.Where(reed => reed.Fitness == Fitness.Mould).Select(reed => reed.Number)],
            [.. inOrder.Where(reed => reed.Fitness == Fitness.DryFirst).Select(reed => reed.Number)]);
    }

    /// <summary>What is new against what was known: a reed that had mould isn't told once more as a damp one.</summary>
    /// <param name="known">What was known.</param>
    public UnfitReeds Beyond(UnfitReeds known)
    {
        ArgumentNullException.ThrowIfNull(known);
        return new([.. Mouldy.Except(known.Mouldy)], [.. Damp.Except(known.Damp).Except(known.Mouldy)]);
    }
}
