namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>
/// Multinomial logistic regression by stochastic gradient descent with a step for each weight (AdaGrad: J. Duchi, E. Hazan, Y. Singer, Adaptive
/// Subgradient Methods, Journal of Machine Learning Research 12, 2011) and both penalties. The order is shuffled by a generator of its own, so
/// that the same lessons make the same weights.
/// </summary>
internal sealed class Logistic
{
    private const int Rounds = 20;
    private const double L2 = 0.01;
    private const double L1 = 0.004;
    private const int Seldom = 2;

    private readonly double rate;
    private readonly string[] answers;
    private readonly Dictionary<string, int> signs = [];
    private readonly double[][] weights;
    private readonly double[][] squares;

    private Logistic(List<(IReadOnlyList<string> Signs, string Answer, double Weight)> lessons, double rate)
    {
        this.rate = rate;
        answers = [.. lessons.Select(lesson => lesson.Answer).Distinct().Order(StringComparer.Ordinal)];
        foreach (var sign in lessons.SelectMany(lesson => lesson.Signs).CountBy(sign => sign).Where(pair => pair.Value >= Seldom).Select(pair => pair.Key).Order(StringComparer.Ordinal))
        {
            signs[sign] = signs.Count;
        }

        weights = [.. signs.Select(_ => new double[answers.Length])];
        squares = [.. signs.Select(_ => new double[answers.Length])];
    }

    /// <summary>Learns; what each sign counts for each answer is then written as the judge reads it.</summary>
    internal static IEnumerable<string> Teach(string question, List<(IReadOnlyList<string> Signs, string Answer, double Weight)> lessons, double rate, float unit)
    {
        var learner = new Logistic(lessons, rate);
        learner.Learn([.. lessons.Select(lesson => (
            lesson.Signs.Where(learner.signs.ContainsKey).Select(sign => learner.signs[sign]).ToArray(), Array.IndexOf(learner.answers, lesson.Answer), lesson.Weight))]);
        return learner.Write(question, unit);
    }

    private void Learn((int[] Signs, int Answer, double Weight)[] lessons)
    {
        var order = Enumerable.Range(0, lessons.Length).ToArray();
        var state = 20_061UL;
        var chances = new double[answers.Length];
        for (var round = 0; round < Rounds; round++)
        {
            for (var i = order.Length - 1; i > 0; i--)
            {
                state = state * 6364136223846793005UL + 1442695040888963407UL;
                var other = (int)((state >> 33) % (ulong)(i + 1));
                (order[i], order[other]) = (order[other], order[i]);
            }

            foreach (var at in order)
            {
                Learn(lessons[at], chances);
            }
        }
    }

    private void Learn((int[] Signs, int Answer, double Weight) lesson, double[] chances)
    {
        Ask(lesson.Signs, chances);
        for (var answer = 0; answer < chances.Length; answer++)
        {
            var slope = (chances[answer] - (answer == lesson.Answer ? 1 : 0)) * lesson.Weight;
            if (Math.Abs(slope) < 1e-4)
            {
                continue;
            }

            foreach (var sign in lesson.Signs)
            {
                var full = slope + L2 * weights[sign][answer];
                var square = squares[sign][answer] += full * full;
                var step = rate / (1e-3 + Math.Sqrt(square));
                var moved = weights[sign][answer] - step * full;
                weights[sign][answer] = Math.Sign(moved) * Math.Max(0, Math.Abs(moved) - step * L1);
            }
        }
    }

    private void Ask(int[] seen, double[] chances)
    {
        Array.Clear(chances);
        foreach (var sign in seen)
        {
            var row = weights[sign];
            for (var answer = 0; answer < chances.Length; answer++)
            {
                chances[answer] += row[answer];
            }
        }

        var most = chances.Max();
        for (var answer = 0; answer < chances.Length; answer++)
        {
            chances[answer] = Math.Exp(chances[answer] - most);
        }

        var all = chances.Sum();
        for (var answer = 0; answer < chances.Length; answer++)
        {
            chances[answer] /= all;
        }
    }

    private IEnumerable<string> Write(string question, float unit)
    {
        yield return $"?{question}\t{string.Join('\t', answers)}";
        foreach (var (sign, at) in signs)
        {
            var cells = weights[at].Select((weight, answer) => (answer, Units: (int)Math.Round(weight / unit))).Where(cell => Math.Abs(cell.Units) > 1).ToList();
            if (cells.Count > 0)
            {
                yield return $"{sign}\t{string.Join('\t', cells.Select(cell => $"{cell.answer}:{cell.Units}"))}";
            }
        }
    }
}
