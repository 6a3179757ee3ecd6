using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Demo;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>SQLite databases made once a run, one empty and one with the invented studio: every program that is started gets a copy.</summary>
internal static class StudioTemplates
{
    private static readonly DirectoryInfo Folder = MakeFolder();
    private static readonly Lazy<Task<string>> Empty = new(() => MakeAsync("empty", (_, _) => Task.CompletedTask));
    private static readonly Lazy<Task<string>> Demo = new(() => MakeAsync("demo", (services, ct) => services.GetRequiredService<DemoStudio>().SeedAsync(ct)));

    /// <summary>Puts a copy into a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="hasDemo">With the invented studio, or with nobody.</param>
    /// <returns>The file.</returns>
    public static async Task<string> CopyAsync(string folder, bool hasDemo)
    {
        var file = Path.Combine(folder, "clinic.db");
        File.Copy(await (hasDemo ? Demo : Empty).Value, file);
        return file;
    }

    private static async Task<string> MakeAsync(string name, Func<IServiceProvider, CancellationToken, Task> fill)
    {
        var file = Path.Combine(Folder.FullName, name + ".db");
        var settings = new Dictionary<string, string?>
        {
            ["ConnectionStrings:Clinic"] = $"Data Source={file};Pooling=False",
            ["Media:Folder"] = Path.Combine(Folder.FullName, name),
        };
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddClinicData(new ConfigurationBuilder().AddInMemoryCollection(settings).Build(), contentRoot: Folder.FullName);
        await using var provider = services.BuildServiceProvider();
        await provider.GetRequiredService<ClinicSchema>().MigrateAsync(CancellationToken.None);
        await using var scope = provider.CreateAsyncScope();
        await fill(scope.ServiceProvider, CancellationToken.None);
        return file;
    }

    private static DirectoryInfo MakeFolder()
    {
        var folder = Directory.CreateTempSubdirectory("reedclinic-templates-");
        AppDomain.CurrentDomain.ProcessExit += (_, _) => folder.Delete(recursive: true);
        return folder;
    }
}
