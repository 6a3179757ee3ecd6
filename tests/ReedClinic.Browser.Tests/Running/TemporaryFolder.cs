namespace ReedClinic.Browser.Tests.Running;

/// <summary>A folder that goes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("reedclinic-browser-");

    /// <summary>Where it is.</summary>
    public string Path => _folder.FullName;

    public void Dispose() => _folder.Delete(recursive: true);
}
