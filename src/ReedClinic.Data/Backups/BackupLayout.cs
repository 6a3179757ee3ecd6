using System.Globalization;

namespace ReedClinic.Data.Backups;

/// <summary>What a back-up looks like on the disk: a folder of its own, with the records, the files and the sums over all of them.</summary>
public static class BackupLayout
{
    /// <summary>What the back-up says of itself.</summary>
    public const string About = "about.json";

    /// <summary>One line for each other file, as <c>sha256sum --check</c> reads it.</summary>
    public const string Sums = "SHA256SUMS";

    /// <summary>Who had been erased by then, as <c>erased-people</c> prints it.</summary>
    public const string Erased = "erased-people.txt";

    /// <summary>The records, when they lie in SQLite.</summary>
    public const string Sqlite = "database.db";

    /// <summary>The records, when they lie in PostgreSQL: its own archive, which <c>pg_restore</c> reads.</summary>
    public const string Postgres = "database.dump";

    /// <summary>The folder of sounds and photographs.</summary>
    public const string Media = "media";

    /// <summary>The folder of the keys that sign cookies and forms; only where they don't lie in the records.</summary>
    public const string Keys = "keys";

    /// <summary>What stands before the moment in the name of what a restore put aside.</summary>
    public const string Before = ".before-";

    /// <summary>What the name of a back-up ends in while it is being made.</summary>
    public const string Unfinished = ".unfinished";

    private const string Beginning = "reedclinic-";
    private const string Form = "yyyyMMdd'T'HHmmss'Z'";
    private const UnixFileMode Own = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    /// <summary>The name of a back-up made at a moment.</summary>
    /// <param name="at">When.</param>
    public static string NameAt(DateTimeOffset at) => Beginning + at.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture);

    /// <summary>When a back-up was made, as its name tells; null when it is no name of ours.</summary>
    /// <param name="folder">Its folder.</param>
    public static DateTimeOffset? MadeAt(string folder)
    {
        var name = Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)) ?? "";
        return name.StartsWith(Beginning, StringComparison.Ordinal) && DateTimeOffset.TryParseExact(
            name.AsSpan(Beginning.Length, Math.Min(16, name.Length - Beginning.Length)), Form, CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at) && !name.EndsWith(Unfinished, StringComparison.Ordinal) ? at : null;
    }

    /// <summary>The finished back-ups in a folder, the newest first.</summary>
    /// <param name="parent">The folder; it needn't be there.</param>
    public static IReadOnlyList<(string Folder, DateTimeOffset MadeAt)> In(string parent) =>
        [.. from folder in Directory.Exists(parent) ? Directory.GetDirectories(parent) : []
            let at = MadeAt(folder)
            where at is not null
            orderby at descending, folder descending
            select (folder, at.Value)];

    /// <summary>Makes a folder that only this program's account can look into; one that is there stays as it is.</summary>
    internal static void MakeOwn(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, Own);
        }
    }
}

/// <summary>Why a back-up, or the way back from one, can't go on. Its message is for whoever runs the machine, and says what to do.</summary>
/// <param name="message">The words.</param>
/// <param name="inner">What was behind it.</param>
public sealed class BackupTroubleException(string message, Exception? inner = null) : Exception(message, inner);
