using System.Globalization;
using System.Security.Cryptography;

namespace ReedClinic.Domain.People;

/// <summary>
/// The six digits that an authenticator app shows: a one-time password from the time, RFC 6238, with HMAC-SHA-1 as RFC 4226
/// has it and every such app expects. Written here because a code may be taken once only, and for that one has to know
/// which time step it belongs to.
/// </summary>
public static class TimeCode
{
    /// <summary>The bytes of a key: 160 bits, RFC 4226 section 4.</summary>
    public const int KeyBytes = 20;

    /// <summary>The length of one step: RFC 6238 section 5.2.</summary>
    public const int StepSeconds = 30;

    private const int Digits = 1_000_000;
    private const string Letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    /// <summary>The step that a moment lies in.</summary>
    /// <param name="at">The moment.</param>
    public static long StepAt(DateTimeOffset at) => at.ToUnixTimeSeconds() / StepSeconds;

    /// <summary>The code of a step.</summary>
    /// <param name="key">The shared key, of any length.</param>
    /// <param name="step">The step.</param>
    /// <returns>Six digits.</returns>
    public static string Of(ReadOnlySpan<byte> key, long step)
    {
        Span<byte> counter = stackalloc byte[8];
        System.Buffers.Binary.BinaryPrimitives.WriteInt64BigEndian(counter, step);
        Span<byte> hash = stackalloc byte[HMACSHA1.HashSizeInBytes];
#pragma warning disable CA5350 // RFC 4226 asks for HMAC-SHA-1, whose strength doesn't rest on collisions.
        HMACSHA1.HashData(key, counter, hash);
#pragma warning restore CA5350
        var from = hash[^1] & 0xf;
        var number = System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(hash[from..]) & 0x7fffffff;
        return (number % Digits).ToString("D6", CultureInfo.InvariantCulture);
    }

    /// <summary>The step that a code belongs to: this one or its neighbours, and later than the last that was taken.</summary>
    /// <param name="key">The shared key.</param>
    /// <param name="typed">What was typed; spaces don't count.</param>
    /// <param name="lastTaken">The step of the last code that was taken; null when none was.</param>
    /// <param name="now">The time.</param>
    /// <returns>The step, or null when it is no code for now.</returns>
    public static long? Matching(ReadOnlySpan<byte> key, string? typed, long? lastTaken, DateTimeOffset now)
    {
        var code = new string([.. (typed ?? "").Where(char.IsAsciiDigit).Take(7)]);
        for (var step = StepAt(now) - 1; step <= StepAt(now) + 1; step++)
        {
            var same = CryptographicOperations.FixedTimeEquals(
                System.Text.Encoding.ASCII.GetBytes(code), System.Text.Encoding.ASCII.GetBytes(Of(key, step)));
            if (same && (lastTaken is null || step > lastTaken))
            {
                return step;
            }
        }

        return null;
    }

    /// <summary>A key as people type it into an app: RFC 4648 base 32, without padding.</summary>
    /// <param name="key">The key.</param>
    public static string ToLetters(ReadOnlySpan<byte> key)
    {
        var text = new System.Text.StringBuilder();
        var (held, bits) = (0, 0);
        foreach (var value in key)
        {
            (held, bits) = ((held << 8) | value, bits + 8);
            for (; bits >= 5; bits -= 5)
            {
                text.Append(Letters[(held >> (bits - 5)) & 31]);
            }

            held &= 31;
        }

        return bits > 0 ? text.Append(Letters[(held << (5 - bits)) & 31]).ToString() : text.ToString();
    }

    /// <summary>The key behind its letters.</summary>
    /// <param name="letters">RFC 4648 base 32, small or capital; anything else is left out.</param>
    public static byte[] FromLetters(string letters)
    {
        ArgumentNullException.ThrowIfNull(letters);
        var bytes = new List<byte>();
        var (held, bits) = (0, 0);
        foreach (var value in letters.ToUpperInvariant().Select(letter => Letters.IndexOf(letter, StringComparison.Ordinal)).Where(value => value >= 0))
        {
            (held, bits) = (((held << 5) | value) & 0xfff, bits + 5);
            if (bits >= 8)
            {
                bytes.Add((byte)(held >> (bits - 8)));
                bits -= 8;
            }
        }

        return [.. bytes];
    }
}
