using ReedClinic.Data.Engine;

namespace ReedClinic.Data.Backups;

/// <summary>Says whether a back-up is what was written. It changes nothing and asks no database.</summary>
public sealed class BackupCheck(BackupSettings settings)
{
    /// <summary>Reads every byte of a back-up.</summary>
    /// <param name="folder">Its folder.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>What is wrong with it, a sentence each: empty when it is sound. And what it says of itself, where it can be read.</returns>
    public async Task<(IReadOnlyList<string> Problems, BackupAbout? About)> LookAsync(string folder, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(folder);
        if (!Directory.Exists(folder))
        {
            return ([$"There is no folder '{folder}'."], null);
        }

        if (Path.TrimEndingDirectorySeparator(folder).EndsWith(BackupLayout.Unfinished, StringComparison.Ordinal))
        {
            return (["This back-up was never finished. Take another one."], null);
        }

        try
        {
            var problems = (await BackupSums.CheckAsync(folder, ct).ConfigureAwait(false)).ToList();
            var about = await BackupAbout.ReadAsync(folder, ct).ConfigureAwait(false);
            if (problems.Count == 0)
            {
                problems.AddRange(await OfRecordsAsync(folder, about, ct).ConfigureAwait(false));
            }

            return (problems, about);
        }
        catch (BackupTroubleException trouble)
        {
            return ([trouble.Message], null);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return ([$"It can’t be read: {trouble.Message}"], null);
        }
    }

    /// <summary>The file of the records in a back-up.</summary>
    internal static string RecordsOf(string folder, BackupAbout about) =>
        Path.Combine(folder, about.Engine == ClinicEngine.Postgres ? BackupLayout.Postgres : BackupLayout.Sqlite);

    private async Task<IEnumerable<string>> OfRecordsAsync(string folder, BackupAbout about, CancellationToken ct)
    {
        var records = RecordsOf(folder, about);
        if (!File.Exists(records))
        {
            return [$"{Path.GetFileName(records)} is missing."];
        }

        if (about.Engine == ClinicEngine.Postgres)
        {
            return (await PostgresCopy.FaultsAsync(records, new PostgresTools(settings.ToolsFolder), ct).ConfigureAwait(false))
                .Select(fault => $"{BackupLayout.Postgres} can’t be read as PostgreSQL’s archive: {fault}");
        }

        var faults = await SqliteCopy.FaultsAsync(records, ct).ConfigureAwait(false);
        if (faults.Count > 0)
        {
            return faults.Select(fault => $"{BackupLayout.Sqlite} isn’t sound: {fault}");
        }

        var there = await SqliteCopy.LookAsync(records, ct).ConfigureAwait(false);
        return Differences(about.Rows, there.Rows);
    }

    /// <summary>Where two counts of rows differ, a sentence each.</summary>
    internal static IEnumerable<string> Differences(IReadOnlyDictionary<string, long> expected, IReadOnlyDictionary<string, long> there) =>
        from table in expected.Keys.Union(there.Keys).Order(StringComparer.Ordinal)
        let counts = (Expected: expected.GetValueOrDefault(table), There: there.GetValueOrDefault(table))
        where counts.Expected != counts.There
        select $"{table} has {counts.There} rows instead of {counts.Expected}.";
}
