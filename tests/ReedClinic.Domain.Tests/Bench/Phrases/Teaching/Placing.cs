using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>
/// Labels don’t say where in the phrase an entry is said. Where the rules don’t know either, the likeliest way to lay the labels on the
/// segments in their order is taken, as a judge sees it that was taught with what is known.
/// </summary>
internal static class Placing
{
    private const double AsRead = 8;

    private enum Step
    {
        Nothing,
        Entry,
        SameNote,
        SameTest,
    }

    internal static void Place(TaughtPhrase phrase, Weights weights)
    {
        var (labels, lessons) = (phrase.Labels, phrase.Lessons);
        var best = new double[lessons.Count + 1, labels.Count + 1];
        var came = new Step[lessons.Count + 1, labels.Count + 1];
        for (var at = 0; at <= lessons.Count; at++)
        {
            for (var done = 0; done <= labels.Count; done++)
            {
                best[at, done] = at + done == 0 ? 0 : double.NegativeInfinity;
            }
        }

        for (var at = 0; at < lessons.Count; at++)
        {
            var kinds = weights.Ask(Questions.Kind, lessons[at].Seen).ToDictionary(answer => answer.Answer, answer => Math.Log(answer.Chance + 1e-4));
            for (var done = 0; done <= labels.Count; done++)
            {
                Try(best, came, (at, done, done), kinds[Judge.Nothing], Step.Nothing);
                if (done < labels.Count)
                {
                    Try(best, came, (at, done, done + 1), kinds[labels[done].Kind] + Likely(phrase, at, labels[done], weights), Step.Entry);
                }

                if (done > 0 && labels[done - 1].Kind == "note")
                {
                    Try(best, came, (at, done, done), kinds["note"], Step.SameNote);
                }

                if (done > 0 && labels[done - 1].Kind == "test")
                {
                    Try(best, came, (at, done, done), kinds["test"] + 0.5 * Math.Log(Same(phrase, at, labels[done - 1], weights) + 1e-3) - 0.5, Step.SameTest);
                }
            }
        }

        Follow(phrase, best, came);
    }

    private static void Try(double[,] best, Step[,] came, (int At, int From, int To) way, double gain, Step step)
    {
        var sum = best[way.At, way.From] + gain;
        if (sum > best[way.At + 1, way.To])
        {
            best[way.At + 1, way.To] = sum;
            came[way.At + 1, way.To] = step;
        }
    }

    private static double Likely(TaughtPhrase phrase, int at, Line label, Weights weights)
    {
        var known = ReferenceEquals(phrase.At(at), label) ? AsRead : 0;
        return Questions.Of(label.Kind) is { } question && Lesson.AnswerOf(label) is { } said
            ? known + 0.5 * Math.Log(weights.Ask(question, phrase.Lessons[at].Matter).FirstOrDefault(answer => answer.Answer == said).Chance + 1e-3)
            : known;
    }

    private static double Same(TaughtPhrase phrase, int at, Line label, Weights weights) =>
        weights.Ask(Questions.Test, phrase.Lessons[at].Matter).Where(answer => answer.Answer.StartsWith(label.Slots["test"] + "/", StringComparison.Ordinal)).Sum(answer => answer.Chance);

    // Where there are more labels than segments, the last ones have no place.
    private static void Follow(TaughtPhrase phrase, double[,] best, Step[,] came)
    {
        var done = phrase.Labels.Count;
        while (double.IsNegativeInfinity(best[phrase.Lessons.Count, done]))
        {
            done--;
        }

        for (var at = phrase.Lessons.Count; at > 0; at--)
        {
            var step = came[at, done];
            phrase.Tell(at - 1, step is Step.Entry ? phrase.Labels[done - 1] : null, step is Step.SameNote ? "note" : step is Step.SameTest ? "test" : Judge.Nothing);
            done -= step is Step.Entry ? 1 : 0;
        }
    }
}
