using System.Diagnostics;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.People;
using ReedClinic.Tests.History;

namespace ReedClinic.Benchmarks;

/// <summary>Times what one student’s page of reeds over time costs among many students. tests/history.sh runs it.</summary>
internal static class HistoryRun
{
    private const int Rounds = 500;
    private const int Warming = 60;

    private static readonly Actor Teacher = new(new AccountId(Guid.Parse("000000fe-0000-7000-8000-000000000001")), null, IsTeacher: true, IsOwner: false);

    /// <summary>Fills an empty database and prints one line of the table.</summary>
    /// <param name="connection">The database.</param>
    /// <param name="students">How many students.</param>
    public static async Task MeasureAsync(string connection, int students)
    {
        var services = new ServiceCollection().AddLogging();
        services.AddClinicData(
            new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
            {
                ["Database:Engine"] = "postgres",
                ["ConnectionStrings:Clinic"] = connection,
                ["Media:Folder"] = Path.GetTempPath(),
            }).Build(),
            Path.GetTempPath());
        var provider = services.BuildServiceProvider();
        await using var _ = provider.ConfigureAwait(false);
        await provider.GetRequiredService<ClinicSchema>().MigrateAsync(default).ConfigureAwait(false);
        var databases = provider.GetRequiredService<IDbContextFactory<ClinicDb>>();
        long findings;
        var db = await databases.CreateDbContextAsync().ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            await new SeededHistory(db).FillAsync(students, default).ConfigureAwait(false);
            findings = await db.Set<Domain.Recurrence.SheetRow>().LongCountAsync().ConfigureAwait(false);
        }

        var began = Stopwatch.GetTimestamp();
        await new StudioRatesCaretaker(databases, TimeProvider.System).RollUpAsync(default).ConfigureAwait(false);
        var rollUp = Stopwatch.GetElapsedTime(began);
        var worked = Environment.CpuUsage.TotalTime;
        var page = await TimesAsync(students, number => new OverTimeBook(databases).OfAsync(Teacher, SeededHistory.Student(number), default)).ConfigureAwait(false);
        worked = Environment.CpuUsage.TotalTime - worked;
        var evidence = await TimesAsync(students, async number =>
            (await new CommonThreadBook(databases, TimeProvider.System).FindAsync(Teacher, SeededHistory.Code(number), default).ConfigureAwait(false))?.Lessons).ConfigureAwait(false);
        await Console.Out.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"| {students:N0} | {findings:N0} | {At(page, 0.5)} | {At(page, 0.95)} | {worked.TotalMilliseconds / (Rounds + Warming):0.0} | {At(evidence, 0.5)} | {At(evidence, 0.95)} | {rollUp.TotalSeconds:0.0} |")).ConfigureAwait(false);
    }

    private static async Task<List<double>> TimesAsync<T>(int students, Func<int, Task<T?>> read)
        where T : class
    {
        var random = new Random(7);
        List<double> times = [];
        for (var round = 0; round < Rounds + Warming; round++)
        {
            var number = random.Next(1, students + 1);
            var began = Stopwatch.GetTimestamp();
            _ = await read(number).ConfigureAwait(false) ?? throw new InvalidOperationException($"Student {number} isn’t there.");
            times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
        }

        return [.. times.Skip(Warming).Order()];
    }

    private static string At(List<double> sorted, double share) =>
        sorted[(int)Math.Ceiling(share * sorted.Count) - 1].ToString("0.0", CultureInfo.InvariantCulture);
}
