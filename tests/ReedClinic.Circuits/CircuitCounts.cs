using System.Collections.Concurrent;
using System.Diagnostics;

namespace ReedClinic.Circuits;

/// <summary>What became of the events that were sent; one for all circuits of a run, or one for each.</summary>
public sealed class CircuitCounts
{
    private readonly ConcurrentBag<TimeSpan> _times = [];
    private int _sent;
    private int _answered;
    private int _failed;
    private int _batches;

    /// <summary>Events that were sent.</summary>
    public int Sent => _sent;

    /// <summary>Events whose handler came to its end.</summary>
    public int Answered => _answered;

    /// <summary>Events that were answered with a failure.</summary>
    public int Failed => _failed;

    /// <summary>Events that nothing was heard of, so far.</summary>
    public int Lost => Sent - Answered - Failed;

    /// <summary>Render batches that were drawn.</summary>
    public int Batches => _batches;

    /// <summary>How long it took from an event to its answer, at a share of the answers such as 0.95; zero when there are none.</summary>
    /// <param name="share">Between 0 and 1.</param>
    public TimeSpan AnswerTime(double share)
    {
        TimeSpan[] sorted = [.. _times.Order()];
        return sorted.Length == 0 ? TimeSpan.Zero : sorted[(int)Math.Clamp(Math.Ceiling(share * sorted.Length) - 1, 0, sorted.Length - 1)];
    }

    internal long Send()
    {
        Interlocked.Increment(ref _sent);
        return Stopwatch.GetTimestamp();
    }

    internal void Answer(long since, bool succeeded)
    {
        Interlocked.Increment(ref succeeded ? ref _answered : ref _failed);
        _times.Add(Stopwatch.GetElapsedTime(since));
    }

    internal void Drawn() => Interlocked.Increment(ref _batches);
}
