using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>A labelled phrase, read by the rules alone, with what each of its segments should have said.</summary>
internal sealed class TaughtPhrase
{
    private static readonly Judge Uncut = new(new Weights());

    private readonly Labelled labelled;
    private readonly double weight;
    private readonly PhraseContext context;
    private Judge? cutter;
    private List<Sight> sights = [];
    private List<Line?> heads = [];

    internal TaughtPhrase(Labelled labelled, double weight = 1)
    {
        (this.labelled, this.weight) = (labelled, weight);
        context = PhraseCorpus.Context(labelled.Before, ByRules);
        Cut(null);
    }

    /// <summary>Cuts the phrase as a judge does, or by the rules alone, and goes through it by the rules.</summary>
    internal void Cut(Judge? cutter)
    {
        this.cutter = cutter;
        sights = [];
        var course = PhraseReader.Run(Tokenizer.Cut(labelled.Phrase), context, null, sights.Add, null, cutter);
        Lessons = Told(sights);
        heads = [.. sights.Select(_ => (Line?)null)];
        Match(course, Reading.Of(labelled.Phrase, course.Segments, course).Entries.Select(PhraseCorpus.LineOf).ToList());
    }

    internal IReadOnlyList<Line> Labels => labelled.Lines;

    /// <summary>A lesson for each segment that was read, in order.</summary>
    internal IReadOnlyList<Lesson> Lessons { get; private set; } = [];

    internal IReadOnlyList<Sight> Sights => sights;

    /// <summary>True when the rules found every entry that is labelled and no other, so that where each is said is known.</summary>
    internal bool IsPlaced { get; private set; }

    /// <summary>The label that the rules read at a segment, if they did.</summary>
    internal Line? At(int segment) => heads[segment];

    /// <summary>True when every label has its segment.</summary>
    internal bool IsWhole => heads.Count(head => head is not null) == Labels.Count;

    internal static PhraseReading ByRules(string text, PhraseContext context) => PhraseReader.Read(text, context, null);

    /// <summary>Goes through the phrase once more, and takes each segment for what it should be: so what was read before a segment is what it should have been.</summary>
    internal void Relive(Judge judge)
    {
        if (IsPlaced)
        {
            return;
        }

        var known = sights.Select((sight, at) => (sight.Before.At, Lesson: Lessons[at])).ToDictionary(pair => pair.At, pair => pair.Lesson);
        List<Sight> lived = [];
        PhraseReader.Run(Tokenizer.Cut(labelled.Phrase), context, judge, lived.Add, sight => known.TryGetValue(sight.Before.At, out var lesson) ? lesson.Kind : sight.Said, cutter ?? Uncut);
        var said = sights.Select((sight, at) => (sight.Before.At, Head: heads[at])).ToDictionary(pair => pair.At, pair => pair.Head);
        sights = lived;
        heads = [.. lived.Select(sight => said.GetValueOrDefault(sight.Before.At))];
        Lessons = Told(lived);
        foreach (var (sight, lesson) in lived.Zip(Lessons))
        {
            if (known.TryGetValue(sight.Before.At, out var told))
            {
                (lesson.Kind, lesson.Answer) = (told.Kind, told.Answer);
            }
        }
    }

    private List<Lesson> Told(IEnumerable<Sight> seen) => [.. seen.Select(sight => new Lesson(sight.Opinion.Seen, sight.Opinion.Matter) { Weight = weight })];

    private void Match(Course course, List<Line> read)
    {
        var index = 0;
        IsPlaced = true;
        foreach (var (label, heard) in PhraseScore.Align(Labels, read))
        {
            if (heard is not null)
            {
                var at = sights.FindIndex(sight => sight.Before.At == course.Drafts[index].Head);
                index++;
                if (label?.Kind == heard.Kind && at >= 0)
                {
                    heads[at] = label;
                    continue;
                }
            }

            IsPlaced = false;
        }

        for (var at = 0; at < sights.Count; at++)
        {
            Tell(at, heads[at], course.Noted.Contains(sights[at].Before.At) ? "note" : Judge.Nothing);
        }
    }

    /// <summary>Sets what a segment says.</summary>
    internal void Tell(int at, Line? label, string otherwise)
    {
        heads[at] = label;
        Lessons[at].Kind = label?.Kind ?? otherwise;
        Lessons[at].Answer = label is null ? null : Lesson.AnswerOf(label);
    }
}
