namespace ReedClinic.Browser.Tests.Running;

/// <summary>A folder that goes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("reedclinic-browser-");

    /// <summary>Where it is.</summary>
    public string Path => _folder.FullName;

    public void Dispose() => _folder.Delete(recursive: true);

    /// <summary>
    /// Takes a folder away in which a program that was told to end may still be closing a file: tried anew for as long as a
    /// file comes in between.
    /// </summary>
    /// <exception cref="IOException">It was still in use after ten seconds.</exception>
    public static async Task RemoveAsync(DirectoryInfo folder)
    {
        using var rounds = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        for (var since = TimeProvider.System.GetTimestamp(); ; await rounds.WaitForNextTickAsync())
        {
            try
            {
                folder.Delete(recursive: true);
                return;
            }
            catch (DirectoryNotFoundException)
            {
                return;
            }
            catch (IOException) when (TimeProvider.System.GetElapsedTime(since) < TimeSpan.FromSeconds(10))
            {
                // Something is still being written in it.
            }
        }
    }
}
