using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>Learns whom to believe, the rules or the judge, from phrases that neither had been made with.</summary>
internal static class BalanceLessons
{
    private const int Rounds = 60;
    private const double L2 = 0.02;

    internal static IEnumerable<string> Teach(IReadOnlyList<(Sight Sight, string Kind)> lessons, float unit)
    {
        Dictionary<string, int> signs = new() { ["judge"] = 0, ["rules"] = 1 };
        var seen = lessons.Select(lesson => Balance.Kinds.Select(kind => Balance.Signs(lesson.Sight, kind).Select(sign => (At: Number(signs, sign.Sign), sign.Value)).ToArray()).ToArray()).ToArray();
        var right = lessons.Select(lesson => Array.IndexOf(Balance.Kinds, lesson.Kind)).ToArray();
        var weights = new double[signs.Count];
        (weights[0], weights[1]) = (0.5, 1);
        var order = Enumerable.Range(0, lessons.Count).ToArray();
        var state = 7UL;
        for (var round = 0; round < Rounds; round++)
        {
            var rate = 0.1 / (1 + round * 0.2);
            for (var i = order.Length - 1; i > 0; i--)
            {
                state = state * 6364136223846793005UL + 1442695040888963407UL;
                var other = (int)((state >> 33) % (ulong)(i + 1));
                (order[i], order[other]) = (order[other], order[i]);
            }

            foreach (var at in order)
            {
                Learn(seen[at], right[at], weights, rate);
            }
        }

        return signs.Select(pair => (pair.Key, Units: (int)Math.Round(weights[pair.Value] / unit))).Where(pair => pair.Units != 0).OrderBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => $"{pair.Key}\t0:{pair.Units}").Prepend($"?{Questions.Balance}\tfor");
    }

    private static int Number(Dictionary<string, int> signs, string sign)
    {
        if (!signs.TryGetValue(sign, out var number))
        {
            signs[sign] = number = signs.Count;
        }

        return number;
    }

    private static void Learn((int At, double Value)[][] seen, int right, double[] weights, double rate)
    {
        var sums = seen.Select(signs => signs.Sum(sign => weights[sign.At] * sign.Value)).ToArray();
        var most = sums.Max();
        var all = sums.Sum(sum => Math.Exp(sum - most));
        for (var at = 0; at < seen.Length; at++)
        {
            var slope = Math.Exp(sums[at] - most) / all - (at == right ? 1 : 0);
            if (Math.Abs(slope) < 1e-3)
            {
                continue;
            }

            foreach (var (sign, value) in seen[at])
            {
                weights[sign] -= rate * (slope * value + (sign < 2 ? 0 : L2 * weights[sign]));
            }
        }
    }
}
