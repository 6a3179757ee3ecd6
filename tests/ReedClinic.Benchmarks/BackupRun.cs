using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using ReedClinic.Tests.History;

namespace ReedClinic.Benchmarks;

/// <summary>Times backing up, checking and restoring a large studio. tests/backups.sh runs it.</summary>
internal static class BackupRun
{
    private const int ReedsOfAStudent = 4;

    /// <summary>Fills an empty database and a folder, backs both up, and restores them into others; prints one line of the table.</summary>
    /// <param name="engine">Which engine.</param>
    /// <param name="from">The database that is filled.</param>
    /// <param name="to">The database that is restored to.</param>
    /// <param name="folder">Where files go.</param>
    /// <param name="reeds">How many reeds.</param>
    /// <param name="megabytes">How much sound there is.</param>
    public static async Task MeasureAsync(string engine, string from, string to, string folder, int reeds, int megabytes)
    {
        var (source, target) = (Studio(engine, from, Path.Combine(folder, "from")), Studio(engine, to, Path.Combine(folder, "to")));
        await using var _ = source.ConfigureAwait(false);
        await using var __ = target.ConfigureAwait(false);
        await source.GetRequiredService<ClinicSchema>().MigrateAsync(default).ConfigureAwait(false);
        var db = await source.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync().ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            await new SeededHistory(db).FillAsync((reeds / ReedsOfAStudent) - 1, default).ConfigureAwait(false);
            await FillMediaAsync(db, source.GetRequiredService<MediaFolder>(), reeds, megabytes).ConfigureAwait(false);
        }

        var began = Stopwatch.GetTimestamp();
        var (backup, about) = await source.GetRequiredService<BackupMaker>().MakeAsync(Path.Combine(folder, "copies"), withMedia: true, _ => { }, default).ConfigureAwait(false);
        var made = Stopwatch.GetElapsedTime(began);
        began = Stopwatch.GetTimestamp();
        var (problems, _) = await source.GetRequiredService<BackupCheck>().LookAsync(backup, default).ConfigureAwait(false);
        var read = Stopwatch.GetElapsedTime(began);
        began = Stopwatch.GetTimestamp();
        var done = await target.GetRequiredService<BackupRestore>().RestoreAsync(backup, null, although: false, _ => { }, default).ConfigureAwait(false);
        var restored = Stopwatch.GetElapsedTime(began);
        if (problems.Count + done.Different.Count + about.Missing.Count > 0)
        {
            throw new InvalidOperationException(string.Join(" ", [.. problems, .. done.Different, .. about.Missing]));
        }

        await Console.Out.WriteLineAsync(string.Create(
            CultureInfo.InvariantCulture,
            $"| {engine} | {about.Rows["Reeds"]:N0} | {about.Rows.Values.Sum():N0} | {about.Rows["Recordings"]:N0} files, {megabytes:N0} MB | {made.TotalSeconds:0.0} | {read.TotalSeconds:0.0} | {restored.TotalSeconds:0.0} |")).ConfigureAwait(false);
    }

    private static ServiceProvider Studio(string engine, string connection, string folder)
    {
        var services = new ServiceCollection().AddLogging();
        services.AddClinicData(
            new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
            {
                ["Database:Engine"] = engine,
                ["ConnectionStrings:Clinic"] = connection,
                ["Media:Folder"] = folder,
            }).Build(),
            folder);
        return services.BuildServiceProvider();
    }

    // One file for each reed, of bytes that can't be pressed together.
    private static async Task FillMediaAsync(ClinicDb db, MediaFolder media, int reeds, int megabytes)
    {
        media.Prepare();
        var random = new Random(9);
        var bytes = new byte[megabytes * 1024L * 1024L / reeds];
        var all = await db.Set<Domain.Intake.Reed>().Select(reed => reed.Id).ToListAsync().ConfigureAwait(false);
        foreach (var some in all.Take(reeds).Chunk(500))
        {
            foreach (var reed in some)
            {
                random.NextBytes(bytes);
                var file = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
                Directory.CreateDirectory(Path.GetDirectoryName(media.PathOf(file))!);
                await File.WriteAllBytesAsync(media.PathOf(file), bytes).ConfigureAwait(false);
                Add(db, reed, file, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes.Length);
            }

            await db.SaveChangesAsync().ConfigureAwait(false);
            db.ChangeTracker.Clear();
        }
    }

    private static void Add(ClinicDb db, ReedId reed, string file, string sum, int bytes)
    {
        var now = TimeProvider.System.GetUtcNow();
        var row = db.Entry((Recording)Activator.CreateInstance(typeof(Recording), nonPublic: true)!);
        foreach (var (name, value) in new Dictionary<string, object>
        {
            [nameof(Recording.Id)] = new RecordingId(Guid.CreateVersion7(now)),
            [nameof(Recording.Reed)] = reed,
            [nameof(Recording.Kind)] = RecordingKind.ArrivalSound,
            [nameof(Recording.Type)] = MediaType.Wav,
            [nameof(Recording.File)] = file,
            [nameof(Recording.Sha256)] = sum,
            [nameof(Recording.Bytes)] = bytes,
            [nameof(Recording.RecordedAt)] = now,
            [nameof(Recording.RecordedBy)] = new AccountId(Guid.CreateVersion7(now)),
        })
        {
            row.Property(name).CurrentValue = value;
        }

        row.State = EntityState.Added;
    }
}
