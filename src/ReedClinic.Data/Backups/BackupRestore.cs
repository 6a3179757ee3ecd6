using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;

namespace ReedClinic.Data.Backups;

/// <summary>
/// Puts a back-up in the place of what is there, while nobody else uses it. Before anything is touched the whole back-up is read;
/// what was there is kept beside it; and whoever was erased since is erased again. For whoever runs the machine; no page does this.
/// </summary>
public sealed class BackupRestore(
    IDbContextFactory<ClinicDb> databases, MediaFolder media, BackupSettings settings, ClinicSchema schema, ErasedPeople erased, TimeProvider time)
{
    /// <summary>The word that asks for a back-up that is older than one may become.</summary>
    public const string Although = "although-old";

    /// <summary>Restores.</summary>
    /// <param name="folder">The back-up's folder.</param>
    /// <param name="alsoErased">A list of erased people that was kept elsewhere; null for none.</param>
    /// <param name="although">True to restore one that is older than a back-up may become.</param>
    /// <param name="tell">Hears how far it is, in words.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>What was done.</returns>
    /// <exception cref="BackupTroubleException">It was refused or failed; what was there is there.</exception>
    public async Task<RestoreDone> RestoreAsync(string folder, string? alsoErased, bool although, Action<string> tell, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(tell);
        var about = await SoundAsync(folder, tell, ct).ConfigureAwait(false);
        var (connection, postgres) = await PlaceAsync(about, although, ct).ConfigureAwait(false);
        var gone = await ErasedSinceAsync(folder, alsoErased, connection, postgres, tell, ct).ConfigureAwait(false);
        var suffix = Unused(connection, postgres);
        var kept = new List<string>();
        var files = Files(folder, about);
        await ArrivingFiles.RememberAsync(media.Path, gone, ct).ConfigureAwait(false);
        try
        {
            foreach (var (from, place) in files)
            {
                tell($"Bringing {Path.GetFileName(from)} …");
                await place.BringAsync(from, ct).ConfigureAwait(false);
            }

            tell("Putting the records in their place …");
            await PutRecordsAsync(folder, about, connection, postgres, suffix, kept, tell, ct).ConfigureAwait(false);
        }
        catch
        {
            files.ForEach(pair => pair.Place.Forget()); // the records are as they were
            ArrivingFiles.ForgetErased(media.Path);
            throw;
        }

        kept.AddRange(files.Select(pair => pair.Place.TakePlace(suffix)).OfType<string>());
        tell("Bringing the schema up to date, and erasing again …");
        var rows = await CountAsync(connection, postgres, ct).ConfigureAwait(false);
        var different = postgres == (about.Engine == ClinicEngine.Postgres) ? BackupCheck.Differences(about.Rows, rows).ToList() : [];
        await schema.MigrateAsync(ct).ConfigureAwait(false);
        var again = await erased.EraseAgainAsync(gone, ct).ConfigureAwait(false);
        files.ForEach(pair => pair.Place.Forget());
        ArrivingFiles.ForgetErased(media.Path);
        TellOfKeys(folder, tell);
        return new RestoreDone(about, rows.Values.Sum(), gone.Count, again, kept, different);
    }

    private void TellOfKeys(string folder, Action<string> tell)
    {
        if (settings.KeysFolder is null && Directory.Exists(Path.Combine(folder, BackupLayout.Keys)))
        {
            tell("The back-up holds keys of a folder, and Keys:Folder names none here: they weren’t brought, so everybody has to sign in anew.");
        }
    }

    private List<(string From, ArrivingFiles Place)> Files(string folder, BackupAbout about)
    {
        List<(string, ArrivingFiles)> files = about.WithMedia ? [(Path.Combine(folder, BackupLayout.Media), new ArrivingFiles(media.Path))] : [];
        var keys = Path.Combine(folder, BackupLayout.Keys);
        if (settings.KeysFolder is { } place && Directory.Exists(keys))
        {
            files.Add((keys, new ArrivingFiles(place)));
        }

        return files;
    }

    private async Task<BackupAbout> SoundAsync(string folder, Action<string> tell, CancellationToken ct)
    {
        tell("Reading the whole back-up …");
        var (problems, about) = await new BackupCheck(settings).LookAsync(folder, ct).ConfigureAwait(false);
        return problems.Count == 0 && about is not null
            ? about
            : throw new BackupTroubleException("This back-up isn’t restored, and nothing was changed: " + string.Join(" ", problems.Take(5)) + (problems.Count > 5 ? $" And {problems.Count - 5} more." : ""));
    }

    private async Task<(string Connection, bool Postgres)> PlaceAsync(BackupAbout about, bool although, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var (connection, postgres) = (db.Database.GetConnectionString()!, db is PostgresClinicDb);
        if (!postgres && about.Engine == ClinicEngine.Postgres)
        {
            throw new BackupTroubleException("This back-up is of PostgreSQL, and the settings say SQLite. Set Database:Engine to postgres; the way from PostgreSQL to SQLite isn’t built.");
        }

        if (!although && about.MadeAt < time.GetUtcNow() - TimeSpan.FromDays(settings.KeepDays))
        {
            throw new BackupTroubleException($"This back-up is older than the {settings.KeepDays} days that one may become: people who were erased since may be on no list any more, and would be back. Nothing was changed. If it has to be, say so: restore BACKUP [ERASED] {Although}");
        }

        if (about.Schema.Length > 0 && !db.Database.GetMigrations().Any(known => NameOf(known) == NameOf(about.Schema)))
        {
            throw new BackupTroubleException($"This back-up was made by a newer build: this one doesn’t know its schema ({about.Schema}). Use that build, or a newer one.");
        }

        LetGo(connection, postgres);
        var inUse = postgres
            ? await PostgresCopy.OthersAsync(connection, ct).ConfigureAwait(false) > 0
            : !await SqliteCopy.IsMineAloneAsync(FileOf(connection), ct).ConfigureAwait(false);
        return inUse
            ? throw new BackupTroubleException("Somebody uses the database: stop the program, and whatever else is connected, and try again. Nothing was changed.")
            : (connection, postgres);
    }

    // Each engine has its own migrations, made at other seconds; the name behind the moment is the same.
    private static string NameOf(string migration) => migration[(migration.IndexOf('_', StringComparison.Ordinal) + 1)..];

    private async Task PutRecordsAsync(
        string folder, BackupAbout about, string connection, bool postgres, string suffix, List<string> kept, Action<string> tell, CancellationToken ct)
    {
        var records = BackupCheck.RecordsOf(folder, about);
        if (!postgres)
        {
            var file = FileOf(connection);
            if (File.Exists(file))
            {
                kept.Add(file + suffix);
            }

            BackupLayout.MakeOwn(Path.GetDirectoryName(file)!);
            LetGo(connection, postgres);
            await SqliteCopy.PutAsync(records, file, File.Exists(file) ? file + suffix : null, ct).ConfigureAwait(false);
        }
        else if (about.Engine == ClinicEngine.Postgres)
        {
            LetGo(connection, postgres);
            await PostgresCopy.PutAsync(records, connection, new PostgresTools(settings.ToolsFolder), ct).ConfigureAwait(false);
            LetGo(connection, postgres);
        }
        else
        {
            await schema.MigrateAsync(ct).ConfigureAwait(false);
            await new RowsMove(databases).MoveAsync(records, tell, ct).ConfigureAwait(false);
        }
    }

    private async Task<List<Guid>> ErasedSinceAsync(string folder, string? alsoErased, string connection, bool postgres, Action<string> tell, CancellationToken ct)
    {
        var lists = BackupLayout.In(Path.GetDirectoryName(Path.GetFullPath(folder))!).Concat(BackupLayout.In(settings.Folder))
            .Concat(BackupLayout.In(Path.Combine(settings.Folder, BackupMaker.BeforeMigrations))).Select(made => Path.Combine(made.Folder, BackupLayout.Erased))
            .Append(Path.Combine(folder, BackupLayout.Erased)).Append(ArrivingFiles.ErasedIn(media.Path)).Where(File.Exists).ToList();
        if (alsoErased is not null)
        {
            lists.Add(File.Exists(alsoErased) ? alsoErased : throw new BackupTroubleException($"There is no list of erased people at '{alsoErased}'. Nothing was changed."));
        }

        var people = new HashSet<Guid>();
        foreach (var list in lists.Distinct())
        {
            foreach (var line in (await File.ReadAllLinesAsync(list, ct).ConfigureAwait(false)).Select(line => line.Trim()).Where(line => line.Length > 0))
            {
                people.Add(Guid.TryParse(line, out var id) ? id : throw new BackupTroubleException($"'{list}' is no list of erased people, as erased-people prints it. Nothing was changed."));
            }
        }

        try
        {
            people.UnionWith(await LiveAsync(connection, postgres, ct).ConfigureAwait(false));
        }
        catch (SqliteException trouble) when (trouble.SqliteErrorCode is 11 or 26)
        {
            // Which may be why somebody restores.
            tell("The records that are there can’t be read. Whoever was erased since the newest list of erased people may be back: erase them again.");
        }

        return [.. people];
    }

    private static async Task<IReadOnlyList<Guid>> LiveAsync(string connection, bool postgres, CancellationToken ct) => postgres
        ? (await PostgresCopy.LookAsync(connection, ct).ConfigureAwait(false)).Erased
        : File.Exists(FileOf(connection)) ? (await SqliteCopy.LookAsync(FileOf(connection), ct).ConfigureAwait(false)).Erased : [];

    private static async Task<IReadOnlyDictionary<string, long>> CountAsync(string connection, bool postgres, CancellationToken ct) =>
        (postgres ? await PostgresCopy.LookAsync(connection, ct).ConfigureAwait(false) : await SqliteCopy.LookAsync(FileOf(connection), ct).ConfigureAwait(false)).Rows;

    // What this process itself keeps open is in nobody's way.
    private static void LetGo(string connection, bool postgres)
    {
        if (postgres)
        {
            using var pooled = new NpgsqlConnection(connection);
            NpgsqlConnection.ClearPool(pooled);
        }
        else
        {
            using var pooled = new SqliteConnection(connection);
            SqliteConnection.ClearPool(pooled);
        }
    }

    private string Unused(string connection, bool postgres)
    {
        var first = BackupLayout.Before + BackupLayout.NameAt(time.GetUtcNow());
        return Enumerable.Range(1, 100).Select(n => n == 1 ? first : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{first}-{n}"))
            .First(name => !Directory.Exists(Path.Combine(media.Path, name)) && (postgres || !File.Exists(FileOf(connection) + name)));
    }

    private static string FileOf(string connection) => new SqliteConnectionStringBuilder(connection).DataSource;
}

/// <summary>What a restore did.</summary>
/// <param name="About">What the back-up says of itself.</param>
/// <param name="Rows">How many rows there were, before anybody was erased again.</param>
/// <param name="ErasedBefore">How many people stood on the lists of the erased.</param>
/// <param name="ErasedAgain">How many of them were in the back-up.</param>
/// <param name="Kept">Where that lies which was there before.</param>
/// <param name="Different">Where the rows that are there aren't as many as the back-up says; empty when they are.</param>
public sealed record RestoreDone(BackupAbout About, long Rows, int ErasedBefore, int ErasedAgain, IReadOnlyList<string> Kept, IReadOnlyList<string> Different);
