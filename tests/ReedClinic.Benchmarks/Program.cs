using System.Diagnostics;
using System.Globalization;
using ReedClinic.Benchmarks;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;

if (args is ["history", var connection, var students])
{
    await HistoryRun.MeasureAsync(connection, int.Parse(students, CultureInfo.InvariantCulture)).ConfigureAwait(false);
    return 0;
}

if (args is ["backups", var engine, var from, var to, var folder, var reeds, var megabytes])
{
    await BackupRun.MeasureAsync(engine, from, to, folder, int.Parse(reeds, CultureInfo.InvariantCulture), int.Parse(megabytes, CultureInfo.InvariantCulture)).ConfigureAwait(false);
    return 0;
}

// Prints medians; nothing is asserted, since a busy machine is slow. dotnet run -c Release --project tests/ReedClinic.Benchmarks
if (args is ["sound", ..])
{
    return await SoundBenchmark.RunAsync(args[1..]).ConfigureAwait(false);
}

// … -- phrases tests/ReedClinic.Domain.Tests/Bench/Phrases/*.txt
if (args is ["phrases", ..])
{
    return await PhraseBenchmark.RunAsync(args[1..]).ConfigureAwait(false);
}

const int Rounds = 41;
var catalogue = Catalogue.Shipped;

// The signs with the most causes: the hardest case, since each of their links costs a walk over the table.
var busiest = catalogue.Signs.OrderByDescending(sign => catalogue.LinksOf(sign.Id).Count()).ThenBy(sign => sign.Id.Value, StringComparer.Ordinal).ToList();
foreach (var present in (int[])[4, 8, 12, 14, 20])
{
    List<Sighting> seen = [.. busiest.Take(present).Select(sign => new Sighting(sign.Id, true)), .. busiest.Skip(40).Take(30).Select(sign => new Sighting(sign.Id, false))];
    await MedianAsync($"likely causes, {present} signs present, 30 absent", () => LikelyCauses.Of(catalogue, seen).Causes[0].Chance).ConfigureAwait(false);
    await MedianAsync($"likely causes and why for the first three, {present} present", () =>
    {
        var found = LikelyCauses.Of(catalogue, seen);
        return found.Causes.Take(3).Sum(one => found.Explain(one.Cause.Id)!.Reasons.Count);
    }).ConfigureAwait(false);
}

return 0;

static async Task MedianAsync(string what, Func<double> work)
{
    var times = new List<double>();
    for (var round = 0; round < Rounds + 10; round++)
    {
        var began = Stopwatch.GetTimestamp();
        work();
        times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
    }

    var sorted = times.Skip(10).Order().ToList();
    await Console.Out.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{sorted[Rounds / 2],9:0.00} ms  {what} (slowest tenth from {sorted[Rounds * 9 / 10]:0.00})")).ConfigureAwait(false);
}
