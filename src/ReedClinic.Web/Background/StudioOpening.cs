using ReedClinic.Data.Backups;
using ReedClinic.Data.Demo;
using ReedClinic.Data.Engine;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary>What happens between building the app and letting anybody in: the schema, and who may be first.</summary>
public static class StudioOpening
{
    /// <summary>Asks for the demo; it is heard in Development alone. The launch profile of <c>dotnet run</c> sets it.</summary>
    public const string SeedDemo = "Demo:Seed";

    /// <summary>
    /// Brings the database to this build's schema. An empty studio is then either filled with the demo (in Development,
    /// when asked for) or waits for its first owner, whose one-time code is announced.
    /// </summary>
    /// <param name="app">The application, not yet running.</param>
    /// <returns>False when the records can't be brought to this build's schema, or have a newer one; it was announced why, and nothing was changed.</returns>
    public static async Task<bool> OpenStudioAsync(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var ct = app.Lifetime.ApplicationStopping;
        app.Services.GetRequiredService<MediaFolder>().Prepare();
        var announcement = app.Services.GetRequiredService<Announcement>();
        try
        {
            await app.Services.GetRequiredService<ClinicSchema>()
                .MigrateAsync(ct, stop => app.Services.GetRequiredService<BackupMaker>().BeforeMigrationAsync(announcement.Say, stop)).ConfigureAwait(false);
        }
        catch (Exception trouble) when (trouble is NewerSchemaException or BackupTroubleException)
        {
            announcement.Say(trouble.Message);
            return false;
        }

        var scope = app.Services.CreateAsyncScope();
        await using var _ = scope.ConfigureAwait(false);
        if (app.Environment.IsDevelopment() && app.Configuration.GetValue<bool>(SeedDemo))
        {
            var demo = scope.ServiceProvider.GetRequiredService<DemoStudio>();
            await demo.SeedAsync(ct).ConfigureAwait(false);
            AnnounceDemo(announcement, await demo.SignInsAsync(ct).ConfigureAwait(false));
        }

        if (await scope.ServiceProvider.GetRequiredService<StudioBook>().Read(ct).ConfigureAwait(false) is null)
        {
            var code = scope.ServiceProvider.GetRequiredService<FirstRunCode>();
            announcement.Say($"This studio has no owner yet. Open /first-run and enter this code, once: {code.Text}");
        }

        return true;
    }

    private static void AnnounceDemo(Announcement announcement, IReadOnlyList<DemoSignIn> people)
    {
        if (people.Count > 0)
        {
            announcement.Say("This is the demo studio; everything in it is invented. Sign in as:");
        }

        foreach (var person in people)
        {
            announcement.Say($"  {person.Email}  password: {person.Password}  ({person.Who})");
        }
    }
}
