using System.Globalization;
using ReedClinic.Measurement.Sound.Readings;
using ReedClinic.Measurement.Tests.Sound.Synthetic;

namespace ReedClinic.Benchmarks;

/// <summary>What is read from made crows, whose truth is known: rows of a table for each strength of the breath. Seeds 1,000 and on; other ones than the tests’.</summary>
internal static class CrowBenchmark
{
    private const int Crows = 140;
    private static readonly int[][] Choices = [[4], [5], [6], [4, 5], [4, 6], [5, 6], [4, 5, 6]];

    public static async Task<int> RunAsync()
    {
        foreach (var ratio in (int[])[20, 15, 10])
        {
            await SayAsync(string.Create(CultureInfo.InvariantCulture, $"{ratio} dB"), ratio, weak: 0).ConfigureAwait(false);
            await SayAsync(string.Create(CultureInfo.InvariantCulture, $"{ratio} dB, C5 16 dB weaker than the strongest"), ratio, weak: 5).ConfigureAwait(false);
        }

        return 0;
    }

    private static async Task SayAsync(string name, int ratio, int weak)
    {
        List<double> entries = [], onsets = [];
        var wrong = 0;
        for (var seed = 1_000; seed < 1_000 + Crows; seed++)
        {
            var crow = SyntheticCrow.Make(seed, ratio, weak == 0 ? Choices[seed % Choices.Length] : [4, 5, 6], weak);
            var readings = ClipAnalyser.Analyse(crow.Samples);
            var found = readings.Partials.Where(partial => partial.IsPresent).Select(partial => partial.Octave);
            wrong += found.SequenceEqual(crow.Partials.Select(partial => partial.Octave)) ? 0 : 1;
            onsets.Add(Math.Abs((readings.BreathOnset.Value ?? 9) - crow.BreathOnset));
            entries.AddRange(crow.Partials.Where(partial => weak == 0 || partial.Octave == weak)
                .Select(partial => Math.Abs((readings.Partials.ElementAtOrDefault(partial.Octave - 4)?.Entry.Value ?? 9) - partial.Entry)));
        }

        await Console.Out.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {wrong} of {Crows} | {Of(entries, 50):0.0} | {Of(entries, 95):0.0} | {Of(entries, 100):0.0} | {Of(onsets, 50):0.0} | {Of(onsets, 95):0.0} | {Of(onsets, 100):0.0} |")).ConfigureAwait(false);
    }

    /// <summary>A percentile, in milliseconds.</summary>
    private static double Of(List<double> values, int percent) => values.Order().ElementAt(Math.Min(values.Count - 1, values.Count * percent / 100)) * 1000;
}
