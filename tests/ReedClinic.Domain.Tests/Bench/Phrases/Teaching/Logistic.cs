namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>
/// Multinomial logistic regression by stochastic gradient descent with a step for each weight (AdaGrad: J. Duchi, E. Hazan, Y. Singer, Adaptive
/// Subgradient Methods, Journal of Machine Learning Research 12, 2011) and both penalties. The order is shuffled by a generator of its own, so
/// that the same lessons make the same weights.
/// </summary>
internal sealed class Logistic
{
    private const float L2 = 0.005f;
    private const float L1 = 0.001f;
    private const int Seldom = 2;

    private readonly float rate;
    private readonly string[] answers;
    private readonly Dictionary<string, int> signs = [];
    private readonly float[] weights;
    private readonly float[] squares;

    private Logistic(List<(IReadOnlyList<string> Signs, string Answer, double Weight)> lessons, double rate)
    {
        this.rate = (float)rate;
        answers = [.. lessons.Select(lesson => lesson.Answer).Distinct().Order(StringComparer.Ordinal)];
        foreach (var sign in lessons.SelectMany(lesson => lesson.Signs).CountBy(sign => sign).Where(pair => pair.Value >= Seldom).Select(pair => pair.Key).Order(StringComparer.Ordinal))
        {
            signs[sign] = signs.Count;
        }

        weights = new float[signs.Count * answers.Length];
        squares = new float[signs.Count * answers.Length];
    }

    /// <summary>Learns; what each sign counts for each answer is then written as the judge reads it.</summary>
    internal static IEnumerable<string> Teach(string question, List<(IReadOnlyList<string> Signs, string Answer, double Weight)> lessons, double rate, int rounds, float unit)
    {
        var learner = new Logistic(lessons, rate);
        learner.Learn([.. lessons.Select(lesson => (
            lesson.Signs.Where(learner.signs.ContainsKey).Select(sign => learner.signs[sign] * learner.answers.Length).ToArray(), Array.IndexOf(learner.answers, lesson.Answer), (float)lesson.Weight))], rounds);
        return learner.Write(question, unit);
    }

    private void Learn((int[] Signs, int Answer, float Weight)[] lessons, int rounds)
    {
        var order = Enumerable.Range(0, lessons.Length).ToArray();
        var state = 20_061UL;
        var chances = new float[answers.Length];
        for (var round = 0; round < rounds; round++)
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

    private void Learn((int[] Signs, int Answer, float Weight) lesson, float[] chances)
    {
        Ask(lesson.Signs, chances);
        Span<int> wrong = stackalloc int[chances.Length];
        var count = 0;
        for (var answer = 0; answer < chances.Length; answer++)
        {
            var slope = chances[answer] = (chances[answer] - (answer == lesson.Answer ? 1 : 0)) * lesson.Weight;
            if (Math.Abs(slope) >= 1e-3f)
            {
                wrong[count++] = answer;
            }
        }

        foreach (var sign in lesson.Signs)
        {
            foreach (var answer in wrong[..count])
            {
                Move(sign + answer, chances[answer]);
            }
        }
    }

    private void Move(int cell, float slope)
    {
        var weight = weights[cell];
        var full = slope + L2 * weight;
        var square = squares[cell] += full * full;
        var step = rate / (1e-3f + MathF.Sqrt(square));
        var moved = weight - step * full;
        var less = step * L1;
        weights[cell] = moved > less ? moved - less : moved < -less ? moved + less : 0;
    }

    private void Ask(int[] seen, float[] chances)
    {
        Array.Clear(chances);
        foreach (var sign in seen)
        {
            var row = weights.AsSpan(sign, chances.Length);
            for (var answer = 0; answer < row.Length; answer++)
            {
                chances[answer] += row[answer];
            }
        }

        var most = chances.Max();
        var all = 0f;
        for (var answer = 0; answer < chances.Length; answer++)
        {
            all += chances[answer] = MathF.Exp(chances[answer] - most);
        }

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
            var cells = Enumerable.Range(0, answers.Length).Select(answer => (answer, Units: (int)MathF.Round(weights[at * answers.Length + answer] / unit))).Where(cell => Math.Abs(cell.Units) > 1).ToList();
            if (cells.Count > 0)
            {
                yield return $"{sign}\t{string.Join('\t', cells.Select(cell => $"{cell.answer}:{cell.Units}"))}";
            }
        }
    }
}
