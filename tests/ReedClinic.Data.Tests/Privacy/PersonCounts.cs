using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.People;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Domain.Recurrence;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>How many rows of each kind are one person's, counted by hand; without a person, how many there are.</summary>
internal static class PersonCounts
{
    public static async Task<Dictionary<string, int>> OfAsync(TestDatabase db, StudentId? student, AccountId? account)
    {
        await using var context = db.CreateDbContext();
        var all = student is null && account is null;
        var batches = (await context.Set<Batch>().AsNoTracking().ToListAsync(Ct)).Where(batch => all || batch.Student == student).ToList();
        var ids = batches.Select(batch => batch.Id).ToHashSet();
        var reeds = (await context.Set<Reed>().AsNoTracking().ToListAsync(Ct)).Where(reed => ids.Contains(reed.Batch)).Select(reed => reed.Id).ToHashSet();
        return new Dictionary<string, int>
        {
            [nameof(Student)] = (await context.Set<Student>().ToListAsync(Ct)).Count(row => all || row.Id == student),
            [nameof(Batch)] = batches.Count,
            [nameof(Reed)] = reeds.Count,
            [nameof(Question)] = (await context.Set<Question>().ToListAsync(Ct)).Count(row => ids.Contains(row.Batch)),
            [nameof(BenchEntry)] = (await context.Set<BenchEntry>().ToListAsync(Ct)).Count(row => reeds.Contains(row.ReedId)),
            [nameof(Recording)] = (await context.Set<Recording>().ToListAsync(Ct)).Count(row => reeds.Contains(row.Reed)),
            [nameof(SoundReading)] = (await context.Set<SoundReading>().ToListAsync(Ct)).Count(row => context.Set<Recording>().Any(recording => recording.Id == row.Recording && reeds.Contains(recording.Reed))),
            [nameof(CommonThread)] = (await context.Set<CommonThread>().ToListAsync(Ct)).Count(row => ids.Contains(row.BatchId)),
            [nameof(Letter)] = (await context.Set<Letter>().ToListAsync(Ct)).Count(row => row.SentAt is not null && ids.Contains(row.Batch)),
            [nameof(LetterSending)] = (await context.Set<LetterSending>().ToListAsync(Ct)).Count(row => ids.Contains(row.Batch)),
            [nameof(LetterLink)] = (await context.Set<LetterLink>().ToListAsync(Ct)).Count(row => ids.Contains(row.Batch)),
            [nameof(IntakeDraft)] = (await context.Set<IntakeDraft>().ToListAsync(Ct)).Count(row => row.BecameBatch is null && (all || row.Student == student)),
            [nameof(ClinicAccount)] = (await context.Users.ToListAsync(Ct)).Count(row => all || row.Id == account?.Value),
            [nameof(Session)] = (await context.Set<Session>().ToListAsync(Ct)).Count(row => all || row.Account == account),
            [nameof(RecoveryCode)] = (await context.Set<RecoveryCode>().ToListAsync(Ct)).Count(row => all || row.Account == account),
            [nameof(IdentityPasskeyData)] = (await context.Set<IdentityUserPasskey<Guid>>().ToListAsync(Ct)).Count(row => all || row.UserId == account?.Value),
            [nameof(Ticket)] = (await context.Set<Ticket>().ToListAsync(Ct)).Count(row => all ? row.Account is not null : row.Account == account),
            ["NamedGuardian"] = (await context.Set<Guardianship>().ToListAsync(Ct)).Count(row => all || row.Student == student),
            [nameof(Guardianship)] = (await context.Set<Guardianship>().ToListAsync(Ct)).Count(row => all || row.Account == account),
        };
    }
}
