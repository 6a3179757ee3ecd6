using System.Security.Cryptography;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Bench;

/// <summary>
/// Several things that are said in one breath: each is judged by the log as it will stand once what comes before it is recorded.
/// </summary>
/// <remarks>
/// What isn't recorded yet has a name for now, made of the operation that will record it and of its part in it. Said once more after a
/// refusal it has the same name, whatever was written meanwhile, and once it is recorded the name leads to its entry.
/// </remarks>
public static class SameBreath
{
    /// <summary>The log as it will stand once this is recorded.</summary>
    /// <param name="log">The reed's log before it.</param>
    /// <param name="said">What is said, in order; none of it is in the log.</param>
    /// <param name="operation">The operation that will record it; none where it is only looked at.</param>
    /// <returns>The same log where nothing is said.</returns>
    public static BenchLog After(BenchLog log, IReadOnlyList<BenchEntry> said, OperationId operation = default)
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
            .. said.Select((entry, at) => entry.StampedWith(new EntryStamp(
                new EntryId(ForNow(PartOf(operation, at))), reed, log.LastSequence + at + 1, PartOf(operation, at), default, default))),
        ]);
    }

    /// <summary>True for advice that holds only since something that isn't recorded yet: it is set aside once that is said, not before.</summary>
    /// <param name="advice">The advice.</param>
    public static bool IsForNow(AdviceId advice)
    {
        return SinceOf(advice) is var (_, since) && (IsForNow(since) || Before(since) is not null);
    }

    /// <summary>The lasting name of advice that was set aside while what it holds since wasn't recorded yet.</summary>
    /// <param name="log">The log in which it is recorded.</param>
    /// <param name="advice">The advice as it was named then.</param>
    /// <returns>The same name where it was a lasting one.</returns>
    internal static AdviceId Lasting(BenchLog log, AdviceId advice) =>
        SinceOf(advice) is var (kind, since) && Recorded(log, since) is { } entry ? AdviceMatter.IdOf(kind, entry) : advice;

    private static EntryId? Recorded(BenchLog log, Guid since)
    {
        var entries = log.History.Select(line => line.Entry);
        return IsForNow(since) ? entries.FirstOrDefault(entry => ForNow(entry.OperationId) == since)?.Id
            : Before(since) is var (last, at) ? entries.Where(entry => entry.Sequence > last && entry is not AdviceSetAside).OrderBy(entry => entry.Sequence).ElementAtOrDefault(at)?.Id
            : null;
    }

    private static (string Kind, Guid Since)? SinceOf(AdviceId advice) =>
        advice.Value.Split('/') is [var kind, var since] && Guid.TryParseExact(since, "N", out var id) ? (kind, id) : null;

    // A line that is too long for one operation is looked at before it is refused.
    private static OperationId PartOf(OperationId operation, int at) =>
        at < OperationId.MostParts ? operation.Part(at) : PartOf(new OperationId(ForNow(operation)), at - OperationId.MostParts);

    // Entries have identifiers of version 7; this is one of version 8.
    private static Guid ForNow(OperationId part)
    {
        Span<byte> bytes = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(part.Value.ToByteArray(bigEndian: true), bytes);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes[..16], bigEndian: true);
    }

    private static bool IsForNow(Guid id) => id.Version == 8;

    // In older logs the name is made of where the log ended then and of the place in the breath, before eight noughts.
    private static (int Last, int At)? Before(Guid id)
    {
        var bytes = id.ToByteArray();
        return bytes.AsSpan(6).ContainsAnyExcept((byte)0) ? null : (BitConverter.ToInt32(bytes, 0), BitConverter.ToInt16(bytes, 4));
    }
}
