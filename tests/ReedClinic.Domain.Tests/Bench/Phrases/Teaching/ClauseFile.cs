using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>The clauses of our own in clauses.txt, as lessons: what each says by itself, behind an entry, or in front of one.</summary>
internal static class ClauseFile
{
    private const string Other = "zzz";
    private const double Less = 0.3;

    private static readonly EntryKind[] Behind = [EntryKind.Finding, EntryKind.Test, EntryKind.Adjustment];

    /// <summary>The lessons, clause by clause; where a clause has several segments, none of them is told yet which it is.</summary>
    internal static IReadOnlyList<(string Kind, List<Lesson> Lessons)> Read(string text)
    {
        List<(string, List<Lesson>)> clauses = [];
        var bump = PhraseCorpus.Context(["bump in the ramp"], TaughtPhrase.ByRules).Log;
        var feared = PhraseCorpus.Context(["that may cost the low notes"], TaughtPhrase.ByRules).Log;
        string[] head = [];
        foreach (var line in text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Where(line => line[0] != '#'))
        {
            if (line[0] == '@')
            {
                head = line[2..].Split(' ', 2);
                continue;
            }

            switch (head[0])
            {
                case "aside":
                    clauses.AddRange(Behind.Select(kind => (Judge.Nothing, Lessons($"{Other}, {line}", BenchLog.Empty, kind, 1, 0))));
                    break;
                case "lead":
                    clauses.Add((Judge.Nothing, Lessons($"{line}, {Other}", BenchLog.Empty, null, 0, 1)));
                    break;
                default:
                    clauses.Add((head[0], Told(head, Lessons(line, head[0] is "ended" ? bump : head[0] is "riskclosed" ? feared : BenchLog.Empty, null, 0, 0))));
                    break;
            }
        }

        // “From memory, …” is taken into the segment before it.
        clauses.RemoveAll(clause => clause.Item2.Count == 0);
        foreach (var (kind, lessons) in clauses.Where(clause => clause.Item1 is Judge.Nothing or "note" || clause.Item2.Count == 1))
        {
            foreach (var lesson in lessons)
            {
                lesson.Kind = kind;
            }
        }

        return clauses;
    }

    private static List<Lesson> Told(string[] head, List<Lesson> lessons)
    {
        foreach (var lesson in lessons)
        {
            lesson.Answer = head.Length > 1 ? head[1] : null;
        }

        return lessons;
    }

    // What stands in for the entry beside the clause says nothing.
    private static bool IsOfOther(string sign) => sign.StartsWith("pw=", StringComparison.Ordinal) || sign.StartsWith("nw=", StringComparison.Ordinal);

    private static List<Lesson> Lessons(string text, BenchLog log, EntryKind? behind, int skip, int drop)
    {
        var tokens = Tokenizer.Cut(text);
        var course = new Course(Splitter.Cut(tokens, Scanner.Scan(tokens)), new Before(log));
        if (behind is { } kind)
        {
            course.Add(kind, ReadSlots.None);
        }

        List<Lesson> lessons = [];
        for (course.At = skip; course.At < course.Segments.Count - drop; course.At++)
        {
            var matter = Signs.OfMatter(course.Segment);
            lessons.Add(new Lesson([.. Signs.Of(course, matter).Where(sign => !IsOfOther(sign))], matter) { Weight = Less });
        }

        return lessons;
    }
}
