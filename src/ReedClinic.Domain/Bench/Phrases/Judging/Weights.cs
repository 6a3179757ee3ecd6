using System.Globalization;
using System.IO.Compression;

namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>What each sign counts for each answer to each question.</summary>
internal sealed class Weights
{
    /// <summary>Weights are kept as whole numbers of this part.</summary>
    internal const float Unit = 1 / 32f;

    private readonly Dictionary<string, string[]> answers = [];
    private readonly Dictionary<string, Dictionary<string, (int Answer, float Weight)[]>> signs = [];

    /// <summary>The weights that are part of the program.</summary>
    internal static Weights Embedded()
    {
        using var packed = typeof(Weights).Assembly.GetManifestResourceStream("ReedClinic.Domain.Bench.Phrases.Judging.weights.br")!;
        using var plain = new BrotliStream(packed, CompressionMode.Decompress);
        using var reader = new StreamReader(plain);
        return Read(reader);
    }

    /// <summary>
    /// Reads weights: a line “?question”, then its answers; under it a line for each sign, with the number of an answer and what the sign
    /// counts for it. All are parted by tabs.
    /// </summary>
    internal static Weights Read(TextReader reader)
    {
        var weights = new Weights();
        Dictionary<string, (int, float)[]> rows = [];
        while (reader.ReadLine() is { } line)
        {
            var parts = line.Split('\t');
            if (line[0] == '?')
            {
                weights.answers[parts[0][1..]] = parts[1..];
                weights.signs[parts[0][1..]] = rows = [];
            }
            else
            {
                rows[parts[0]] = [.. parts.Skip(1).Select(Cell)];
            }
        }

        return weights;
    }

    /// <summary>How likely each answer to a question is.</summary>
    internal (string Answer, double Chance)[] Ask(string question, IReadOnlyList<string> seen)
    {
        if (!answers.TryGetValue(question, out var names))
        {
            return [];
        }

        var sums = new double[names.Length];
        var rows = signs[question];
        foreach (var sign in seen)
        {
            if (rows.TryGetValue(sign, out var row))
            {
                foreach (var (answer, weight) in row)
                {
                    sums[answer] += weight;
                }
            }
        }

        var most = sums.Max();
        var all = sums.Sum(sum => Math.Exp(sum - most));
        return [.. names.Select((name, at) => (name, Math.Exp(sums[at] - most) / all))];
    }

    /// <summary>What one sign counts where there is but one answer.</summary>
    internal double Of(string question, string sign) => signs.TryGetValue(question, out var rows) && rows.TryGetValue(sign, out var row) ? row[0].Weight : 0;

    private static (int Answer, float Weight) Cell(string cell)
    {
        var colon = cell.IndexOf(':', StringComparison.Ordinal);
        return (int.Parse(cell.AsSpan(0, colon), CultureInfo.InvariantCulture), int.Parse(cell.AsSpan(colon + 1), CultureInfo.InvariantCulture) * Unit);
    }
}
