using System.Security.Cryptography;

namespace ReedClinic.Domain.People;

/// <summary>A person who sends reeds, with or without an account.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything.</param>
public readonly record struct StudentId(Guid Value);

/// <summary>A sign-in account.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything.</param>
public readonly record struct AccountId(Guid Value);

/// <summary>One browser that somebody is signed in with.</summary>
/// <param name="Value">122 random bits (version 4): whoever knows it is still not signed in, for the cookie around it is sealed.</param>
public readonly record struct SessionId(Guid Value);

/// <summary>A one-time link.</summary>
/// <param name="Value">A version 7 identifier. It opens nothing: the link's secret does.</param>
public readonly record struct TicketId(Guid Value);

/// <summary>A guardian's answer for one student.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything.</param>
public readonly record struct GuardianshipId(Guid Value);

/// <summary>
/// Made when a form opens and sent with everything that writes: repeating it is a no-op that gives the first answer.
/// </summary>
/// <param name="Value">A version 7 identifier.</param>
public readonly record struct OperationId(Guid Value)
{
    /// <summary>This one, or a fresh one for a form that brought none: nothing is ever a repeat of “none”.</summary>
    /// <param name="now">The time, for the fresh one.</param>
    public OperationId OrFresh(DateTimeOffset now) => Value == Guid.Empty ? new(Guid.CreateVersion7(now)) : this;

    /// <summary>
    /// The version of a row that this operation makes of another one. So a form that is sent again knows that it was itself that
    /// changed the row, and that nobody did in between.
    /// </summary>
    /// <param name="before">The version that the row had.</param>
    /// <returns>Always the same for the same two; another one for any other.</returns>
    public Guid VersionAfter(Guid before)
    {
        Span<byte> both = stackalloc byte[32];
        before.TryWriteBytes(both);
        Value.TryWriteBytes(both[16..]);
        Span<byte> sum = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(both, sum);
        return new Guid(sum[..16]);
    }

    /// <summary>The most entries that one operation writes into a log.</summary>
    public const int MostParts = 32;

    /// <summary>Whether both are parts of one operation (see <see cref="Part"/>): what they wrote was said in one breath.</summary>
    /// <param name="other">Another part, or this one.</param>
    public bool IsPartWith(OperationId other)
    {
        Span<byte> both = stackalloc byte[32];
        Value.TryWriteBytes(both);
        other.Value.TryWriteBytes(both[16..]);
        return both[..15].SequenceEqual(both[16..31]) && (both[15] ^ both[31]) < MostParts;
    }

    /// <summary>The id of one of several entries that one operation writes: always the same for the same part.</summary>
    /// <param name="index">0 for the first, whose id is this one itself; at most <see cref="MostParts"/> less one.</param>
    public OperationId Part(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, MostParts);
        Span<byte> bytes = stackalloc byte[16];
        Value.TryWriteBytes(bytes);
        bytes[15] ^= (byte)index;
        return new OperationId(new Guid(bytes));
    }
}
