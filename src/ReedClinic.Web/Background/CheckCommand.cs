using ReedClinic.Data.Engine;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary><c>ReedClinic.Web check</c>: says with a reason each what speaks against letting people in with these settings.</summary>
public static class CheckCommand
{
    /// <summary>The word that asks for it.</summary>
    public const string Name = "check";

    /// <summary>Runs it with the host's settings. Nothing is changed, and nobody is let in.</summary>
    /// <param name="args">What stood after the word.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns>0 when nothing was found, 1 when something was.</returns>
    public static async Task<int> RunAsync(string[] args, Announcement announcement)
    {
        ArgumentNullException.ThrowIfNull(announcement);
        var app = CommandHost.Build(args);
        await using var _ = app.ConfigureAwait(false);
        var found = new List<CheckFinding>(SettingsCheck.Look(app.Configuration, app.Environment));
        found.AddRange(await app.Services.GetRequiredService<StudioCheck>().LookAsync(CancellationToken.None).ConfigureAwait(false));
        foreach (var finding in found)
        {
            announcement.Say($"{finding.Name}: {finding.Words}");
        }

        announcement.Say(found.Count switch
        {
            0 => "Nothing was found that speaks against letting people in.",
            1 => "One thing wants a look before people are let in.",
            var many => $"{many} things want a look before people are let in.",
        });
        return found.Count == 0 ? 0 : 1;
    }
}
