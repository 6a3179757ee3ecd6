using System.Globalization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>
/// Makes a test for the log of what was read from a recording at the bench. It stands beside what the teacher says of the same
/// reed and takes the place of nothing.
/// </summary>
public static class MeasuredTest
{
    /// <summary>
    /// How much earlier the upper octaves must come for “high, then low joins”, in seconds; else they came all at once. It is this
    /// program’s own choice: twice what an ear holds apart as two beginnings (from memory).
    /// </summary>
    public const double JoinsAfterSeconds = 0.05;

    /// <summary>Makes the test.</summary>
    /// <param name="from">The recording.</param>
    /// <param name="kind">What is played in it; only a crow and a peep are tests of the reed alone.</param>
    /// <param name="figures">What was read.</param>
    /// <param name="tuning">What the player tunes to.</param>
    /// <returns>The test; null where nothing was read that a test could hold.</returns>
    public static Test? Of(RecordingId from, SoundKind kind, ReadingFigures figures, Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (kind is not (SoundKind.Crow or SoundKind.Peep) || figures.Said(tuning) is not { } pitch)
        {
            return null;
        }

        var (test, step) = kind == SoundKind.Crow ? (TestKind.Crow, StepOf(figures.Octaves)) : (TestKind.Peep, (int?)null);
        return Test.Of(test, step, pitch, Words(kind, figures), measuredFrom: from) is Outcome<Test>.Done(var made) ? made : null;
    }

    /// <summary>The word of the crow’s scale that its octaves and entries give; null where that can’t be told.</summary>
    /// <param name="octaves">The octaves, the low one first.</param>
    public static int? StepOf(IReadOnlyList<OctaveFigure> octaves)
    {
        ArgumentNullException.ThrowIfNull(octaves);
        var low = octaves.FirstOrDefault(one => one is { Octave: 4, Sounds: true });
        var upper = octaves.Where(one => one is { Octave: > 4, Sounds: true }).ToList();
        if (low is null || upper.Count == 0)
        {
            return low is not null ? 2 : upper.Count > 0 ? 3 : null;
        }

        // Low first has no word on the scale: it isn't “all at once”.
        return upper.All(one => one.Came is not null) && low.Came - upper.Min(one => one.Came) is { } later && later >= -JoinsAfterSeconds ? later > JoinsAfterSeconds ? 0 : 1 : null;
    }

    private static string Words(SoundKind kind, ReadingFigures figures)
    {
        var sure = Math.Max(1, Math.Round(ReadingFigures.InCents(figures.Pitch.Value!.Value, figures.Pitch.PlusMinus!.Value)));
        var cents = string.Create(CultureInfo.InvariantCulture, $"measured, within {sure:0} {(sure == 1 ? "cent" : "cents")}");
        var heard = figures.Octaves.Where(one => one.Sounds).Select(one => one.Octave switch { 4 => "low", 5 => "middle", _ => "high" }).Reverse().ToList();
        return kind != SoundKind.Crow || heard.Count == 0 ? cents : $"{cents}; octaves: {string.Join(", ", heard)}";
    }
}
