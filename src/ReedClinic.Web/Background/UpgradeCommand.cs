using ReedClinic.Data.Backups;
using ReedClinic.Data.Engine;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary>
/// <c>ReedClinic.Web upgrade</c> brings the records to this build's schema and opens no studio; records that are there are
/// backed up before. So the machine that serves pages needs none of PostgreSQL's programs, and several can be started at once.
/// </summary>
public static class UpgradeCommand
{
    /// <summary>The word that asks for it.</summary>
    public const string Name = "upgrade";

    /// <summary>Does it.</summary>
    /// <param name="args">Settings.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns>0 when the records have this build's schema, 1 when nothing was changed.</returns>
    public static async Task<int> RunAsync(string[] args, Announcement announcement)
    {
        ArgumentNullException.ThrowIfNull(announcement);
        var app = CommandHost.Build(args);
        await using var _ = app.ConfigureAwait(false);
        var maker = app.Services.GetRequiredService<BackupMaker>();
        try
        {
            await app.Services.GetRequiredService<ClinicSchema>()
                .MigrateAsync(CancellationToken.None, stop => maker.BeforeMigrationAsync(announcement.Say, stop)).ConfigureAwait(false);
        }
        catch (BackupTroubleException trouble)
        {
            announcement.Say(trouble.Message);
            return 1;
        }

        announcement.Say("The records have the schema of this version.");
        return 0;
    }
}
