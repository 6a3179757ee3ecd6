using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Letters;

/// <summary>Small things that every sentence needs.</summary>
internal static partial class Prose
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
    public static string Sentence(string text) => Capital(Ended(text));

    /// <summary>The text with a capital.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>The text with a full stop, on one line.</summary>
    public static string Ended(string text)
    {
        var line = Whole(text);
        return line.Length == 0 || line[^1] is '.' or '!' or '?' or '…' or '”' or ':' ? line : line + ".";
    }

    /// <summary>The text on one line, without the comma or dash at which it was cut off from what came after it.</summary>
    public static string Whole(string text) => Dangling().Replace(Line(text), "");

    /// <summary>What somebody wrote, in quotation marks and on one line, without anything after it.</summary>
    public static string Quoted(string text) => $"“{Line(text)}”";

    /// <summary>What somebody wrote, in quotation marks and as they wrote it, on one line.</summary>
    public static string Quote(string text)
    {
        var line = Line(text);
        return line.Length > 0 && line[^1] is '.' or '!' or '?' or '…' ? $"“{line}”" : $"“{line}”.";
    }

    // “The crack is old,” was cut off from what came after it.
    [GeneratedRegex(@"(?<=[\p{L}\p{N}][”’)]?)\s*[,;–-]+\s*(?=[.!?…]?$)")]
    private static partial Regex Dangling();

    private static string Line(string text) =>
        string.Join(' ', text.Split((char[])['\n', '\r', '\t'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)).Trim();

    /// <summary>The text to go on in the middle of a sentence; “I” and names of notes keep their capital.</summary>
    public static string Inside(string text) =>
        text.Length > 1 && char.IsUpper(text[0]) && (char.IsLower(text[1]) || (text[0] == 'A' && text[1] == ' '))
            ? char.ToLowerInvariant(text[0]) + text[1..]
            : text;

    /// <summary>The same for whole clauses: where one of them holds an “and” of its own, a comma keeps it apart.</summary>
    public static string Clauses(IReadOnlyList<string> parts) =>
        parts.Count > 1 && parts.Any(part => part.Contains(" and ", StringComparison.Ordinal))
            ? string.Join(", ", parts.Take(parts.Count - 1)) + ", and " + parts[^1]
            : List(parts);

    /// <summary>“a”, “a and b”, “a, b and c”.</summary>
    public static string List(IReadOnlyList<string> parts) => parts.Count switch
    {
        0 => "",
        1 => parts[0],
        _ => string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1],
    };
}
