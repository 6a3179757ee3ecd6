using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace ReedClinic.Vectors;

/// <summary>A text that tries to be more than text.</summary>
/// <param name="Line">Where it stands in <c>vectors.tsv</c>.</param>
/// <param name="Kind">What it tries to be.</param>
/// <param name="Text">The text itself.</param>
public sealed record Vector(int Line, string Kind, string Text)
{
    public override string ToString() => $"vectors.tsv:{Line} ({Kind})";
}

/// <summary>
/// All of them, for whatever puts typed text into something: a page, a letter, a table, a mail, a log. A new outlet is one
/// more test that goes through <see cref="All"/>.
/// </summary>
public static partial class HostileTexts
{
    public static IReadOnlyList<Vector> All { get; } = [.. Read()];

    /// <summary>Those that a browser can send: whole characters only.</summary>
    public static IEnumerable<Vector> Sendable => All.Where(vector => !vector.Text.EnumerateRunes().Any(rune => rune == Rune.ReplacementChar));

    private static IEnumerable<Vector> Read()
    {
        using var stream = typeof(HostileTexts).Assembly.GetManifestResourceStream("vectors.tsv")!;
        using var lines = new StreamReader(stream, Encoding.UTF8);
        for (var number = 1; lines.ReadLine() is { } line; number++)
        {
            if (line.Length > 0 && line[0] != '#')
            {
                var tab = line.IndexOf('\t', StringComparison.Ordinal);
                yield return new Vector(number, line[..tab], Plain(line[(tab + 1)..]));
            }
        }
    }

    private static string Plain(string written) => Written().Replace(written, match => match.Value[1] switch
    {
        't' => "\t",
        'r' => "\r",
        'n' => "\n",
        '0' => "\0",
        'u' => ((char)int.Parse(match.Groups["code"].ValueSpan, NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString(),
        '*' => Repeated(Plain(match.Groups["text"].Value), int.Parse(match.Groups["times"].ValueSpan, CultureInfo.InvariantCulture)),
        _ => "\\",
    });

    private static string Repeated(string text, int times) => new StringBuilder().Insert(0, text, times).ToString();

    [GeneratedRegex(@"\\([trn0\\]|u(?<code>[0-9A-F]{4})|\*(?<times>[0-9]+)\((?<text>(\\u[0-9A-F]{4})+|.[^)]*)\))")]
    private static partial Regex Written();
}
