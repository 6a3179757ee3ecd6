using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Recordings;

namespace ReedClinic.Data.Backups;

/// <summary>Makes back-ups while the program runs: the records of one moment, and the files they name. For whoever runs the machine; no page does this.</summary>
public sealed class BackupMaker(IDbContextFactory<ClinicDb> databases, MediaFolder media, BackupSettings settings, TimeProvider time)
{
    /// <summary>The folder, among the back-ups, of those that were made before a migration.</summary>
    public const string BeforeMigrations = "before-migrations";

    private const int Tries = 3;
    private const int KeptBeforeMigrations = 3;

    /// <summary>Makes one in a new folder, which only gets its name when everything is in it.</summary>
    /// <param name="into">The folder that it is put into; null for the one of the settings.</param>
    /// <param name="withMedia">False to leave sounds and photographs out.</param>
    /// <param name="tell">Hears how far it is, in words.</param>
    /// <param name="ct">Stops it; nothing is left then.</param>
    /// <returns>Its folder, and what it says of itself.</returns>
    /// <exception cref="BackupTroubleException">It can't be made.</exception>
    public async Task<(string Folder, BackupAbout About)> MakeAsync(string? into, bool withMedia, Action<string> tell, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(tell);
        var parent = Path.GetFullPath(into ?? settings.Folder);
        if (IsWithin(parent, media.Path))
        {
            throw new BackupTroubleException($"The back-up would lie in the folder of sounds and photographs, which it copies. Name another folder than '{parent}'.");
        }

        string? work = null;
        try
        {
            BackupLayout.MakeOwn(parent);
            var name = Unused(parent);
            work = name + BackupLayout.Unfinished;
            BackupLayout.MakeOwn(work);
            var about = await FillAsync(work, withMedia, tell, ct).ConfigureAwait(false);
            Directory.Move(work, name);
            return (name, about);
        }
        catch (SqliteException trouble) when (trouble.SqliteErrorCode == 14)
        {
            throw new BackupTroubleException("There is no database where ConnectionStrings:Clinic says, so nothing was backed up. Look at the folder that the command is run in.", trouble);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new BackupTroubleException($"The back-up can’t be written to '{parent}': {trouble.Message}", trouble);
        }
        finally
        {
            if (work is not null && Directory.Exists(work))
            {
                Directory.Delete(work, recursive: true);
            }
        }
    }

    /// <summary>Makes one of the records before their schema changes, and keeps the last few of these. Nothing, where the settings leave it out.</summary>
    /// <param name="tell">Hears how far it is, in words.</param>
    /// <param name="ct">Stops it.</param>
    /// <exception cref="BackupTroubleException">It can't be made, so the schema had better not change.</exception>
    public async Task BeforeMigrationAsync(Action<string> tell, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(tell);
        if (!settings.BeforeMigrations)
        {
            return;
        }

        var parent = Path.Combine(settings.Folder, BeforeMigrations);
        try
        {
            var (folder, _) = await MakeAsync(parent, withMedia: false, _ => { }, ct).ConfigureAwait(false);
            tell($"The records are about to get a newer schema. As they were, they lie in {folder}");
        }
        catch (BackupTroubleException trouble)
        {
            throw new BackupTroubleException($"The records need a newer schema, and the back-up before it can’t be made, so nothing was changed. {trouble.Message} ({BackupSettings.BeforeMigrationsKey}=false goes on without one.)", trouble);
        }

        // A migration that fails again and again makes a copy each time: of each schema the newest stays.
        var schemas = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (made, _) in BackupLayout.In(parent))
        {
            var schema = (await BackupAbout.TryReadAsync(made, ct).ConfigureAwait(false))?.Schema;
            if (schema is null || !schemas.Add(schema) || schemas.Count > KeptBeforeMigrations)
            {
                Directory.Delete(made, recursive: true);
            }
        }
    }

    /// <summary>
    /// Removes the back-ups that are older than they may become, but never the newest that lacks nothing; those from before a
    /// migration too, and what a restore had put aside.
    /// </summary>
    /// <param name="in">The folder they lie in; null for the one of the settings.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>What went.</returns>
    public async Task<IReadOnlyList<string>> RemoveOldAsync(string? @in, CancellationToken ct)
    {
        var before = time.GetUtcNow() - TimeSpan.FromDays(settings.KeepDays);
        var parent = Path.GetFullPath(@in ?? settings.Folder);
        var newest = await BackupAbout.NewestWholeAsync(parent, ct).ConfigureAwait(false);
        var old = BackupLayout.In(parent).Where(made => newest is not null && made.Folder != newest.Value.Folder)
            .Concat(BackupLayout.In(Path.Combine(settings.Folder, BeforeMigrations)))
            .Where(made => made.MadeAt < before && File.Exists(Path.Combine(made.Folder, BackupLayout.Sums))).Select(made => made.Folder)
            .Concat(PutAside(before)).ToList();
        foreach (var gone in old)
        {
            if (Directory.Exists(gone))
            {
                Directory.Delete(gone, recursive: true);
            }
            else
            {
                File.Delete(gone);
            }
        }

        return old;
    }

    // What a restore found in the way, by the moment in its name.
    private IEnumerable<string> PutAside(DateTimeOffset before)
    {
        using var db = databases.CreateDbContext();
        var records = db is SqliteClinicDb ? Path.GetDirectoryName(new SqliteConnectionStringBuilder(db.Database.GetConnectionString()).DataSource) : null;
        return from folder in new[] { media.Path, settings.KeysFolder, records }
               where Directory.Exists(folder)
               from entry in Directory.GetFileSystemEntries(folder, "*" + BackupLayout.Before + "*")
               let name = Path.GetFileName(entry)
               where BackupLayout.MadeAt(name[(name.IndexOf(BackupLayout.Before, StringComparison.Ordinal) + BackupLayout.Before.Length)..]) < before
               select entry;
    }

    private async Task<BackupAbout> FillAsync(string work, bool withMedia, Action<string> tell, CancellationToken ct)
    {
        var sums = new BackupSums();
        if (withMedia)
        {
            tell("Copying sounds and photographs …");
            await CopyAsync(media.All().Select(file => file.Name).Distinct(), work, sums, ct).ConfigureAwait(false);
        }

        var (at, engine, snapshot, missing) = await RecordsAsync(work, withMedia, sums, tell, ct).ConfigureAwait(false);
        if (settings.KeysFolder is { } keys && Directory.Exists(keys))
        {
            foreach (var key in Directory.EnumerateFiles(keys))
            {
                await sums.CopyAsync(key, work, $"{BackupLayout.Keys}/{Path.GetFileName(key)}", ct).ConfigureAwait(false);
            }
        }

        await File.WriteAllLinesAsync(Path.Combine(work, BackupLayout.Erased), snapshot.Erased.Select(id => id.ToString()), ct).ConfigureAwait(false);
        await sums.AddAsync(work, BackupLayout.Erased, ct).ConfigureAwait(false);
        var about = new BackupAbout(BackupAbout.ThisFormat, at, engine, snapshot.Schema, snapshot.Rows, withMedia, missing);
        await about.WriteAsync(work, ct).ConfigureAwait(false);
        await sums.AddAsync(work, BackupLayout.About, ct).ConfigureAwait(false);
        await sums.WriteAsync(work, ct).ConfigureAwait(false);
        return about;
    }

    // Files come and go while the records are copied. Those that came are copied afterwards, those that nobody names any more
    // are left out, and where one went that the records still name, the records are copied once more.
    private async Task<(DateTimeOffset At, ClinicEngine Engine, DatabaseSnapshot Snapshot, IReadOnlyList<string> Missing)> RecordsAsync(
        string work, bool withMedia, BackupSums sums, Action<string> tell, CancellationToken ct)
    {
        for (var trial = 1; ; trial++)
        {
            tell(trial == 1 ? "Copying the records …" : "Something was removed meanwhile: copying the records once more …");
            var at = time.GetUtcNow();
            var (engine, name, snapshot) = await TakeAsync(work, ct).ConfigureAwait(false);
            if (snapshot.Schema.Length == 0)
            {
                throw new BackupTroubleException("There is no studio in this database, so nothing was backed up. Look at ConnectionStrings:Clinic, and at the folder that the command is run in.");
            }

            if (!withMedia)
            {
                await sums.AddAsync(work, name, ct).ConfigureAwait(false);
                return (at, engine, snapshot, []);
            }

            await CopyAsync(snapshot.Files.Keys.Where(file => sums.Of(NameOf(file)) is null), work, sums, ct).ConfigureAwait(false);
            var missing = snapshot.Files.Where(file => sums.Of(NameOf(file.Key)) != file.Value).Select(file => file.Key).ToList();
            if (trial < Tries && missing.Any(file => sums.Of(NameOf(file)) is null))
            {
                File.Delete(Path.Combine(work, name));
                continue;
            }

            foreach (var file in media.All().Select(file => file.Name).Concat(Copied(work)).Distinct().Where(file => !snapshot.Files.ContainsKey(file)).ToList())
            {
                sums.Remove(work, NameOf(file));
            }

            await sums.AddAsync(work, name, ct).ConfigureAwait(false);
            return (at, engine, snapshot, missing);
        }
    }

    private async Task<(ClinicEngine Engine, string Name, DatabaseSnapshot Snapshot)> TakeAsync(string work, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var connection = db.Database.GetConnectionString()!;
        return db is PostgresClinicDb
            ? (ClinicEngine.Postgres, BackupLayout.Postgres, await PostgresCopy.TakeAsync(connection, Path.Combine(work, BackupLayout.Postgres), new PostgresTools(settings.ToolsFolder), ct).ConfigureAwait(false))
            : (ClinicEngine.Sqlite, BackupLayout.Sqlite, await SqliteCopy.TakeAsync(connection, Path.Combine(work, BackupLayout.Sqlite), ct).ConfigureAwait(false));
    }

    private async Task CopyAsync(IEnumerable<string> files, string work, BackupSums sums, CancellationToken ct)
    {
        foreach (var file in files)
        {
            try
            {
                if (media.Has(file))
                {
                    await sums.CopyAsync(media.PathOf(file), work, NameOf(file), ct).ConfigureAwait(false);
                }
            }
            catch (FileNotFoundException)
            {
                File.Delete(Path.Combine(work, NameOf(file))); // it went between two lines
            }
        }
    }

    private static IEnumerable<string> Copied(string work) => Directory.Exists(Path.Combine(work, BackupLayout.Media))
        ? Directory.EnumerateFiles(Path.Combine(work, BackupLayout.Media), "*", SearchOption.AllDirectories).Select(file => Path.GetFileName(file)!)
        : [];

    private static string NameOf(string file) => $"{BackupLayout.Media}/{file[..2]}/{file}";

    private string Unused(string parent)
    {
        var first = Path.Combine(parent, BackupLayout.NameAt(time.GetUtcNow()));
        return Enumerable.Range(1, 100).Select(n => n == 1 ? first : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{first}-{n}"))
            .First(name => !Directory.Exists(name) && !Directory.Exists(name + BackupLayout.Unfinished));
    }

    private static bool IsWithin(string folder, string other) => (folder + Path.DirectorySeparatorChar).StartsWith(other + Path.DirectorySeparatorChar, StringComparison.Ordinal);
}
