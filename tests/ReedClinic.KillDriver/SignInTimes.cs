using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Engine;
using ReedClinic.Data.People;

namespace ReedClinic.KillDriver;

/// <summary>
/// How long a refused sign-in takes for an address that has an account and for one that hasn't, in one run, turn by turn: a
/// benchmark beside the test that counts hash verifications. OWASP ASVS 5.0: 6.3.8.
/// </summary>
public static class SignInTimes
{
    private const int TriesBeforeRest = 4; // the fifth wrong password makes an account rest

    /// <summary>Measures against a published app on a database of its own.</summary>
    /// <param name="folder">Where the app was published to.</param>
    /// <param name="engine">sqlite or postgres.</param>
    /// <param name="connection">An empty database.</param>
    /// <param name="tries">How often each is tried.</param>
    /// <param name="ct">Gives up.</param>
    /// <returns>One line with medians, means and their ratio.</returns>
    public static async Task<string> RunAsync(string folder, string engine, string connection, int tries, CancellationToken ct)
    {
        var settings = new Dictionary<string, string>
        {
            ["Database__Engine"] = engine,
            ["ConnectionStrings__Clinic"] = connection,
            ["Limits__SignIn"] = "1000000",
        };
        await FillAsync(settings, (tries / TriesBeforeRest) + 1, ct).ConfigureAwait(false);
        var app = await RunningApp.StartAsync(folder, settings, ct).ConfigureAwait(false);
        await using var _ = app.ConfigureAwait(false);
        using var visit = new Visit { Home = app.Address };
        await TryAsync(visit, "warm@harbour.example", ct).ConfigureAwait(false);
        var (known, unknown) = (new List<double>(), new List<double>());
        for (var i = 0; i < tries; i++)
        {
            known.Add(await TryAsync(visit, Address(i / TriesBeforeRest), ct).ConfigureAwait(false));
            unknown.Add(await TryAsync(visit, $"nobody{i}@harbour.example", ct).ConfigureAwait(false));
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"sign-in engine={engine} tries={tries} known-median={Median(known):F1}ms unknown-median={Median(unknown):F1}ms known-mean={known.Average():F1}ms unknown-mean={unknown.Average():F1}ms ratio={known.Average() / unknown.Average():F3}");
    }

    private static string Address(int number) => $"known{number}@harbour.example";

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);

    private static async Task<double> TryAsync(Visit visit, string email, CancellationToken ct)
    {
        var form = Visit.FormWith("Form.Password", await visit.PageAsync("/account/sign-in", ct).ConfigureAwait(false));
        form["Form.Email"] = email;
        form["Form.Password"] = "not the password of anybody";
        var since = Stopwatch.GetTimestamp();
        using var answer = await visit.PostAsync("/account/sign-in", form, ct).ConfigureAwait(false);
        await answer.Content.ReadAsStringAsync(ct).ConfigureAwait(false);
        return Stopwatch.GetElapsedTime(since).TotalMilliseconds;
    }

    private static async Task FillAsync(Dictionary<string, string> settings, int accounts, CancellationToken ct)
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(pair => KeyValuePair.Create(pair.Key.Replace("__", ":", StringComparison.Ordinal), (string?)pair.Value))).Build();
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddClinicData(configuration, AppContext.BaseDirectory);
        var provider = services.BuildServiceProvider();
        await using var _ = provider.ConfigureAwait(false);
        await provider.GetRequiredService<ClinicSchema>().MigrateAsync(ct).ConfigureAwait(false);
        var scope = provider.CreateAsyncScope();
        await using var __ = scope.ConfigureAwait(false);
        var users = scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>();
        for (var i = 0; i < accounts; i++)
        {
            var account = new ClinicAccount { Id = Guid.CreateVersion7(TimeProvider.System.GetUtcNow()), UserName = Address(i), Email = Address(i), DisplayName = "Known" };
            if (!(await users.CreateAsync(account, "a quiet tide at four o'clock").ConfigureAwait(false)).Succeeded)
            {
                throw new InvalidOperationException("An account can't be made.");
            }
        }
    }
}
