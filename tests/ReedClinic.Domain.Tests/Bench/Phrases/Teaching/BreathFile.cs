using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>The breaths of our own in breaths.txt: things said one after another without a mark between them.</summary>
internal static class BreathFile
{
    private const double Half = 0.5;

    private static readonly Dictionary<string, string> Kinds = new()
    {
        ["a"] = "adjustment",
        ["c"] = "riskclosed",
        ["e"] = "ended",
        ["f"] = "finding",
        ["k"] = "leavealone",
        ["l"] = "lookedfor",
        ["n"] = "note",
        ["r"] = "risk",
        ["s"] = "stopped",
        ["t"] = "test",
        ["V"] = "verdict",
        ["-"] = Judge.Nothing,
    };

    /// <summary>What is said in each breath, and what it is.</summary>
    internal static IReadOnlyList<IReadOnlyList<(string Kind, string Words)>> Read(string text) =>
        [.. text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Where(line => line[0] != '#')
            .Select(line => (IReadOnlyList<(string, string)>)[.. line.Split('|', StringSplitOptions.TrimEntries).Select(piece => (Kinds[piece[..1]], piece[2..]))])];

    /// <summary>A lesson for each segment of what is said, with what is said beside it.</summary>
    internal static IEnumerable<(string Kind, List<Lesson> Lessons)> Lessons(IReadOnlyList<IReadOnlyList<(string Kind, string Words)>> breaths)
    {
        foreach (var breath in breaths)
        {
            for (var at = 0; at < breath.Count; at++)
            {
                var lessons = Lessons(breath, at);
                if (lessons.Count == 0)
                {
                    continue;
                }

                if (lessons.Count == 1 || breath[at].Kind is Judge.Nothing or "note")
                {
                    lessons.ForEach(lesson => lesson.Kind = breath[at].Kind);
                }

                yield return (breath[at].Kind, lessons);
            }
        }
    }

    private static List<Lesson> Lessons(IReadOnlyList<(string Kind, string Words)> breath, int at)
    {
        var before = at == 0 ? "" : breath[at - 1].Words + ", ";
        var after = at + 1 == breath.Count ? "" : ", " + breath[at + 1].Words;
        var log = ClauseFile.LogFor(breath[at].Kind);
        var (skip, own) = (Segments(before), Segments(breath[at].Words));
        var tokens = Tokenizer.Cut(before + breath[at].Words + after);
        var course = new Course(Splitter.Cut(tokens, Scanner.Scan(tokens), null), new Before(log));
        if (at > 0 && ClauseFile.KindOf(breath[at - 1].Kind) is { } kind)
        {
            course.Add(kind, ClauseFile.Any(kind));
        }

        List<Lesson> lessons = [];
        for (course.At = skip; course.At < Math.Min(course.Segments.Count, skip + own); course.At++)
        {
            lessons.Add(ClauseFile.Seen(course, Half, _ => true));
        }

        return lessons;
    }

    private static int Segments(string text)
    {
        var tokens = Tokenizer.Cut(text);
        return tokens.Count == 0 ? 0 : Splitter.Cut(tokens, Scanner.Scan(tokens), null).Count;
    }
}
