using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;

namespace ReedClinic.Data.Privacy;

/// <summary>
/// Tells people of whom nothing was heard for long that their records will go, and lets them go: students, and guardians who
/// answer for nobody any more.
/// </summary>
internal sealed partial class Farewell(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox, PrivacySettings settings, ILogger log)
{
    /// <summary>How the jobs begin that tell somebody.</summary>
    public const string Once = "letting-go:";

    /// <summary>One round over everybody.</summary>
    /// <returns>How many people were told, and of how many the records went.</returns>
    public async Task<(int Told, int LetGo)> RoundAsync(CancellationToken ct)
    {
        var (told, letGo) = (0, 0);
        var keepYears = await KeepYearsAsync(ct).ConfigureAwait(false);
        foreach (var whom in await QuietAsync(keepYears, ct).ConfigureAwait(false))
        {
            try
            {
                var care = await databases.PatientlyAsync((attempt, stop) => PersonAsync(attempt, whom, keepYears, stop), ct).ConfigureAwait(false);
                told += care is RecordsCare.Tell ? 1 : 0;
                letGo += care is RecordsCare.LetGo ? 1 : 0;
            }
            catch (Exception failure) when (!ct.IsCancellationRequested)
            {
                // The others mustn't wait for one; tomorrow's round tries again.
                Stumbled(log, failure);
            }
        }

        return (told, letGo);
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Somebody's records couldn't be looked after; the next round tries again.")]
    private static partial void Stumbled(ILogger log, Exception failure);

    // What was done about one person.
    private async Task<RecordsCare> PersonAsync(Attempt attempt, Erasure whom, int keepYears, CancellationToken ct)
    {
        outbox.Ready();
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);

        // Read again here, so that somebody who came by since the list was made stays.
        if (!await db.HoldAsync(whom, ct).ConfigureAwait(false) || await db.LastSignAsync(whom, ct).ConfigureAwait(false) is not { } lastSign)
        {
            return RecordsCare.Keep;
        }

        var (now, address) = (time.GetUtcNow(), await AddressAsync(db, whom, ct).ConfigureAwait(false));
        var (toldAt, waits, refused) = await NoticesAsync(db, whom, lastSign, ct).ConfigureAwait(false);
        var care = RetentionRules.CareFor(lastSign, keepYears, toldAt, address is not null && !refused, now);
        switch (care)
        {
            case RecordsCare.Tell when waits:
                return RecordsCare.Keep;
            case RecordsCare.Tell:
                Tell(db, whom, address!.Value, lastSign.AddYears(keepYears), now);
                break;
            case RecordsCare.LetGo:
                await LetGoAsync(db, whom, address is not null && !refused, now, ct).ConfigureAwait(false);
                break;
        }

        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return care;
    }

    private static async Task<(string Email, string Name)?> AddressAsync(ClinicDb db, Erasure whom, CancellationToken ct)
    {
        if (whom.Student is { } student)
        {
            return await db.AddressForAsync(student, ct).ConfigureAwait(false);
        }

        var account = whom.Account!.Value.Value;
        var found = await db.Users.Where(user => user.Id == account).Select(user => new { user.Email, user.DisplayName }).SingleAsync(ct).ConfigureAwait(false);
        return found.Email is { } email ? (email, found.DisplayName) : null;
    }

    /// <summary>No closed account answers for a student: one that was closed by an earlier version, or while its holder agreed.</summary>
    public async Task ClosedGuardiansAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var closed = (await db.Users.Where(user => user.DisabledAt != null).Select(user => user.Id).ToListAsync(ct).ConfigureAwait(false)).ToHashSet();
        var answering = await db.Set<Guardianship>().Where(row => row.GivenAt != null && row.WithdrawnAt == null && row.Account != null)
            .Select(row => row.Account!.Value).Distinct().ToListAsync(ct).ConfigureAwait(false);
        foreach (var guardian in answering.Where(account => closed.Contains(account.Value)))
        {
            await db.CloseAsync(outbox, guardian, guardian, time.GetUtcNow(), ct).ConfigureAwait(false);
        }

        await db.SaveChangesAsync(ct).ConfigureAwait(false);
    }

    // Told is who was sent the mail. One that still waits has told nobody yet, and one that was given up won't.
    private static async Task<(DateTimeOffset? ToldAt, bool Waits, bool Refused)> NoticesAsync(ClinicDb db, Erasure whom, DateTimeOffset lastSign, CancellationToken ct)
    {
        var id = whom.Person;
        var notices = await db.Set<Job>().AsNoTracking().Where(job => job.About == id && EF.Functions.Like(job.Once!, Once + "%"))
            .Select(job => new { job.MadeAt, job.DoneAt, job.GaveUpAt }).ToListAsync(ct).ConfigureAwait(false);
        return (
            notices.Max(notice => notice.DoneAt),
            notices.Any(notice => notice.DoneAt is null && notice.GaveUpAt is null),
            notices.Any(notice => notice.GaveUpAt is not null && notice.MadeAt >= lastSign));
    }

    private void Tell(ClinicDb db, Erasure whom, (string Email, string Name) address, DateTimeOffset goes, DateTimeOffset now)
    {
        var earliest = now + RetentionRules.Notice;
        outbox.Put(
            db,
            new Mail(MailKind.LettingGo, address.Email, address.Name) { Path = "/", At = goes > earliest ? goes : earliest, About = whom.Person },
            string.Create(CultureInfo.InvariantCulture, $"{Once}{whom.Person}:{now.UtcDateTime:yyyy-MM-dd}"));
    }

    private async Task LetGoAsync(ClinicDb db, Erasure whom, bool tells, DateTimeOffset now, CancellationToken ct)
    {
        var account = whom.Account;
        if (whom.Student is { } id)
        {
            account = await db.Set<Student>().Where(student => student.Id == id).Select(student => student.Account).SingleAsync(ct).ConfigureAwait(false);
            if (account is { } signIn && (await db.UserRoles.AnyAsync(held => held.UserId == signIn.Value && held.RoleId != ClinicAccountConfiguration.IdOf(Role.Student), ct).ConfigureAwait(false)
                || await db.Set<Guardianship>().AnyAsync(row => row.Account == signIn, ct).ConfigureAwait(false)))
            {
                account = null;
            }
        }

        var erasure = new Erasure(whom.Student, account);
        if (tells)
        {
            await outbox.PutErasedAsync(db, erasure, now, ct).ConfigureAwait(false);
        }

        await db.EraseAsync(erasure, AuditEvent.LetGo, null, TimeSpan.FromDays(settings.BackupDays), now, ct).ConfigureAwait(false);
    }

    private async Task<int> KeepYearsAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Set<Studio>().Select(studio => (int?)studio.KeepYears).SingleOrDefaultAsync(ct).ConfigureAwait(false) ?? Studio.UsualKeepYears;
    }

    // Those who have been quiet for nearly so long and aren't just waiting.
    private async Task<List<Erasure>> QuietAsync(int keepYears, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var before = time.GetUtcNow().AddYears(-keepYears) + RetentionRules.Notice;
        var since = time.GetUtcNow() - RetentionRules.Notice;
        var waiting = await db.Set<Job>().Where(job => EF.Functions.Like(job.Once!, Once + "%") && ((job.DoneAt == null && job.GaveUpAt == null) || job.DoneAt > since))
            .Select(job => job.About).ToHashSetAsync(ct).ConfigureAwait(false);
        return await db.QuietSinceAsync(before, waiting, ct).ConfigureAwait(false);
    }
}
