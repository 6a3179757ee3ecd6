using System.Diagnostics;

namespace ReedClinic.Architecture.Tests.Reading;

/// <summary>The files of the repository this test was built from, without what a build writes.</summary>
public static class Repository
{
    private static readonly string[] Binary = [".png", ".jpg", ".ico", ".ttf", ".woff2", ".db", ".dump", ".gz", ".wav", ".pdf"];

    public static string Top { get; } = FindTop();

    /// <summary>Every text file that is tracked by git, or new and not ignored.</summary>
    public static IReadOnlyList<Source> All { get; } =
        [.. Listed().Where(path => !Binary.Contains(Path.GetExtension(path))).Select(Read).OfType<Source>()];

    public static IReadOnlyList<Source> CSharp { get; } = [.. All.Where(file => file.Extension == ".cs" && !IsGenerated(file))];

    public static IReadOnlyList<Source> Production { get; } = [.. CSharp.Where(file => file.IsUnder("src"))];

    public static IReadOnlyList<Source> Razor { get; } = [.. All.Where(file => file.Extension == ".razor")];

    public static IReadOnlyList<Source> Projects { get; } = [.. All.Where(file => file.Extension == ".csproj")];

    private static bool IsGenerated(Source file) => file.Path.Contains("/Migrations/", StringComparison.Ordinal);

    private static string FindTop()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ReedClinic.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("ReedClinic.sln stands in no folder above the tests.");
    }

    private static string[] Listed()
    {
        var start = new ProcessStartInfo("git", ["-c", $"safe.directory={Top}", "ls-files", "-z", "--cached", "--others", "--exclude-standard"])
        {
            WorkingDirectory = Top,
            RedirectStandardOutput = true,
        };
        using var git = Process.Start(start) ?? throw new InvalidOperationException("git did not start.");
        var paths = git.StandardOutput.ReadToEnd();
        git.WaitForExit();
        return git.ExitCode == 0
            ? paths.Split('\0', StringSplitOptions.RemoveEmptyEntries)
            : throw new InvalidOperationException("git could not list the files.");
    }

    private static Source? Read(string path)
    {
        var full = Path.Combine(Top, path);
        return File.Exists(full) ? new Source(path, File.ReadAllText(full)) : null; // deleted, not yet committed
    }
}
