using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>
/// Where the video of a reed’s work can be seen, and when it begins. Keeping the same twice is the same as once, so this needs no id of
/// its own.
/// </summary>
public sealed class BenchVideoBook(IDbContextFactory<ClinicDb> databases)
{
    /// <summary>Keeps it in place of what was kept before, where that is still what was seen.</summary>
    /// <param name="actor">Who says it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="seen">What was kept when the page was shown.</param>
    /// <param name="link">An address of the web, or nothing.</param>
    /// <param name="from">When the video begins, if that is known.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    /// <returns>The reed; or what can’t be kept as it is; or the reed as somebody else has kept it meanwhile.</returns>
    public Task<Outcome<Reed>> KeepAsync(Actor actor, ReedId reed, (string? Link, DateTimeOffset? From) seen, string? link, DateTimeOffset? from, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return databases.PatientlyAsync((attempt, stop) => TryKeep(attempt, actor, reed, seen, link, from, stop), ct);
    }

    private async Task<Outcome<Reed>> TryKeep(
        Attempt attempt, Actor actor, ReedId reed, (string? Link, DateTimeOffset? From) seen, string? link, DateTimeOffset? from, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldConsentAsync(attempt, db.Set<Batch>().Where(batch => batch.Reeds.Any(row => row.Id == reed)), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if (!actor.WorksHere
            || await db.Set<Reed>().SingleOrDefaultAsync(row => row.Id == reed && db.WorkedBy(actor).Any(batch => batch.Id == row.Batch), ct).ConfigureAwait(false) is not { } filmed)
        {
            return new Outcome<Reed>.NotFound();
        }

        var kept = (filmed.VideoLink, filmed.VideoFrom);
        if (kept != seen && kept != (PlainText.Tidy(link), from))
        {
            return new Outcome<Reed>.Conflict(filmed);
        }

        if (filmed.Film(link, from) is { Count: > 0 } problems)
        {
            return new Outcome<Reed>.Refused(problems);
        }

        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return new Outcome<Reed>.Done(filmed);
    }
}
