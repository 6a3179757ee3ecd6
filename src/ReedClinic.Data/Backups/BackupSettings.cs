using Microsoft.Extensions.Configuration;
using ReedClinic.Data.Privacy;

namespace ReedClinic.Data.Backups;

/// <summary>Where back-ups lie, and what belongs to one.</summary>
/// <param name="Folder">Where they lie.</param>
/// <param name="KeysFolder">Where the keys lie that sign cookies and forms; null when that is in the records.</param>
/// <param name="ToolsFolder">Where PostgreSQL's own programs lie; null to look for them as a shell does.</param>
/// <param name="BeforeMigrations">Whether one is made before the schema is changed.</param>
/// <param name="KeepDays">How many days one is kept.</param>
public sealed record BackupSettings(string Folder, string? KeysFolder, string? ToolsFolder, bool BeforeMigrations, int KeepDays)
{
    /// <summary>The setting that names the folder.</summary>
    public const string FolderKey = "Backups:Folder";

    /// <summary>The setting that names the folder of PostgreSQL's programs.</summary>
    public const string ToolsKey = "Backups:PostgresTools";

    /// <summary>The setting that leaves the one before a migration out.</summary>
    public const string BeforeMigrationsKey = "Backups:BeforeMigrations";

    /// <summary>Reads them. Without a folder that is named, back-ups lie beside SQLite's file, else under the content root.</summary>
    /// <param name="configuration">The host's settings.</param>
    /// <param name="contentRoot">Where a relative path begins.</param>
    public static BackupSettings Of(IConfiguration configuration, string contentRoot)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        var named = configuration[FolderKey];
        if (string.IsNullOrEmpty(named))
        {
            var postgres = string.Equals(configuration["Database:Engine"], nameof(Engine.ClinicEngine.Postgres), StringComparison.OrdinalIgnoreCase);
            named = postgres ? "App_Data/backups" : Path.ChangeExtension(ClinicDataSetup.SqliteFile(configuration, contentRoot), null) + "-backups";
        }

        return new(
            Path.GetFullPath(named, contentRoot),
            configuration["Keys:Folder"] is { Length: > 0 } keys ? Path.GetFullPath(keys) : null,
            configuration[ToolsKey] is { Length: > 0 } tools ? Path.GetFullPath(tools, contentRoot) : null,
            configuration.GetValue(BeforeMigrationsKey, true),
            configuration.GetValue(PrivacySettings.BackupDaysKey, PrivacySettings.UsualBackupDays));
    }
}
