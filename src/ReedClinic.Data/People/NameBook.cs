using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>What somebody is called, changed by themselves.</summary>
public sealed class NameBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private const string Rename = "change-name";

    /// <summary>
    /// Calls the account that asks something else: as somebody who signs in, who sends reeds, and who answers for others. Letters
    /// that were sent keep the name they were sent with.
    /// </summary>
    public async Task<Outcome<string>> RenameAsync(Actor actor, string? name, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await db.OwnAccountAsync(actor, ct).ConfigureAwait(false) is not { } account)
            {
                return new Outcome<string>.NotFound();
            }

            if (await db.WasDoneAsync(operation, Rename, account.Id, ct).ConfigureAwait(false))
            {
                return new Outcome<string>.Done(account.DisplayName);
            }

            if (PersonName.ProblemWith(name) is { } wrong)
            {
                return new Outcome<string>.Refused([new Problem("Name", wrong)]);
            }

            await PutAsync(db, account, PersonName.Read(name)!, ct).ConfigureAwait(false);
            db.Note(operation, Rename, account.Id, time.GetUtcNow());
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                return new Outcome<string>.Done(account.DisplayName);
            }
        }

        return new Outcome<string>.Refused([DoneOperations.NotSaved]);
    }

    private async Task PutAsync(ClinicDb db, ClinicAccount account, string name, CancellationToken ct)
    {
        if (account.DisplayName == name)
        {
            return;
        }

        var id = new AccountId(account.Id);
        account.DisplayName = name;
        if (await db.Set<Student>().SingleOrDefaultAsync(person => person.Account == id, ct).ConfigureAwait(false) is { } person)
        {
            person.Rename(name);
        }

        foreach (var guardianship in await db.Set<Guardianship>().Where(row => row.Account == id).ToListAsync(ct).ConfigureAwait(false))
        {
            guardianship.Rename(name);
        }

        db.Tell(AuditEvent.NameChanged, time.GetUtcNow(), account.Id);
    }
}
