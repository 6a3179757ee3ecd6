using System.Text.Json;
using System.Text.Json.Serialization;
using ReedClinic.Data.Engine;

namespace ReedClinic.Data.Backups;

/// <summary>What a back-up says of itself.</summary>
/// <param name="Format">The form of the folder: 1.</param>
/// <param name="MadeAt">When the records were read.</param>
/// <param name="Engine">Which database they come from.</param>
/// <param name="Schema">The last migration they had.</param>
/// <param name="Rows">How many rows each table had.</param>
/// <param name="WithMedia">False when sounds and photographs were left out, as before a migration, which doesn't touch them.</param>
/// <param name="Missing">Files of sounds and photographs that the records name and that weren't there, or weren't what had been kept.</param>
public sealed record BackupAbout(
    int Format,
    DateTimeOffset MadeAt,
    ClinicEngine Engine,
    string Schema,
    IReadOnlyDictionary<string, long> Rows,
    bool WithMedia,
    IReadOnlyList<string> Missing)
{
    /// <summary>The form that this build writes and reads.</summary>
    public const int ThisFormat = 1;

    private static readonly JsonSerializerOptions Json = new() { WriteIndented = true, Converters = { new JsonStringEnumConverter() } };

    /// <summary>Writes it into a back-up's folder.</summary>
    internal Task WriteAsync(string folder, CancellationToken ct) =>
        File.WriteAllBytesAsync(Path.Combine(folder, BackupLayout.About), JsonSerializer.SerializeToUtf8Bytes(this, Json), ct);

    /// <summary>Reads it from a back-up's folder; null where it can't be read.</summary>
    internal static async Task<BackupAbout?> TryReadAsync(string folder, CancellationToken ct)
    {
        try
        {
            return await ReadAsync(folder, ct).ConfigureAwait(false);
        }
        catch (BackupTroubleException)
        {
            return null;
        }
    }

    /// <summary>The newest back-up in a folder that was finished and lacks no file; null when there is none. It isn't read from end to end.</summary>
    /// <param name="parent">The folder.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task<(string Folder, DateTimeOffset MadeAt)?> NewestWholeAsync(string parent, CancellationToken ct)
    {
        foreach (var made in BackupLayout.In(parent).Where(made => File.Exists(Path.Combine(made.Folder, BackupLayout.Sums))))
        {
            if (await TryReadAsync(made.Folder, ct).ConfigureAwait(false) is { WithMedia: true, Missing.Count: 0 })
            {
                return made;
            }
        }

        return null;
    }

    /// <summary>Reads it from a back-up's folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="ct">Stops it.</param>
    /// <exception cref="BackupTroubleException">It isn't there, can't be read, or is of another form.</exception>
    public static async Task<BackupAbout> ReadAsync(string folder, CancellationToken ct)
    {
        try
        {
            var read = JsonSerializer.Deserialize<BackupAbout>(await File.ReadAllBytesAsync(Path.Combine(folder, BackupLayout.About), ct).ConfigureAwait(false), Json);
            return read is { Format: ThisFormat, Schema.Length: > 0, Rows: not null, Missing: not null }
                ? read
                : throw new BackupTroubleException($"{BackupLayout.About} is of a form that this build doesn’t know. Use the build that made the back-up, or a newer one.");
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or JsonException or NotSupportedException)
        {
            throw new BackupTroubleException($"{BackupLayout.About} can’t be read, so nobody can tell what this back-up holds: {trouble.Message}", trouble);
        }
    }
}
