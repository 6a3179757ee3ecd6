using ReedClinic.Data.Engine;
using ReedClinic.Data.People;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary><c>ReedClinic.Web forget-second-step ADDRESS</c>: for an owner whose only passkey is lost, when nobody else can help.</summary>
public static class LostSecondStepCommand
{
    /// <summary>The word that asks for it.</summary>
    public const string Name = "forget-second-step";

    /// <summary>Runs it with the host's settings.</summary>
    /// <param name="args">The address, and settings.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns>0 when it was done, 1 when nobody has that address.</returns>
    public static async Task<int> RunAsync(string[] args, Announcement announcement)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(announcement);
        var app = CommandHost.Build([.. args.Skip(1)]);
        await using var _ = app.ConfigureAwait(false);
        await app.Services.GetRequiredService<ClinicSchema>().RefuseNewerAsync(CancellationToken.None).ConfigureAwait(false);
        var scope = app.Services.CreateAsyncScope();
        await using var __ = scope.ConfigureAwait(false);
        var done = await scope.ServiceProvider.GetRequiredService<LostSecondStep>().ForgetAsync(args.FirstOrDefault(), CancellationToken.None).ConfigureAwait(false);
        announcement.Say(done
            ? "Their passkeys and codes are gone and every browser is signed out. They sign in with their password now and set up a second step at once."
            : "Nobody has this address. Write it as they sign in with it: forget-second-step name@example.org");
        return done ? 0 : 1;
    }
}
