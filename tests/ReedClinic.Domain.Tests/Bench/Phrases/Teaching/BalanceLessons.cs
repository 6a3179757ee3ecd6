using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>Learns whom to believe, the rules or the judge, from phrases that neither had been made with.</summary>
internal static class BalanceLessons
{
    private const int Rounds = 60;
    private const double L2 = 0.02;

    internal static IEnumerable<string> Teach(IReadOnlyList<(Sight Sight, string Kind)> lessons, float unit)
    {
        Dictionary<string, double> weights = new() { ["judge"] = 0.5, ["rules"] = 1 };
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
                Learn(lessons[at], weights, rate);
            }
        }

        return weights.Select(pair => (pair.Key, Units: (int)Math.Round(pair.Value / unit))).Where(pair => pair.Units != 0).OrderBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => $"{pair.Key}\t0:{pair.Units}").Prepend($"?{Questions.Balance}\tfor");
    }

    private static void Learn((Sight Sight, string Kind) lesson, Dictionary<string, double> weights, double rate)
    {
        var chances = Balance.Chances(lesson.Sight, sign => weights.GetValueOrDefault(sign));
        for (var at = 0; at < chances.Length; at++)
        {
            var slope = chances[at] - (Balance.Kinds[at] == lesson.Kind ? 1 : 0);
            if (Math.Abs(slope) < 1e-3)
            {
                continue;
            }

            foreach (var (sign, value) in Balance.Signs(lesson.Sight, Balance.Kinds[at]))
            {
                var weight = weights.GetValueOrDefault(sign);
                weights[sign] = weight - rate * (slope * value + (sign is "judge" or "rules" ? 0 : L2 * weight));
            }
        }
    }
}
