using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using ReedClinic.KillDriver;

namespace ReedClinic.Web.Tests.Published;

/// <summary>
/// A separate process posts entries to the published app, kills it with signal 9 at a random moment after an
/// acknowledgement, starts it again and compares. <c>tests/faults.sh</c> runs the same test with more rounds.
/// </summary>
public sealed class KillTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string RoundsGivenBy = "REEDCLINIC_KILL_ROUNDS";
    private const string SeedGivenBy = "REEDCLINIC_KILL_SEED";
    private const string LogGivenBy = "REEDCLINIC_FAULT_LOG";
    private const int QuickRounds = 10;

    [Theory, OnBothEngines]
    public async Task Nothing_acknowledged_is_lost_or_doubled_when_the_app_is_killed(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var rounds = Number(RoundsGivenBy) ?? QuickRounds;
        var seed = Number(SeedGivenBy) ?? RandomNumberGenerator.GetInt32(int.MaxValue);
        var (code, said) = await DriveAsync(
            await PublishedApp.FolderAsync(), engine.ToString().ToLowerInvariant(), db.Connection, Text(rounds), Text(seed));

        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, said, TestContext.Current.CancellationToken);
        }

        Assert.True(code == 0, said);
        Assert.Contains($"kills={rounds} ", said, StringComparison.Ordinal);
        Assert.Contains("lost=0 duplicates=0 strangers=0", said.Split('\n', StringSplitOptions.RemoveEmptyEntries)[^1], StringComparison.Ordinal);
    }

    private static async Task<(int Code, string Said)> DriveAsync(params string[] words)
    {
        var ct = TestContext.Current.CancellationToken;
        using var driver = Process.Start(new ProcessStartInfo(
            "dotnet", [Path.Combine(AppContext.BaseDirectory, "ReedClinic.KillDriver.dll"), .. words])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var said = await Task.WhenAll(driver.StandardOutput.ReadToEndAsync(ct), driver.StandardError.ReadToEndAsync(ct));
        await driver.WaitForExitAsync(ct);
        return (driver.ExitCode, said[1] + said[0]);
    }

    private static int? Number(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
