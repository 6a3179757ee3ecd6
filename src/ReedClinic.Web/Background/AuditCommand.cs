using ReedClinic.Data.Audit;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Background;

/// <summary><c>ReedClinic.Web verify-audit</c>: follows the audit's chain and says in words whether it holds.</summary>
public static class AuditCommand
{
    /// <summary>The word that asks for it.</summary>
    public const string Name = "verify-audit";

    /// <summary>Runs it with the host's settings.</summary>
    /// <param name="args">What stood after the word.</param>
    /// <param name="announcement">Where the words go.</param>
    /// <returns>0 when the chain holds, 1 when it doesn't.</returns>
    public static async Task<int> RunAsync(string[] args, Announcement announcement)
    {
        ArgumentNullException.ThrowIfNull(announcement);
        var app = CommandHost.Build(args);
        await using var _ = app.ConfigureAwait(false);
        var check = await app.Services.GetRequiredService<AuditChain>().VerifyAsync(CancellationToken.None).ConfigureAwait(false);
        foreach (var line in Words(check))
        {
            announcement.Say(line);
        }

        return check.Broken is null ? 0 : 1;
    }

    /// <summary>What came of it, in words.</summary>
    /// <param name="check">What came of it.</param>
    public static IReadOnlyList<string> Words(AuditCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return check.Broken is { } place
            ?
            [
                $"The audit is broken at link {place}: it was changed, or one before it was removed, slipped in or moved.",
                $"The {check.Sound} links before it hold.",
            ]
            :
            [
                $"The audit holds: {check.Sound} links, from the first to the last.",
                $"The last one's mark is {check.Head}. Write it down elsewhere: a later check whose chain doesn't contain it was cut off.",
            ];
    }
}
