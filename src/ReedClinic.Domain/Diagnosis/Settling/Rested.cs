using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Diagnosis.Settling;

/// <summary>What a rest did to a reed: the same tests some hours apart, with no work between them or since.</summary>
public static class Rested
{
    /// <summary>What lies between two tries at the least for a rest; our own default. Dates won’t do: an evening in one place crosses midnight in another.</summary>
    public static readonly TimeSpan Rest = TimeSpan.FromHours(8);

    /// <summary>
    /// Whether it got better by itself over a rest; null where it wasn’t tried so since the last work, or where tests went both ways.
    /// What was put right later counts for when it was first said.
    /// </summary>
    /// <param name="log">The reed’s log.</param>
    public static bool? GotBetter(BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var since = log.Work.Select(done => done.Sequence).DefaultIfEmpty().Max();
        var said = log.Facts.ToDictionary(fact => fact.Root, fact => fact.Chain[0].RecordedAt);
        List<int> moves = [];
        foreach (var kind in log.TestsSaid.Where(test => test.Now.Step is not null && test.Sequence > since).GroupBy(test => test.Now.TestKind))
        {
            List<LiveFact<Test>> tries = [.. kind.OrderBy(test => test.Sequence)];
            moves.AddRange(tries.Zip(tries.Skip(1))
                .Where(pair => said[pair.Second.Root] - said[pair.First.Root] >= Rest)
                .Select(pair => TestScale.Of(kind.Key).FromGood(pair.First.Now.Step!.Value).CompareTo(TestScale.Of(kind.Key).FromGood(pair.Second.Now.Step!.Value))));
        }

        return moves.Count == 0 || (moves.Contains(1) && moves.Contains(-1)) ? null : moves.Contains(1);
    }
}
