using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Diagnosis.Settling;

/// <summary>What a rest did to a reed: the same tests on two days with no work between them.</summary>
public static class Rested
{
    /// <summary>Whether it got better by itself between two days; null where it wasn’t tried so, or where tests went both ways.</summary>
    /// <param name="log">The reed’s log.</param>
    public static bool? GotBetter(BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var work = log.Live<Adjustment>().Select(done => done.Sequence).ToList();
        List<int> moves = [];
        foreach (var kind in log.Live<Test>().Where(test => test.Now.Step is not null).GroupBy(test => test.Now.TestKind))
        {
            List<LiveFact<Test>> tries = [.. kind.OrderBy(test => test.Sequence)];
            moves.AddRange(tries.Zip(tries.Skip(1))
                .Where(pair => pair.First.Now.RecordedAt.UtcDateTime.Date < pair.Second.Now.RecordedAt.UtcDateTime.Date
                    && !work.Exists(done => done > pair.First.Sequence && done < pair.Second.Sequence))
                .Select(pair => TestScale.Of(kind.Key).FromGood(pair.First.Now.Step!.Value).CompareTo(TestScale.Of(kind.Key).FromGood(pair.Second.Now.Step!.Value))));
        }

        return moves.Count == 0 || (moves.Contains(1) && moves.Contains(-1)) ? null : moves.Contains(1);
    }
}
