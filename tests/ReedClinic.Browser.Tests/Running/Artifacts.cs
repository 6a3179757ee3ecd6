namespace ReedClinic.Browser.Tests.Running;

/// <summary>Where pictures and logs of a run go: tests/artifacts, which git ignores.</summary>
public static class Artifacts
{
    private static readonly string Root = Path.Combine(Top(), "tests", "artifacts");

    public static string Folder(params string[] parts) => Directory.CreateDirectory(Path.Combine([Root, .. parts])).FullName;

    /// <summary>An empty folder: what an earlier run left is gone.</summary>
    public static string Fresh(params string[] parts)
    {
        Directory.Delete(Folder(parts), recursive: true);
        return Folder(parts);
    }

    private static string Top()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ReedClinic.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("ReedClinic.sln stands in no folder above the tests.");
    }
}
