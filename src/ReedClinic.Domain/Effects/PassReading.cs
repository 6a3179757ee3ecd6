using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Effects;

/// <summary>What was done to a reed between two tries of the same test.</summary>
/// <param name="Student">Whose reed it is.</param>
/// <param name="Teacher">Who worked on it.</param>
/// <param name="Done">How much of each adjustment, in usual passes: both sides of both blades is 1, one side of one blade a quarter.</param>
public sealed record WorkDone(StudentId Student, AccountId Teacher, IReadOnlyDictionary<AdjustmentKindId, double> Done);

/// <summary>How far the crow moved.</summary>
/// <param name="Work">What was done.</param>
/// <param name="Moved">How far; both crows were told as one pitch.</param>
public sealed record CrowMoved(WorkDone Work, Cents Moved);

/// <summary>Which way a test moved on its words.</summary>
/// <param name="Work">What was done.</param>
/// <param name="Scale">What the test is about.</param>
/// <param name="Way">−1, 0 or +1 in the direction of that scale.</param>
public sealed record WordMoved(WorkDone Work, EffectScale Scale, int Way);

/// <summary>What the passes of a bench log show.</summary>
/// <param name="Crow">The crow’s moves in cents.</param>
/// <param name="Words">The moves of the tests that are told in words.</param>
public sealed record PassReading(IReadOnlyList<CrowMoved> Crow, IReadOnlyList<WordMoved> Words)
{
    private static readonly (TestKind Test, EffectScale Scale, int Way)[] Scales =
    [
        (TestKind.TuningNote, EffectScale.Pitch, 1),
        (TestKind.Opening, EffectScale.Opening, 1),
        (TestKind.Effort, EffectScale.Effort, 1),
        (TestKind.SoftestStart, EffectScale.Response, 1),
        (TestKind.Edge, EffectScale.Tone, -1),
        (TestKind.HighSteadiness, EffectScale.Steadiness, 1),
    ];

    /// <summary>Nothing.</summary>
    public static PassReading Empty { get; } = new([], []);

    /// <summary>
    /// Reads a log. What was done between two tries of a test is taken together, so that nothing is put down to one adjustment that
    /// another one did. Pitches told as “between” or “a little” are no measurements: work goes on adding up until the next one that is.
    /// </summary>
    /// <param name="log">The log of one reed.</param>
    /// <param name="student">Whose reed it is.</param>
    /// <param name="crow">What its crow is held against; any will do, since only the difference counts.</param>
    /// <returns>The moves.</returns>
    public static PassReading Of(BenchLog log, StudentId student, CrowTarget crow)
    {
        ArgumentNullException.ThrowIfNull(log);
        return new PassReading(
            [
                .. Between(log, student, TestKind.Crow, test => test.Pitch?.Against(crow) is { IsOnePitch: true } at ? at.Middle : (Cents?)null)
                    .Select(step => new CrowMoved(step.Work, (step.After - step.Before).FoldedToOneOctave)),
            ],
            [
                .. Scales.SelectMany(scale => Between(log, student, scale.Test, test => test.Step)
                    .Select(step => new WordMoved(step.Work, scale.Scale, Math.Sign(step.After - step.Before) * scale.Way))),
            ]);
    }

    /// <summary>Several readings taken together.</summary>
    /// <param name="readings">The readings.</param>
    /// <returns>All their moves.</returns>
    public static PassReading Together(IEnumerable<PassReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        List<PassReading> all = [.. readings];
        return new PassReading([.. all.SelectMany(one => one.Crow)], [.. all.SelectMany(one => one.Words)]);
    }

    /// <summary>How much of a usual pass an adjustment is.</summary>
    /// <param name="done">The adjustment.</param>
    /// <returns>1 for both sides of both blades; a clip by its millimetres where they were said.</returns>
    public static double Share(Adjustment done)
    {
        ArgumentNullException.ThrowIfNull(done);
        var share = (done.Blades == Blades.Both ? 1 : 0.5) * (done.Sides == Sides.Both ? 1 : 0.5);
        return share * (done.AdjustmentKind.Value switch
        {
            "clip-hair" => (double)((done.Amount.Millimetres ?? ReedLengths.UsualHair) / ReedLengths.UsualHair),
            "clip" => (double)((done.Amount.Millimetres ?? ReedLengths.UsualClip) / ReedLengths.UsualClip),
            _ => 1,
        });
    }

    private static IEnumerable<(WorkDone Work, T Before, T After)> Between<T>(BenchLog log, StudentId student, TestKind test, Func<Test, T?> read)
        where T : struct
    {
        var done = new Dictionary<AdjustmentKindId, double>();
        var teacher = default(AccountId);
        T? before = null;
        foreach (var pass in log.Passes)
        {
            foreach (var work in pass.Adjustments)
            {
                done[work.AdjustmentKind] = done.GetValueOrDefault(work.AdjustmentKind) + Share(work);
                teacher = work.RecordedBy;
            }

            // The last try of a pass counts, when it can be read. What was measured doesn’t yet: no real crow was ever measured.
            if (pass.Tests.LastOrDefault(one => one.TestKind == test && one.MeasuredFrom is null) is not { } last || read(last) is not { } after)
            {
                continue;
            }

            if (before is { } was && done.Count > 0)
            {
                yield return (new WorkDone(student, teacher, new Dictionary<AdjustmentKindId, double>(done)), was, after);
            }

            before = after;
            done.Clear();
        }
    }
}
