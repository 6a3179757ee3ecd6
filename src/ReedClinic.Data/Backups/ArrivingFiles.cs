using System.Text;

namespace ReedClinic.Data.Backups;

/// <summary>
/// Files of a back-up on their way into a folder of the program. They wait in a folder inside of it, so that only names change
/// when they take their place, on whatever disk that is; and while it is there, a restore isn't finished.
/// </summary>
/// <param name="place">The folder they go to.</param>
internal sealed class ArrivingFiles(string place)
{
    /// <summary>The name of the folder they wait in.</summary>
    public const string Waiting = ".arriving";

    /// <summary>Where a list of erased people waits until a restore is finished, so that one that is broken off forgets nobody.</summary>
    /// <param name="place">The folder of sounds and photographs.</param>
    public static string ErasedIn(string place) => Path.Combine(place, ".erased-meanwhile");

    /// <summary>Writes that list.</summary>
    public static async Task RememberAsync(string place, IEnumerable<Guid> people, CancellationToken ct)
    {
        BackupLayout.MakeOwn(place);
        var file = new FileStream(ErasedIn(place), FileMode.Create, FileAccess.Write, FileShare.None);
        await using var _ = file.ConfigureAwait(false);
        await file.WriteAsync(Encoding.UTF8.GetBytes(string.Join('\n', people) + "\n"), ct).ConfigureAwait(false);
        await file.FlushAsync(ct).ConfigureAwait(false);
        RandomAccess.FlushToDisk(file.SafeFileHandle);
    }

    /// <summary>Removes that list.</summary>
    public static void ForgetErased(string place) => File.Delete(ErasedIn(place));

    private string Hall { get; } = Path.Combine(place, Waiting);

    /// <summary>Copies them into the waiting folder.</summary>
    public async Task BringAsync(string from, CancellationToken ct)
    {
        Forget();
        BackupLayout.MakeOwn(place);
        BackupLayout.MakeOwn(Hall);
        foreach (var file in Directory.Exists(from) ? Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories) : [])
        {
            var target = Path.Combine(Hall, Path.GetRelativePath(from, file));
            BackupLayout.MakeOwn(Path.GetDirectoryName(target)!);
            await BackupSums.CopyAsync(file, target, ct).ConfigureAwait(false);
        }
    }

    /// <summary>Puts what was there into a folder beside, and what waited into its place.</summary>
    /// <returns>Where that lies which was there; null when there was nothing.</returns>
    public string? TakePlace(string suffix)
    {
        var old = Path.Combine(place, suffix);
        foreach (var entry in Directory.GetFileSystemEntries(place).Where(entry => Path.GetFileName(entry)[0] != '.'))
        {
            BackupLayout.MakeOwn(old);
            Directory.Move(entry, Path.Combine(old, Path.GetFileName(entry)));
        }

        foreach (var entry in Directory.GetFileSystemEntries(Hall))
        {
            Directory.Move(entry, Path.Combine(place, Path.GetFileName(entry)));
        }

        return Directory.Exists(old) ? old : null;
    }

    /// <summary>Removes the waiting folder.</summary>
    public void Forget()
    {
        if (Directory.Exists(Hall))
        {
            Directory.Delete(Hall, recursive: true);
        }
    }
}
