using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench.Phrases.Judging;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>The clauses of our own in clauses.txt, as lessons: what each says by itself, behind an entry, or in front of one.</summary>
internal static class ClauseFile
{
    private const string Other = "zzz";
    private const double Less = 0.3;

    private static readonly Lazy<BenchLog> Bump = new(() => PhraseCorpus.Context(["bump in the ramp"], TaughtPhrase.ByRules).Log);

    private static readonly Lazy<BenchLog> Feared = new(() => PhraseCorpus.Context(["that may cost the low notes"], TaughtPhrase.ByRules).Log);

    private static readonly EntryKind[] Behind = [EntryKind.Finding, EntryKind.Test, EntryKind.Adjustment];

    /// <summary>The lessons, clause by clause; where a clause has several segments, none of them is told yet which it is.</summary>
    internal static IReadOnlyList<(string Kind, List<Lesson> Lessons)> Read(string text)
    {
        List<(string, List<Lesson>)> clauses = [];
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
                    clauses.Add((head[0], Told(head, Lessons(line, LogFor(head[0]), null, 0, 0))));
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

    /// <summary>The kind of entry of that small name; null for nothing.</summary>
    internal static EntryKind? KindOf(string kind) => Enum.GetValues<EntryKind>().Where(one => Sight.Name(one) == kind).Select(one => (EntryKind?)one).FirstOrDefault();

    /// <summary>What was said before, where something is said to have ended.</summary>
    internal static BenchLog LogFor(string kind) => kind is "ended" ? Bump.Value : kind is "riskclosed" ? Feared.Value : BenchLog.Empty;

    /// <summary>A lesson of the segment that is read next.</summary>
    internal static Lesson Seen(Course course, double weight, Func<string, bool> counts)
    {
        var matter = Signs.OfMatter(course.Segment);
        var ruled = course.Copy();
        Rules.Read(ruled);
        return new Lesson([.. Signs.Of(course, matter).Where(counts), .. Signs.OfRules(course, ruled)], matter) { Weight = weight };
    }

    // What stands in for the entry beside the clause says nothing.
    private static bool IsOfOther(string sign) => sign.StartsWith("pw=", StringComparison.Ordinal) || sign.StartsWith("nw=", StringComparison.Ordinal);

    // The rules look at what stands before.
    internal static ReadSlots Any(EntryKind kind) => kind switch
    {
        EntryKind.Note or EntryKind.Stopped or EntryKind.Risk => ReadSlots.None,
        EntryKind.LeaveAlone => new ReadSlots { Zone = Zone.Cork },
        EntryKind.Verdict => new ReadSlots { Verdict = VerdictKind.Improved },
        EntryKind.RiskClosed => new ReadSlots { Outcome = RiskOutcome.StillOpen },
        EntryKind.FindingEnded => new ReadSlots { Kind = "cork-loose", Ending = FindingEnding.Gone },
        EntryKind.Test => new ReadSlots { Test = TestKind.Crow, Pitch = "C" },
        EntryKind.Finding => new ReadSlots { Kind = "cork-loose", Character = FindingCharacter.Fault, Zone = Zone.Cork },
        _ => new ReadSlots { Kind = "clip", Zone = Zone.TipEdge },
    };

    private static List<Lesson> Lessons(string text, BenchLog log, EntryKind? behind, int skip, int drop)
    {
        var tokens = Tokenizer.Cut(text);
        var course = new Course(Splitter.Cut(tokens, Scanner.Scan(tokens), null), new Before(log));
        if (behind is { } kind)
        {
            course.Add(kind, Any(kind));
        }

        List<Lesson> lessons = [];
        for (course.At = skip; course.At < course.Segments.Count - drop; course.At++)
        {
            lessons.Add(Seen(course, Less, sign => !IsOfOther(sign)));
        }

        return lessons;
    }
}
