using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using Npgsql;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Recordings;

/// <summary>
/// Where sounds and photographs lie: files under random names in folders of two letters, away from everything that is given
/// out as it lies. OWASP ASVS 5.0: 5.3.1, 5.3.2.
/// </summary>
/// <param name="path">The folder.</param>
public sealed class MediaFolder(string path)
{
    /// <summary>The setting that names the folder.</summary>
    public const string Setting = "Media:Folder";

    /// <summary>How long a file's name is: 128 random bits.</summary>
    public const int NameLength = 32;

    private const string PartEnding = ".part";
    private const string NewEnding = ".new";
    private const UnixFileMode OwnFolder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    // What the system says when a disk, or what one may have of it, is full: ENOSPC, EDQUOT, and the two of Windows.
    private static readonly int[] Full = [28, 122, unchecked((int)0x80070070), unchecked((int)0x80070027)];

    // EWOULDBLOCK of a lock, and a sharing violation.
    private static readonly int[] InUse = [11, unchecked((int)0x80070020)];

    /// <summary>The folder, as a full path.</summary>
    public string Path { get; } = System.IO.Path.GetFullPath(path);

    /// <summary>The folder that the settings name; else one beside SQLite's file, else under the content root.</summary>
    /// <param name="configuration">The settings.</param>
    /// <param name="contentRoot">Where a relative path begins.</param>
    public static MediaFolder Of(IConfiguration configuration, string contentRoot)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        var named = configuration[Setting];
        if (string.IsNullOrEmpty(named))
        {
            var postgres = string.Equals(configuration["Database:Engine"], nameof(Engine.ClinicEngine.Postgres), StringComparison.OrdinalIgnoreCase);
            named = postgres ? "App_Data/media" : System.IO.Path.ChangeExtension(ClinicDataSetup.SqliteFile(configuration, contentRoot), null) + "-media";
        }

        return new MediaFolder(System.IO.Path.GetFullPath(named, contentRoot));
    }

    /// <summary>Makes the folder, for this program's account alone.</summary>
    /// <exception cref="InvalidOperationException">It can't be written to.</exception>
    public void Prepare()
    {
        if (Directory.Exists(System.IO.Path.Combine(Path, Backups.ArrivingFiles.Waiting)) || File.Exists(Backups.ArrivingFiles.ErasedIn(Path)))
        {
            throw new InvalidOperationException($"A restore wasn't finished: what it left still lies in '{Path}'. Run restore again with the same back-up; it begins anew.");
        }

        try
        {
            Make(Path);
            var trial = System.IO.Path.Combine(Path, NewName() + NewEnding);
            File.WriteAllBytes(trial, [1]);
            File.Delete(trial);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new InvalidOperationException($"{Setting} is '{Path}', and nothing can be written there: {trouble.Message}", trouble);
        }
    }

    /// <summary>Where a file lies. It needn't be there.</summary>
    /// <param name="name">Its name.</param>
    public string PathOf(string name) => System.IO.Path.Combine(Path, Checked(name)[..2], name);

    internal static string NewName() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(NameLength / 2));

    /// <summary>Whether something failed because there is no room.</summary>
    internal static bool IsFull(Exception? trouble) => trouble switch
    {
        null => false,
        IOException io when Full.Contains(io.HResult) => true,
        SqliteException { SqliteErrorCode: 13 } => true,
        PostgresException { SqlState: PostgresErrorCodes.DiskFull } => true,
        _ => IsFull(trouble.InnerException),
    };

    /// <summary>Writes on what has arrived of a file. The length of what was written; null when it would have been too long.</summary>
    /// <exception cref="PartInUseException">Another piece of it is being written.</exception>
    internal async Task<int?> WritePartAsync(Upload upload, Stream piece, int most, CancellationToken ct)
    {
        var file = OpenPart(upload.File);
        await using var _ = file.ConfigureAwait(false);
        file.Seek(upload.Received, SeekOrigin.Begin);
        var (room, length) = (Math.Min(most, upload.Bytes - upload.Received), 0);
        var buffer = new byte[64 * 1024];
        while (await piece.ReadAsync(buffer, ct).ConfigureAwait(false) is > 0 and var read)
        {
            length += read;
            if (length > room)
            {
                file.SetLength(upload.Received);
                return null;
            }

            await file.WriteAsync(buffer.AsMemory(0, read), ct).ConfigureAwait(false);
        }

        file.SetLength(upload.Received + length);
        await file.FlushAsync(ct).ConfigureAwait(false);
        RandomAccess.FlushToDisk(file.SafeFileHandle);
        return length;
    }

    internal Task<byte[]> ReadPartAsync(string name, CancellationToken ct) => File.ReadAllBytesAsync(PathOf(name) + PartEnding, ct);

    internal void RemovePart(string name) => File.Delete(PathOf(name) + PartEnding);

    /// <summary>Keeps a file: it is there whole and on the disk, or not at all.</summary>
    internal async Task KeepAsync(string name, ReadOnlyMemory<byte> content, CancellationToken ct)
    {
        var path = PathOf(name);
        Make(System.IO.Path.GetDirectoryName(path)!);
        try
        {
            var file = new FileStream(path + NewEnding, FileMode.Create, FileAccess.Write, FileShare.None);
            await using (file.ConfigureAwait(false))
            {
                await file.WriteAsync(content, ct).ConfigureAwait(false);
                await file.FlushAsync(ct).ConfigureAwait(false);
                RandomAccess.FlushToDisk(file.SafeFileHandle);
            }
        }
        catch
        {
            File.Delete(path + NewEnding);
            throw;
        }

        File.Move(path + NewEnding, path, overwrite: true);
    }

    /// <summary>Removes a file, and whatever had arrived of it.</summary>
    internal void Remove(string name)
    {
        foreach (var path in new[] { PathOf(name), PathOf(name) + PartEnding, PathOf(name) + NewEnding })
        {
            if (File.Exists(path))
            {
                File.Delete(path);
            }
        }
    }

    internal bool Has(string name) => File.Exists(PathOf(name));

    /// <summary>Every file of ours that lies there: its name, and when it was last written.</summary>
    internal IEnumerable<(string Name, DateTimeOffset WrittenAt)> All() =>
        from folder in Directory.Exists(Path) ? new DirectoryInfo(Path).EnumerateDirectories("??") : []
        from file in folder.EnumerateFiles()
        let name = file.Name.Split('.')[0]
        where IsName(name)
        select (name, new DateTimeOffset(file.LastWriteTimeUtc));

    // Nobody else has it meanwhile.
    private FileStream OpenPart(string name)
    {
        Make(System.IO.Path.GetDirectoryName(PathOf(name))!);
        try
        {
            return new FileStream(PathOf(name) + PartEnding, FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
        }
        catch (IOException trouble) when (InUse.Contains(trouble.HResult))
        {
            throw new PartInUseException(trouble);
        }
    }

    private static void Make(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, OwnFolder);
        }
    }

    private static bool IsName(string name) => name.Length == NameLength && name.All(char.IsAsciiHexDigitLower);

    private static string Checked(string name) => IsName(name) ? name : throw new ArgumentException("No name of ours.", nameof(name));
}

/// <summary>Another piece of a file is being written.</summary>
internal sealed class PartInUseException(Exception inner) : Exception("Another piece of this file is being written.", inner);
