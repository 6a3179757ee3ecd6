using ReedClinic.Domain.Upkeep;

namespace ReedClinic.Web.Background;

/// <summary>How the work behind the pages of this process goes: which of it failed since it last went well.</summary>
/// <param name="time">The clock.</param>
public sealed class WorkerStandings(TimeProvider time)
{
    private readonly Lock _gate = new();
    private readonly Dictionary<QuietWork, StumblingWork> _stumbling = [];
    private readonly Dictionary<QuietWork, long> _failures = [];

    /// <summary>What fails just now, in a fixed order.</summary>
    public IReadOnlyList<StumblingWork> Stumbling
    {
        get
        {
            lock (_gate)
            {
                return [.. _stumbling.Values.OrderBy(one => one.Work)];
            }
        }
    }

    /// <summary>How often each failed since the program was started.</summary>
    public IReadOnlyDictionary<QuietWork, long> Failures
    {
        get
        {
            lock (_gate)
            {
                return new Dictionary<QuietWork, long>(_failures);
            }
        }
    }

    /// <summary>It went well.</summary>
    /// <param name="work">Which.</param>
    public void WentWell(QuietWork work)
    {
        lock (_gate)
        {
            _stumbling.Remove(work);
        }
    }

    /// <summary>It failed.</summary>
    /// <param name="work">Which.</param>
    /// <returns>How often in a row, this time among them.</returns>
    public int Failed(QuietWork work)
    {
        lock (_gate)
        {
            var now = _stumbling.TryGetValue(work, out var before) ? before with { Times = before.Times + 1 } : new StumblingWork(work, time.GetUtcNow(), 1);
            _stumbling[work] = now;
            _failures[work] = _failures.GetValueOrDefault(work) + 1;
            return now.Times;
        }
    }
}
