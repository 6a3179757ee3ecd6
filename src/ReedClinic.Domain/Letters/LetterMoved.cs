using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>Whether a test came out better, told by one rule in the sentences and in the table of a letter.</summary>
internal static class LetterMoved
{
    // So many cents nearer or further are told of a crow: this program’s own measure, and more than a crow wavers by itself.
    private const double Told = 10;

    /// <summary>How a test moved, by its word and, of a crow, by how far it stands from what it is compared with.</summary>
    /// <param name="move">The test, as it was first and as it was last.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="target">What a crow is compared with.</param>
    /// <returns>Not to be compared where it wasn’t tried again after the last work: then nobody knows how it is now.</returns>
    internal static Movement Of(TestMove move, BenchLog log, CrowTarget target)
    {
        if (move.Now is not { } now || LetterTried.IsBeforeWork(log, now))
        {
            return Movement.NotComparable;
        }

        return (move.Movement, InPitch(move, target)) switch
        {
            (var word, Movement.NotComparable or Movement.Same) when word != Movement.NotComparable => word,
            (Movement.NotComparable or Movement.Same, var pitch) => pitch,
            (var word, var pitch) => word == pitch ? word : Movement.Same,
        };
    }

    /// <summary>Whether a crow gained by its pitch alone: its word is what it was.</summary>
    /// <param name="move">The test.</param>
    internal static bool IsByPitch(TestMove move) => move.Movement is Movement.Same or Movement.NotComparable;

    private static Movement InPitch(TestMove move, CrowTarget target) =>
        move is not { TestKind: TestKind.Crow, Arrival.Now.Pitch: { } before, Now.Now.Pitch: { } after } ? Movement.NotComparable
        : (Away(after, target) - Away(before, target)) switch
        {
            <= -Told => Movement.Nearer,
            >= Told => Movement.Further,
            _ => Movement.Same,
        };

    private static double Away(SaidPitch pitch, CrowTarget target) => Math.Abs(pitch.Against(target).Middle.Value);
}
