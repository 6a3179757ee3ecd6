using System.Security.Cryptography;
using System.Text;

namespace ReedClinic.Data.People;

/// <summary>
/// The one-time code that lets whoever started the program open the studio. It lives in memory only: a restart makes
/// another one, and once the studio has an owner none is any good.
/// </summary>
public sealed class FirstRunCode
{
    private const int Bytes = 16; // 128 bits: more than can be guessed

    private readonly string _digits = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>The code as it is announced: eight groups of four.</summary>
    public string Text => string.Join('-', _digits.Chunk(4).Select(group => new string(group)));

    /// <summary>True when this is the code, however it is grouped or capitalised.</summary>
    /// <param name="typed">What was typed.</param>
    public bool Is(string? typed)
    {
        var digits = new string([.. (typed ?? "").Where(char.IsAsciiHexDigit).Take(2 * _digits.Length)]).ToLowerInvariant();
        return CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(digits), Encoding.ASCII.GetBytes(_digits));
    }

    /// <summary>Keeps the code out of logs.</summary>
    public override string ToString() => nameof(FirstRunCode);
}
