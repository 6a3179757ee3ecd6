using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Benchmarks;

/// <summary>How long the bench line's reader takes for a phrase, beside a SHA-256 (FIPS 180-4) of 256 KiB on the same machine.</summary>
internal static class PhraseBenchmark
{
    private const int Rounds = 21;

    /// <summary>Reads the phrases of files of labelled ones, each a line that begins with “=”, on an empty log.</summary>
    /// <param name="files">The files.</param>
    public static async Task<int> RunAsync(IEnumerable<string> files)
    {
        var context = new PhraseContext(BenchLog.Empty, Tuning.Standard);
        List<string> phrases = [.. files.SelectMany(File.ReadLines).Where(line => line.StartsWith('=')).Select(line => line[1..].Trim())];
        var plain = new byte[256 * 1024];
        for (var warm = 0; warm < 3; warm++)
        {
            phrases.ForEach(phrase => PhraseReader.Read(phrase, context));
        }

        var yard = Median(() => SHA256.HashData(plain));
        var each = phrases.Select(phrase => Median(() => PhraseReader.Read(phrase, context))).Order().ToList();
        await Console.Out.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"{each.Count} phrases, each the median of {Rounds} readings: {each.Average():0} µs in the mean ({each.Average() / yard:0.00} of the yardstick's {yard:0}), {each[each.Count / 2]:0} in the middle, 99 of 100 within {each[each.Count * 99 / 100]:0}, the longest {each[^1]:0}")).ConfigureAwait(false);
        return 0;
    }

    private static double Median(Action work)
    {
        var times = new double[Rounds];
        for (var round = 0; round < Rounds; round++)
        {
            var began = Stopwatch.GetTimestamp();
            work();
            times[round] = Stopwatch.GetElapsedTime(began).TotalMicroseconds;
        }

        return times.Order().ElementAt(Rounds / 2);
    }
}
