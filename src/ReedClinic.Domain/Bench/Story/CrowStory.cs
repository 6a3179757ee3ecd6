using System.Globalization;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench.Story;

/// <summary>One crow of a reed’s story.</summary>
/// <param name="Test">The test’s first entry.</param>
/// <param name="Sequence">Its place in the log.</param>
/// <param name="Pass">The pass it belongs to; 0 is as it arrived.</param>
/// <param name="At">When it was first written down.</param>
/// <param name="Cents">How far it lies from the target; null where no pitch was said, which is a gap in the line.</param>
/// <param name="OctaveWord">How its octaves came, such as “high, then low joins”, if it was said.</param>
/// <param name="Octave">The octave in scientific counting, if it was said.</param>
public sealed record CrowPoint(
    EntryId Test, int Sequence, int Pass, DateTimeOffset At, CentsRange? Cents, string? OctaveWord, int? Octave)
{
    /// <summary>Whether it was measured from a recording, and not said.</summary>
    public bool IsMeasured { get; init; }
}

/// <summary>What was done between two crows with a pitch, and what it did.</summary>
/// <param name="From">The crow before, by its index in <see cref="CrowStory.Points"/>.</param>
/// <param name="To">The crow after.</param>
/// <param name="Work">What was done, in a few words each: “clip 0.2 mm”, “corners ×2”.</param>
/// <param name="Change">How far the crow moved, as a range; plus is up.</param>
/// <param name="HasGap">True when passes went by in between without a pitch, so that what did what can’t be told apart.</param>
/// <param name="Sentence">The step in a sentence: “A clip of 0.2 mm: 18 cents up”.</param>
public sealed record CrowStep(int From, int To, IReadOnlyList<string> Work, CentsRange Change, bool HasGap, string Sentence);

/// <summary>
/// The story of a reed as its crow tells it: where it stood, what was done, where it went. Only numbers and words: cents from the
/// target with octaves folded away, as <see cref="SaidPitch.Against"/> gives them.
/// </summary>
public sealed class CrowStory
{
    private const double Grid = 50;

    private CrowStory(IReadOnlyList<CrowPoint> points, IReadOnlyList<CrowPoint> beside, IReadOnlyList<LiveFact<Adjustment>> work, CrowTarget target)
    {
        Points = points;
        Beside = beside;
        var heard = Enumerable.Range(0, points.Count).Where(index => points[index].Cents is not null).ToList();
        Steps = [.. heard.Zip(heard.Skip(1), (from, to) => Step(points, from, to, Between(work, points[from], points[to])))];
        Before = StoryWork.Say(Between(work, null, heard.Count > 0 ? points[heard[0]] : null));
        Since = heard.Count > 0 ? StoryWork.Say(Between(work, points[heard[^1]], null)) : [];
        Extent = Around(heard.Select(index => points[index].Cents!.Value).Concat(beside.Select(point => point.Cents!.Value)).SelectMany(range => new[] { range.Low.Value, range.High.Value }));
        Sentence = heard.Count == 0 ? null : Whole(points[heard[0]], points[heard[^1]], target.PitchClass.Name);
    }

    /// <summary>The crows in order, those without a pitch too.</summary>
    public IReadOnlyList<CrowPoint> Points { get; }

    /// <summary>What was measured in a pass in which somebody said the same: it stands beside the way and changes nothing of it.</summary>
    public IReadOnlyList<CrowPoint> Beside { get; }

    /// <summary>The steps between crows with a pitch.</summary>
    public IReadOnlyList<CrowStep> Steps { get; }

    /// <summary>What was done before the first crow with a pitch, or at all when there is none.</summary>
    public IReadOnlyList<string> Before { get; }

    /// <summary>What was done since the last crow with a pitch.</summary>
    public IReadOnlyList<string> Since { get; }

    /// <summary>Within this a crow counts as on its target.</summary>
    public CentsRange TargetBand { get; } = new(new Cents(-CrowTarget.ToleranceCents), new Cents(CrowTarget.ToleranceCents));

    /// <summary>What a drawing has to show: the band and every crow, out to the next 50 cents.</summary>
    public CentsRange Extent { get; }

    /// <summary>The whole in a sentence: “From 70 cents below C to C in three passes”; null when no pitch was said.</summary>
    public string? Sentence { get; }

    /// <summary>What a drawing of some pitches has to show, out to the next 50 cents, and 50 on either side of the target at least.</summary>
    /// <param name="cents">The pitches.</param>
    public static CentsRange Around(IEnumerable<double> cents)
    {
        List<double> all = [.. cents, -Grid, Grid];
        return new CentsRange(new Cents(Math.Floor(all.Min() / Grid) * Grid), new Cents(Math.Ceiling(all.Max() / Grid) * Grid));
    }

    /// <summary>Reads the story out of a log.</summary>
    /// <param name="log">The reed’s log.</param>
    /// <param name="target">What its crow is compared with.</param>
    public static CrowStory Of(BenchLog log, CrowTarget target)
    {
        ArgumentNullException.ThrowIfNull(log);
        CrowPoint Point(LiveFact<Test> test) => new(
            test.Root, test.Sequence, test.Pass, log.FactOf(test.Root)!.Chain[0].RecordedAt,
            test.Now.Pitch?.Against(target), test.Now.StepWord, test.Now.Pitch?.Octave)
        { IsMeasured = test.Now.MeasuredFrom is not null };

        List<CrowPoint> Crows(IEnumerable<LiveFact<Test>> tests) =>
            [.. tests.Where(test => test.Now.TestKind == TestKind.Crow).OrderBy(test => test.Pass).ThenBy(test => test.Sequence).Select(Point)];

        var points = Crows(log.Counting);
        return new CrowStory(
            points, Crows(log.Live<Test>().Except(log.Counting).Where(test => test.Now.Pitch is not null)), [.. log.Work.OrderBy(work => work.Pass).ThenBy(work => work.Sequence)], target);
    }

    private static CrowStep Step(IReadOnlyList<CrowPoint> points, int from, int to, List<Adjustment> work)
    {
        var change = Move(points[from].Cents!.Value, points[to].Cents!.Value);
        var hasGap = to - from > 1 || points[to].Pass - points[from].Pass > 1;
        return new CrowStep(from, to, StoryWork.Say(work), change, hasGap, $"{StoryWork.Lead(work)}: {CentsWords.Change(change)}");
    }

    // From anywhere in the one range to anywhere in the other, by the nearer way round the octave.
    private static CentsRange Move(CentsRange from, CentsRange to)
    {
        var middle = to.Middle.Value - from.Middle.Value;
        var turn = new Cents(middle).FoldedToOneOctave.Value - middle;
        return new CentsRange(new Cents(to.Low.Value - from.High.Value + turn), new Cents(to.High.Value - from.Low.Value + turn));
    }

    private static List<Adjustment> Between(IEnumerable<LiveFact<Adjustment>> work, CrowPoint? from, CrowPoint? to) =>
    [
        .. work.Where(done =>
                (from is null || (done.Pass, done.Sequence).CompareTo((from.Pass, from.Sequence)) > 0)
                && (to is null || (done.Pass, done.Sequence).CompareTo((to.Pass, to.Sequence)) < 0))
            .Select(done => done.Now),
    ];

    private static string Whole(CrowPoint first, CrowPoint last, string note)
    {
        var from = CentsWords.Stand(first.Cents!.Value, note);
        if (first == last)
        {
            return $"It stood {(from == note ? "on " : "")}{from}";
        }

        var passes = last.Pass - first.Pass;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"From {from} to {CentsWords.Stand(last.Cents!.Value, note)} {(passes == 0 ? "without work in between" : "in " + CentsWords.Passes(passes))}");
    }
}
