namespace ReedClinic.Domain.Recurrence;

/// <summary>One theme over a student’s reeds: in this batch, before it, and against the studio.</summary>
/// <param name="Theme">What it is about.</param>
/// <param name="InBatch">In this batch.</param>
/// <param name="Before">In the batches before it.</param>
/// <param name="Share">
/// Between which shares the student’s own may lie, from all batches. Reeds of one batch are counted for less, because they are alike.
/// </param>
/// <param name="AboveStudio">How likely the student’s own share is above the studio’s; null where there is nothing to compare with.</param>
/// <param name="Since">By how much it is found more in this batch than before; null where one side is missing.</param>
/// <param name="Trend">Whether it has changed over the batches.</param>
/// <param name="Became">What has become of it, with all that was looked at together reckoned with.</param>
/// <param name="StandsOut">True when it is surely more than the studio’s usual, with all that was looked at together reckoned with.</param>
public sealed record Recurring(
    Theme Theme,
    ThemeTally InBatch,
    ThemeTally Before,
    WilsonInterval Share,
    double? AboveStudio,
    ShareDifference? Since,
    BatchTrend Trend,
    TrendKind Became,
    bool StandsOut)
{
    /// <summary>In all batches.</summary>
    public Tally Altogether => InBatch.Tally + Before.Tally;

    /// <summary>The evidence in one plain sentence: counts in words, never a percentage.</summary>
    public string Evidence => EvidenceSentence.For(InBatch.Tally, Before.Tally);
}

/// <summary>What comes back in a student’s reeds.</summary>
/// <param name="Strengths">What is done well, the surest first. It is told first.</param>
/// <param name="Faults">What comes back to learn from, the surest first.</param>
/// <param name="Plainly">What has to be said first where there is little to go by; null when there is enough.</param>
public sealed record RecurrenceReport(IReadOnlyList<Recurring> Strengths, IReadOnlyList<Recurring> Faults, string? Plainly)
{
    /// <summary>Everything in the order in which it is told: what is done well first.</summary>
    public IEnumerable<Recurring> All => Strengths.Concat(Faults);

    /// <summary>One theme’s line; null when it was never looked for.</summary>
    /// <param name="theme">The theme’s lasting name.</param>
    public Recurring? Of(string theme) => All.FirstOrDefault(line => line.Theme.Id == theme);
}
