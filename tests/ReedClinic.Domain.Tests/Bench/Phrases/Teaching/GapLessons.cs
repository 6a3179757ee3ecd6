using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>
/// Learns where a new thing begins to be said without a mark: from phrases whose marks are taken away where one entry follows another, and
/// from two phrases said in one breath. Everywhere else in them nothing new begins.
/// </summary>
internal static class GapLessons
{
    private const double Rate = 0.03;
    private const int Rounds = 8;
    private const int Apart = 7;

    internal static IEnumerable<string> Teach(IReadOnlyList<TaughtPhrase> phrases, IReadOnlyList<IReadOnlyList<(string Kind, string Words)>> breaths, float unit)
    {
        List<(IReadOnlyList<string>, string, double)> lessons = [];
        var placed = phrases.Where(phrase => phrase.IsWhole && phrase.Sights.Count > 0 && phrase.Labels.Count > 0).ToList();
        foreach (var phrase in placed)
        {
            Within(phrase, lessons);
        }

        var single = placed.Where(phrase => phrase.Sights.Count == 1 && phrase.Sights[0].Before.Segments.Count == 1).ToList();
        for (var at = 0; at + Apart < single.Count; at++)
        {
            Join(single[at].Sights[0].Before.Segment, single[at + Apart].Sights[0].Before.Segment, lessons);
        }

        breaths.ToList().ForEach(breath => Between(breath, lessons));
        return Logistic.Teach(Questions.Gap, lessons, Rate, Rounds, unit);
    }

    private static void Between(IReadOnlyList<(string Kind, string Words)> breath, List<(IReadOnlyList<string>, string, double)> lessons)
    {
        for (var at = 0; at < breath.Count; at++)
        {
            var tokens = Tokenizer.Cut(breath[at].Words);
            Learn(tokens, -1, lessons);
            if (at > 0 && breath[at].Kind is not Judge.Nothing && breath[at - 1].Kind is not Judge.Nothing)
            {
                var before = Tokenizer.Cut(breath[at - 1].Words);
                Learn([.. before, .. tokens], before.Count, lessons);
            }
        }
    }

    private static void Within(TaughtPhrase phrase, List<(IReadOnlyList<string>, string, double)> lessons)
    {
        for (var at = 0; at < phrase.Sights.Count; at++)
        {
            var segment = phrase.Sights[at].Before.Segment;
            Learn(Bare(segment), -1, lessons);
            if (at > 0 && phrase.Lessons[at].Kind is not Judge.Nothing && phrase.Lessons[at - 1].Kind is not Judge.Nothing && segment.Joint is "," or "" && phrase.At(at) is not null)
            {
                Join(phrase.Sights[at - 1].Before.Segment, segment, lessons);
            }
        }
    }

    private static void Join(Segment one, Segment other, List<(IReadOnlyList<string>, string, double)> lessons)
    {
        var before = Bare(one);
        Learn([.. before, .. Bare(other)], before.Count, lessons);
    }

    private static List<Token> Bare(Segment segment) => [.. Enumerable.Range(segment.First, segment.End - segment.First).Select(at => segment.Tokens[at]).Where(token => token.Kind is not TokenKind.Break)];

    // Where one thing after the other is said, what is cut off is behind the gap, and what is behind it has nothing before it.
    private static void Learn(List<Token> tokens, int begins, List<(IReadOnlyList<string>, string, double)> lessons)
    {
        var items = Scanner.Scan(tokens);
        var joined = new bool[tokens.Count];
        foreach (var item in items)
        {
            Array.Fill(joined, true, item.First + 1, item.Count - 1);
        }

        var first = 0;
        for (var at = 1; at < tokens.Count; at++)
        {
            if (at == begins)
            {
                lessons.Add((Gaps.SignsOf(tokens, items, 0, at), Gaps.New, 1));
                first = at;
            }
            else if (!joined[at])
            {
                lessons.Add((Gaps.SignsOf(tokens, items, first, at), Gaps.Same, 1));
            }
        }
    }
}
