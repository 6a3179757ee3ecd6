using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Bench;

/// <summary>What one teacher said last in one breath, or in several: whoever takes “that” back means all of it.</summary>
public static class SaidTogether
{
    /// <summary>What stands of what this teacher said last.</summary>
    /// <param name="log">The reed’s log.</param>
    /// <param name="teacher">The teacher’s account.</param>
    /// <param name="breaths">How many breaths; from 1.</param>
    /// <returns>The facts, the newest first; none when nothing of theirs stands.</returns>
    public static IReadOnlyList<BenchFact> Last(BenchLog log, AccountId teacher, int breaths)
    {
        ArgumentNullException.ThrowIfNull(log);
        var mine = log.Facts.Where(fact => fact.Now?.RecordedBy == teacher && fact.Now is not Test { MeasuredFrom: not null }).OrderByDescending(fact => fact.Now!.Sequence).ToList();
        List<BenchFact> said = [];
        for (var breath = 0; breath < breaths && mine.Count > 0; breath++)
        {
            var newest = mine[0];
            var together = newest.Now is AdviceSetAside or CauseJudged ? [newest] : mine.FindAll(fact => fact.Now is not (AdviceSetAside or CauseJudged) && fact.Now!.OperationId.IsPartWith(newest.Now!.OperationId));
            said.AddRange(together);
            mine.RemoveAll(together.Contains);
        }

        return said.Count < OperationId.MostParts ? said : [];
    }
}
