using Microsoft.Extensions.Options;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Shared.Writes;

/// <summary>
/// How much each account may write just now: a token bucket for each, filled steadily and emptied by one with each write, over a
/// circuit and by plain forms alike. Nobody at work comes near its end; a script that runs wild does.
/// </summary>
/// <param name="allowance">How much that is.</param>
/// <param name="time">The clock.</param>
public sealed class WriteBudget(IOptions<WriteAllowance> allowance, TimeProvider time)
{
    private const int Many = 10_000;

    private readonly Lock _gate = new();
    private readonly Dictionary<AccountId, Bucket> _buckets = [];

    private int Burst => allowance.Value.Burst;

    private double PerSecond => allowance.Value.PerSecond;

    /// <summary>Takes one write from what an account has left.</summary>
    /// <param name="account">Who writes.</param>
    /// <returns>False when nothing is left just now; nothing is taken then.</returns>
    public bool TryTake(AccountId account)
    {
        lock (_gate)
        {
            var left = LeftOf(account);
            if (left < 1)
            {
                return false;
            }

            _buckets[account] = new Bucket(left - 1, time.GetTimestamp());
            ForgetFull();
            return true;
        }
    }

    /// <summary>How long it takes until an account may write once more.</summary>
    /// <param name="account">Who waits.</param>
    /// <returns>Zero when it may now.</returns>
    public TimeSpan UntilNext(AccountId account)
    {
        lock (_gate)
        {
            return TimeSpan.FromSeconds(Math.Max(0, 1 - LeftOf(account)) / PerSecond);
        }
    }

    private double LeftOf(AccountId account) => _buckets.TryGetValue(account, out var bucket) ? LeftIn(bucket) : Burst;

    private double LeftIn(Bucket bucket) => Math.Min(Burst, bucket.Left + (time.GetElapsedTime(bucket.At).TotalSeconds * PerSecond));

    // A full bucket says no more than none.
    private void ForgetFull()
    {
        if (_buckets.Count >= Many)
        {
            foreach (var account in _buckets.Where(one => LeftIn(one.Value) >= Burst).Select(one => one.Key).ToList())
            {
                _buckets.Remove(account);
            }
        }
    }

    private readonly record struct Bucket(double Left, long At);
}
