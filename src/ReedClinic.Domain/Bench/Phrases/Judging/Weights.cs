using System.Globalization;
using System.IO.Compression;

namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>What each sign counts for each answer to each question.</summary>
internal sealed class Weights
{
    /// <summary>Weights are kept as whole numbers of this part.</summary>
    internal const float Unit = 1 / 32f;

    private static readonly Count[] None = [];

    private readonly List<string> questions = [];
    private readonly List<string[]> answers = [];

    // A sign is looked up once, whatever is asked about it: what it counts, for each question.
    private readonly Dictionary<string, Count[][]> signs = [];

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
        while (reader.ReadLine() is { } line)
        {
            var parts = line.Split('\t');
            if (line[0] == '?')
            {
                weights.questions.Add(parts[0][1..]);
                weights.answers.Add(parts[1..]);
            }
            else
            {
                weights.Keep(parts[0], [.. parts.Skip(1).Select(Cell)]);
            }
        }

        return weights;
    }

    /// <summary>What is known of each sign; nothing of one that was never met.</summary>
    internal IReadOnlyList<Count[][]> Known(IReadOnlyList<string> seen)
    {
        List<Count[][]> known = new(seen.Count);
        foreach (var sign in seen)
        {
            if (signs.TryGetValue(sign, out var row))
            {
                known.Add(row);
            }
        }

        return known;
    }

    /// <summary>How likely each answer to a question is.</summary>
    internal (string Answer, double Chance)[] Ask(string question, IReadOnlyList<string> seen) => Ask(question, Known(seen));

    /// <summary>How likely each answer to a question is, by what is known of the signs.</summary>
    internal (string Answer, double Chance)[] Ask(string question, IReadOnlyList<Count[][]> known)
    {
        var asked = questions.IndexOf(question);
        if (asked < 0)
        {
            return [];
        }

        var names = answers[asked];
        var sums = new double[names.Length];
        foreach (var counts in known)
        {
            foreach (var (answer, weight) in For(asked, counts))
            {
                sums[answer] += weight;
            }
        }

        var most = sums.Max();
        var all = sums.Sum(sum => Math.Exp(sum - most));
        return [.. names.Select((name, at) => (name, Math.Exp(sums[at] - most) / all))];
    }

    /// <summary>What one sign counts where there is but one answer.</summary>
    internal double Of(string question, string sign) => signs.TryGetValue(sign, out var counts) && For(questions.IndexOf(question), counts) is [var only, ..] ? only.Weight : 0;

    private static Count[] For(int question, Count[][] counts) => question >= 0 && question < counts.Length ? counts[question] : None;

    private void Keep(string sign, Count[] counts)
    {
        var before = signs.GetValueOrDefault(sign, []);
        signs[sign] = [.. before, .. Enumerable.Repeat(None, questions.Count - 1 - before.Length), counts];
    }

    private static Count Cell(string cell)
    {
        var colon = cell.IndexOf(':', StringComparison.Ordinal);
        return new(int.Parse(cell.AsSpan(0, colon), CultureInfo.InvariantCulture), int.Parse(cell.AsSpan(colon + 1), CultureInfo.InvariantCulture) * Unit);
    }

    /// <summary>What a sign counts for one answer.</summary>
    internal readonly record struct Count(int Answer, float Weight);
}
