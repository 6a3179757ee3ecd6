using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Bench;

/// <summary>
/// Several things that are said in one breath: each is judged by the log as it will stand once what comes before it is recorded.
/// </summary>
/// <remarks>
/// What isn't recorded yet has a name for now, made of where the log ends and of its place in the breath. Said once more after a
/// refusal it has the same name, and once it is recorded the name leads to its entry.
/// </remarks>
public static class SameBreath
{
    /// <summary>The log as it will stand once this is recorded.</summary>
    /// <param name="log">The reed's log before it.</param>
    /// <param name="said">What is said, in order; none of it is in the log.</param>
    /// <returns>The same log where nothing is said.</returns>
    public static BenchLog After(BenchLog log, IReadOnlyList<BenchEntry> said)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(said);
        if (said.Count == 0)
        {
            return log;
        }

        var reed = log.History is [var first, ..] ? first.Entry.ReedId : default;
        return BenchLog.Fold([
            .. log.History.Select(line => line.Entry),
            .. said.Select((entry, at) => entry.StampedWith(new EntryStamp(new EntryId(ForNow(log.LastSequence, at)), reed, log.LastSequence + at + 1, new OperationId(ForNow(log.LastSequence, at)), default, default))),
        ]);
    }

    /// <summary>True for advice that holds only since something that isn't recorded yet: it is set aside once that is said, not before.</summary>
    /// <param name="advice">The advice.</param>
    public static bool IsForNow(AdviceId advice)
    {
        return advice.Value.Split('/') is [_, var since] && Guid.TryParseExact(since, "N", out var id) && Read(id) is not null;
    }

    /// <summary>The lasting name of advice that was set aside while what it holds since wasn't recorded yet.</summary>
    /// <param name="log">The log in which it is recorded.</param>
    /// <param name="advice">The advice as it was named then.</param>
    /// <returns>The same name where it was a lasting one.</returns>
    internal static AdviceId Lasting(BenchLog log, AdviceId advice) =>
        advice.Value.Split('/') is [var kind, var since] && Guid.TryParseExact(since, "N", out var id) && Read(id) is var (last, at)
        && log.History.Select(line => line.Entry).Where(entry => entry.Sequence > last && entry is not AdviceSetAside).OrderBy(entry => entry.Sequence).ElementAtOrDefault(at) is { } entry
            ? AdviceMatter.IdOf(kind, entry.Id)
            : advice;

    // An identifier of version 7 never ends in eight noughts.
    private static Guid ForNow(int last, int at) => new(last, (short)at, 0, new byte[8]);

    private static (int Last, int At)? Read(Guid id)
    {
        var bytes = id.ToByteArray();
        return bytes.AsSpan(6).ContainsAnyExcept((byte)0) ? null : (BitConverter.ToInt32(bytes, 0), BitConverter.ToInt16(bytes, 4));
    }
}
