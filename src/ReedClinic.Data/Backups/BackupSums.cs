using System.Security.Cryptography;
using System.Text;

namespace ReedClinic.Data.Backups;

/// <summary>
/// The sums over the files of a back-up: SHA-256 (FIPS 180-4), one line each, in the form of GNU coreutils, so that they can be
/// checked without this program too.
/// </summary>
internal sealed class BackupSums
{
    private const int SumLength = 64;
    private const string Between = "  ";

    private readonly SortedDictionary<string, string> _sums = new(StringComparer.Ordinal);

    /// <summary>Copies a file into the back-up and notes its sum.</summary>
    /// <returns>The sum.</returns>
    public async Task<string> CopyAsync(string from, string folder, string name, CancellationToken ct)
    {
        var to = Path.Combine(folder, name);
        BackupLayout.MakeOwn(Path.GetDirectoryName(to)!);
        return _sums[name] = await CopyAsync(from, to, ct).ConfigureAwait(false);
    }

    /// <summary>Notes the sum of a file that is in the back-up.</summary>
    public async Task AddAsync(string folder, string name, CancellationToken ct) =>
        _sums[name] = await OfAsync(Path.Combine(folder, name), ct).ConfigureAwait(false);

    /// <summary>Takes a file out of the back-up again.</summary>
    public void Remove(string folder, string name)
    {
        File.Delete(Path.Combine(folder, name));
        _sums.Remove(name);
    }

    /// <summary>The sum of a file that was noted; null when it isn't there.</summary>
    public string? Of(string name) => _sums.GetValueOrDefault(name);

    /// <summary>Writes them, the last thing that is written into a back-up.</summary>
    public async Task WriteAsync(string folder, CancellationToken ct)
    {
        var lines = new StringBuilder();
        foreach (var (name, sum) in _sums)
        {
            lines.Append(sum).Append(Between).Append(name).Append('\n');
        }

        var file = new FileStream(Path.Combine(folder, BackupLayout.Sums), FileMode.CreateNew, FileAccess.Write, FileShare.None);
        await using var _ = file.ConfigureAwait(false);
        await file.WriteAsync(Encoding.UTF8.GetBytes(lines.ToString()), ct).ConfigureAwait(false);
        await file.FlushAsync(ct).ConfigureAwait(false);
        RandomAccess.FlushToDisk(file.SafeFileHandle);
    }

    /// <summary>Compares every file of a back-up with its sum.</summary>
    /// <returns>What is wrong, a sentence each; empty when nothing is.</returns>
    public static async Task<IReadOnlyList<string>> CheckAsync(string folder, CancellationToken ct)
    {
        var list = Path.Combine(folder, BackupLayout.Sums);
        if (!File.Exists(list))
        {
            return [$"{BackupLayout.Sums} is missing: the back-up wasn’t finished, or was copied in part."];
        }

        var (said, problems) = await ReadAsync(list, ct).ConfigureAwait(false);
        var lying = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/')).Where(name => name != BackupLayout.Sums).ToHashSet(StringComparer.Ordinal);
        problems.AddRange(lying.Where(name => !said.ContainsKey(name)).Select(name => $"{name} lies there, but {BackupLayout.Sums} doesn’t know of it."));
        foreach (var (name, sum) in said)
        {
            if (!lying.Contains(name))
            {
                problems.Add($"{name} is missing.");
            }
            else if (await OfAsync(Path.Combine(folder, name), ct).ConfigureAwait(false) != sum)
            {
                problems.Add($"{name} isn’t what was written: its sum is another.");
            }
        }

        return problems;
    }

    /// <summary>Copies a file onto the disk. Returns its sum.</summary>
    public static async Task<string> CopyAsync(string from, string to, CancellationToken ct)
    {
        var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        await using var _ = source.ConfigureAwait(false);
        var target = new FileStream(to, Own());
        await using var __ = target.ConfigureAwait(false);
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[256 * 1024];
        while (await source.ReadAsync(buffer, ct).ConfigureAwait(false) is > 0 and var read)
        {
            sum.AppendData(buffer, 0, read);
            await target.WriteAsync(buffer.AsMemory(0, read), ct).ConfigureAwait(false);
        }

        await target.FlushAsync(ct).ConfigureAwait(false);
        RandomAccess.FlushToDisk(target.SafeFileHandle);
        return Convert.ToHexStringLower(sum.GetHashAndReset());
    }

    // People's voices, and keys: for this program's account alone.
    private static FileStreamOptions Own()
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        return options;
    }

    private static async Task<string> OfAsync(string file, CancellationToken ct)
    {
        var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.Read);
        await using var _ = stream.ConfigureAwait(false);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, ct).ConfigureAwait(false));
    }

    private static async Task<(Dictionary<string, string> Said, List<string> Problems)> ReadAsync(string list, CancellationToken ct)
    {
        var text = await File.ReadAllTextAsync(list, ct).ConfigureAwait(false);
        var (said, problems) = (new Dictionary<string, string>(StringComparer.Ordinal), new List<string>());
        if (!text.EndsWith('\n'))
        {
            problems.Add($"{BackupLayout.Sums} breaks off in its last line.");
        }

        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var name = line.Length > SumLength + Between.Length ? line[(SumLength + Between.Length)..] : "";
            if (name.Length == 0 || line.AsSpan(SumLength, Between.Length) is not Between || name.Split('/').Contains("..") || Path.IsPathRooted(name)
                || !line.AsSpan(0, SumLength).ToString().All(char.IsAsciiHexDigitLower) || !said.TryAdd(name, line[..SumLength]))
            {
                problems.Add($"{BackupLayout.Sums} has a line that is no sum and name.");
            }
        }

        return (said, problems);
    }
}
