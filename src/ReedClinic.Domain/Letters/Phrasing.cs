using System.Text;

namespace ReedClinic.Domain.Letters;

/// <summary>
/// Chooses between ways of saying the same thing, so that letters don't read as if a machine had written them. The choice
/// depends on the batch alone: the same letter drafted twice is the same letter.
/// </summary>
/// <param name="seed">What the choice depends on.</param>
internal sealed class Phrasing(Guid seed)
{
    /// <summary>One of several ways.</summary>
    /// <param name="place">Where it is said; another place makes another choice.</param>
    /// <param name="turn">How often it was said before: neighbours never get the same words while there are others.</param>
    /// <param name="ways">The ways.</param>
    public string Pick(string place, int turn, params ReadOnlySpan<string> ways) => ways[(int)((Hash(place) + (uint)turn) % (uint)ways.Length)];

    /// <summary>One of several ways, for what is said once.</summary>
    /// <param name="place">Where it is said.</param>
    /// <param name="ways">The ways.</param>
    public string Pick(string place, params ReadOnlySpan<string> ways) => Pick(place, 0, ways);

    // FNV-1a: the same on every machine, which string.GetHashCode is not.
    private uint Hash(string place)
    {
        var hash = 2166136261u;
        foreach (var value in seed.ToByteArray().Concat(Encoding.UTF8.GetBytes(place)))
        {
            hash = (hash ^ value) * 16777619u;
        }

        return hash >> 8;
    }
}

/// <summary>Small things that every sentence needs.</summary>
internal static class Prose
{
    private static readonly string[] Numbers =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>A number in words up to twelve.</summary>
    public static string Number(int number) =>
        number < Numbers.Length ? Numbers[number] : number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Once, twice, three times.</summary>
    public static string Times(int number) => number switch
    {
        1 => "once",
        2 => "twice",
        _ => Number(number) + " times",
    };

    /// <summary>The text with a capital and a full stop, on one line.</summary>
    public static string Sentence(string text)
    {
        var line = Ended(text);
        return line.Length == 0 ? line : char.ToUpperInvariant(line[0]) + line[1..];
    }

    /// <summary>The text with a full stop, on one line.</summary>
    public static string Ended(string text)
    {
        var line = Line(text);
        return line.Length == 0 || line[^1] is '.' or '!' or '?' or '…' or '”' or ':' ? line : line + ".";
    }

    /// <summary>What somebody wrote, in quotation marks and as they wrote it, on one line.</summary>
    public static string Quote(string text)
    {
        var line = Line(text);
        return line.Length > 0 && line[^1] is '.' or '!' or '?' or '…' ? $"“{line}”" : $"“{line}”.";
    }

    private static string Line(string text) =>
        string.Join(' ', text.Split((char[])['\n', '\r', '\t'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)).Trim();

    /// <summary>The text to go on in the middle of a sentence; “I” and names of notes keep their capital.</summary>
    public static string Inside(string text) =>
        text.Length > 1 && char.IsUpper(text[0]) && (char.IsLower(text[1]) || (text[0] == 'A' && text[1] == ' '))
            ? char.ToLowerInvariant(text[0]) + text[1..]
            : text;

    /// <summary>“a”, “a and b”, “a, b and c”.</summary>
    public static string List(IReadOnlyList<string> parts) => parts.Count switch
    {
        0 => "",
        1 => parts[0],
        _ => string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1],
    };
}
