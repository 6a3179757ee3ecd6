using MathNet.Numerics.Distributions;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

/// <summary>Batches drawn at random, from a seed.</summary>
internal static class Drawn
{
    /// <summary>How many histories a simulation draws: a quick count, or more when asked for.</summary>
    public static int Rounds(int quick) =>
        int.TryParse(Environment.GetEnvironmentVariable("REEDCLINIC_SIMULATIONS"), out var times) ? quick * Math.Max(1, times) : quick;

    /// <summary>One batch: its own share is drawn round the student’s, so that its reeds are alike.</summary>
    public static BatchCount Batch(Random random, int looked, double share, double likeness)
    {
        var own = likeness <= 0 ? share
            : Beta.Sample(random, share * (1 - likeness) / likeness, (1 - share) * (1 - likeness) / likeness);
        return new BatchCount(Enumerable.Range(0, looked).Count(_ => random.NextDouble() < own), looked);
    }

    /// <summary>Two to eight batches of one to twelve reeds.</summary>
    public static List<BatchCount> Batches(Random random, double share, double likeness) =>
        [.. Enumerable.Range(0, random.Next(2, 9)).Select(_ => Batch(random, random.Next(1, 13), share, likeness))];

    public static void Print(string line) => TestContext.Current.TestOutputHelper?.WriteLine(line);
}
