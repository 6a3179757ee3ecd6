using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;

[assembly: AssemblyFixture(typeof(ReedClinic.Web.Tests.Hosting.EmptyStudio))]

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>A database of today's schema with nobody in it, made once a run: each host begins with a copy.</summary>
public sealed class EmptyStudio : IAsyncLifetime
{
    private static readonly string Folder = Directory.CreateTempSubdirectory("reedclinic-empty-").FullName;

    private static string Made => Path.Combine(Folder, "clinic.db");

    /// <summary>Puts a copy there, unless something is there already.</summary>
    /// <param name="file">Where.</param>
    public static void CopyTo(string file)
    {
        if (!File.Exists(file))
        {
            File.Copy(Made, file);
        }
    }

    public async ValueTask InitializeAsync()
    {
        var settings = new Dictionary<string, string?> { ["ConnectionStrings:Clinic"] = $"Data Source={Made};Pooling=False", ["Media:Folder"] = Folder };
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddClinicData(new ConfigurationBuilder().AddInMemoryCollection(settings).Build(), contentRoot: Folder);
        await using var provider = services.BuildServiceProvider();
        await provider.GetRequiredService<ClinicSchema>().MigrateAsync(TestContext.Current.CancellationToken);
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(Folder, recursive: true);
        return default;
    }
}
