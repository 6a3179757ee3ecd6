using System.Data.Common;
using System.Globalization;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Engine;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary>
/// <c>ReedClinic.Web backup [FOLDER]</c> copies everything while the program runs; <c>verify [BACKUP]</c> reads such a copy from
/// end to end; <c>restore BACKUP [ERASED]</c> puts it back while the program is stopped; <c>move-to-postgres FILE</c> takes the
/// records of a SQLite file into the PostgreSQL database of the settings.
/// </summary>
public static class BackupCommands
{
    /// <summary>The word that asks for a back-up.</summary>
    public const string Backup = "backup";

    /// <summary>The word that asks for reading one.</summary>
    public const string Verify = "verify";

    /// <summary>The word that asks for the way back.</summary>
    public const string Restore = "restore";

    /// <summary>The word that asks for the other engine.</summary>
    public const string Move = "move-to-postgres";

    /// <summary>Ends so when all went well.</summary>
    public const int Well = 0;

    /// <summary>Ends so when it was refused or broke off, or a back-up isn't sound; the words say which.</summary>
    public const int NotDone = 1;

    /// <summary>Ends so when it was done and something in it wants a look: rows that differ, files that were missing.</summary>
    public const int DoneWithALook = 3;

    /// <summary>Makes one.</summary>
    /// <param name="args">The folder to put it into, or none; and settings.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns><see cref="Well"/>; <see cref="DoneWithALook"/> when it was made and the studio itself lacks files; else <see cref="NotDone"/>.</returns>
    public static Task<int> BackupAsync(string[] args, Announcement announcement) => RunAsync(args, announcement, async (app, named) =>
    {
        var maker = app.Services.GetRequiredService<BackupMaker>();
        var (folder, about) = await maker.MakeAsync(named.FirstOrDefault(), withMedia: true, announcement.Say, CancellationToken.None).ConfigureAwait(false);
        announcement.Say(string.Create(CultureInfo.InvariantCulture, $"Backed up: {about.Rows.Values.Sum()} rows and every file they name, in {folder}"));
        if (about.Missing.Count > 0)
        {
            announcement.Say(string.Create(CultureInfo.InvariantCulture, $"{about.Missing.Count} files that the records name were missing or changed in the studio itself: {string.Join(", ", about.Missing.Take(5))}"));
        }

        if (about.Missing.Count > 0)
        {
            return DoneWithALook; // older ones may have what is missing here
        }

        foreach (var old in await maker.RemoveOldAsync(named.FirstOrDefault(), CancellationToken.None).ConfigureAwait(false))
        {
            announcement.Say($"Removed, because it was older than a back-up may become: {old}");
        }

        return Well;
    });

    /// <summary>Reads one from end to end.</summary>
    /// <param name="args">Its folder, or none for the newest where the settings keep them; and settings.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns><see cref="Well"/> when it is sound, <see cref="NotDone"/> when not.</returns>
    public static Task<int> VerifyAsync(string[] args, Announcement announcement) => RunAsync(args, announcement, async (app, named) =>
    {
        var folder = named.FirstOrDefault() ?? Newest(app.Services.GetRequiredService<BackupSettings>().Folder);
        announcement.Say($"Reading {folder} …");
        var (problems, about) = await app.Services.GetRequiredService<BackupCheck>().LookAsync(folder, CancellationToken.None).ConfigureAwait(false);
        foreach (var problem in problems)
        {
            announcement.Say(problem);
        }

        announcement.Say(problems.Count == 0 && about is not null
            ? string.Create(CultureInfo.InvariantCulture, $"This back-up is sound: {about.Engine}, made {about.MadeAt:u}, {about.Rows.Values.Sum()} rows{(about.WithMedia ? "" : ", without sounds and photographs")}.")
            : "This back-up is not sound.");
        return problems.Count == 0 ? Well : NotDone;
    });

    /// <summary>Puts one back.</summary>
    /// <param name="args">Its folder, and a list of erased people or none; and settings.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns><see cref="Well"/>; <see cref="DoneWithALook"/> when it was done and isn't what the back-up says; else <see cref="NotDone"/>.</returns>
    public static Task<int> RestoreAsync(string[] args, Announcement announcement) => RunAsync(args, announcement, async (app, named) =>
    {
        var words = named.Where(word => word != BackupRestore.Although).ToArray();
        var done = await app.Services.GetRequiredService<BackupRestore>()
            .RestoreAsync(Need(words, "restore BACKUP [ERASED]"), words.ElementAtOrDefault(1), words.Length < named.Length, announcement.Say, CancellationToken.None).ConfigureAwait(false);
        return Tell(done, announcement);
    });

    /// <summary>Takes the records of a SQLite file into PostgreSQL.</summary>
    /// <param name="args">The file; and settings, which say PostgreSQL.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns><see cref="Well"/>; <see cref="DoneWithALook"/> when it was done and isn't what the back-up says; else <see cref="NotDone"/>.</returns>
    public static Task<int> MoveAsync(string[] args, Announcement announcement) => RunAsync(args, announcement, async (app, named) =>
    {
        var file = Path.GetFullPath(Need(named, "move-to-postgres FILE"));
        if (!File.Exists(file))
        {
            throw new BackupTroubleException($"There is no file '{file}'.");
        }

        if (app.Configuration["Database:Engine"] is not { } engine || !engine.Equals(nameof(ClinicEngine.Postgres), StringComparison.OrdinalIgnoreCase))
        {
            throw new BackupTroubleException("The settings don’t say PostgreSQL. Set Database:Engine to postgres, and ConnectionStrings:Clinic to an empty database.");
        }

        if (!await SqliteFile.IsUnusedAsync(file, CancellationToken.None).ConfigureAwait(false))
        {
            throw new BackupTroubleException("Somebody uses this file: stop the program first, or what is written meanwhile stays behind. Nothing was changed.");
        }

        var from = CommandHost.Build([$"--Database:Engine={ClinicEngine.Sqlite}", $"--ConnectionStrings:Clinic={SqliteFile.Connection(file)}", .. Without(args, "Database:Engine", "ConnectionStrings:Clinic")]);
        await using var _ = from.ConfigureAwait(false);
        var (folder, about) = await from.Services.GetRequiredService<BackupMaker>().MakeAsync(app.Services.GetRequiredService<BackupSettings>().Folder, withMedia: true, announcement.Say, CancellationToken.None).ConfigureAwait(false);
        announcement.Say($"As they were, the records lie in {folder}");
        var told = Tell(await app.Services.GetRequiredService<BackupRestore>().RestoreAsync(folder, null, although: false, announcement.Say, CancellationToken.None).ConfigureAwait(false), announcement);
        return about.Missing.Count == 0 ? told : DoneWithALook;
    });

    private static int Tell(RestoreDone done, Announcement announcement)
    {
        announcement.Say(string.Create(CultureInfo.InvariantCulture, $"Restored: {done.Rows} rows, as of {done.About.MadeAt:u}."));
        if (done.ErasedBefore > 0)
        {
            announcement.Say(string.Create(CultureInfo.InvariantCulture, $"Of {done.ErasedBefore} who had been erased, {done.ErasedAgain} were in the back-up and are erased again."));
        }

        foreach (var kept in done.Kept)
        {
            announcement.Say($"What was there before lies in {kept}; remove it once you are content.");
        }

        foreach (var different in done.Different)
        {
            announcement.Say(different);
        }

        if (done.Different.Count > 0)
        {
            announcement.Say("It was restored, and isn’t what the back-up says of itself. Look at what is there before anybody is let in, and try another back-up.");
        }

        return done.Different.Count == 0 ? Well : DoneWithALook;
    }

    private static async Task<int> RunAsync(string[] args, Announcement announcement, Func<WebApplication, string[], Task<int>> run)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(announcement);
        if (args.FirstOrDefault(arg => arg.StartsWith('-') && !arg.Contains('=', StringComparison.Ordinal)) is { } torn)
        {
            announcement.Say($"'{torn}' has no value: write a setting as {torn}=VALUE, in one word.");
            return NotDone;
        }

        var app = CommandHost.Build([.. args.Where(arg => arg.StartsWith('-'))]);
        await using var _ = app.ConfigureAwait(false);
        try
        {
            return await run(app, [.. args.Where(arg => !arg.StartsWith('-'))]).ConfigureAwait(false);
        }
        catch (BackupTroubleException trouble)
        {
            announcement.Say(trouble.Message);
            return NotDone;
        }
        catch (Exception trouble) when (trouble is DbException or IOException or UnauthorizedAccessException)
        {
            announcement.Say($"It broke off: {trouble.Message} Look whether the database is there and the disk has room, and run it again.");
            return NotDone;
        }
    }

    private static string Newest(string parent) => BackupLayout.In(parent) is [var newest, ..]
        ? newest.Folder
        : throw new BackupTroubleException($"There is no back-up in '{parent}'. Make one, or name another place: verify BACKUP");

    private static string Need(string[] named, string form) =>
        named.FirstOrDefault() ?? throw new BackupTroubleException($"Something is missing: {form}");

    private static IEnumerable<string> Without(string[] args, params string[] settings) =>
        args.Where(arg => arg.StartsWith('-') && !settings.Any(setting => arg.StartsWith($"--{setting}=", StringComparison.OrdinalIgnoreCase)));
}
