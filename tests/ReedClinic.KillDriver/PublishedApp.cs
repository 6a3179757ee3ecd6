using System.Diagnostics;
using System.Runtime.InteropServices;

namespace ReedClinic.KillDriver;

/// <summary>The program as it would be installed: published in Release for this machine, once per run.</summary>
public static class PublishedApp
{
    /// <summary>Names a folder with a published app; nothing is published then.</summary>
    public const string GivenBy = "REEDCLINIC_TEST_PUBLISHED";

    private static readonly Lazy<Task<string>> Once = new(PublishAsync);

    /// <summary>The folder that holds ReedClinic.Web.dll.</summary>
    public static Task<string> FolderAsync() => Once.Value;

    /// <summary>The top folder of the repository.</summary>
    public static string Top()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ReedClinic.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("ReedClinic.sln stands in no folder above this program.");
    }

    private static async Task<string> PublishAsync()
    {
        if (Environment.GetEnvironmentVariable(GivenBy) is { Length: > 0 } given)
        {
            return given;
        }

        var folder = Path.Combine(Top(), "tests", "artifacts", "published");
        var machine = RuntimeInformation.OSArchitecture == Architecture.Arm64 ? "linux-arm64" : "linux-x64";
        using var publish = Process.Start(new ProcessStartInfo(
            "dotnet",
            // What the analysers have to say was said by the build: without them this takes a good third of the time.
            ["publish", "src/ReedClinic.Web", "-c", "Release", "-r", machine, "--no-self-contained", "-p:RunAnalyzers=false", "-o", folder, "--nologo", "-v", "quiet"])
        {
            WorkingDirectory = Top(),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var said = await Task.WhenAll(publish.StandardOutput.ReadToEndAsync(), publish.StandardError.ReadToEndAsync()).ConfigureAwait(false);
        await publish.WaitForExitAsync().ConfigureAwait(false);
        return publish.ExitCode == 0
            ? folder
            : throw new InvalidOperationException("dotnet publish failed: " + string.Concat(said));
    }
}
