using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>The studio: whether it is open, and opening it on the first run.</summary>
public sealed class StudioBook(
    IDbContextFactory<ClinicDb> databases, TimeProvider time, AccountRegister register, FirstRunCode firstRun)
{
    /// <summary>The studio, or null while it has no owner.</summary>
    public async Task<StudioView?> Read(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            return await db.Set<Studio>().AsNoTracking()
                .Select(studio => new StudioView(studio.Name, studio.OpenedAt))
                .SingleOrDefaultAsync(ct).ConfigureAwait(false);
        }
    }

    /// <summary>
    /// Makes the first owner, who teaches too, and opens the studio. Works once: the studio's only row is in the same
    /// save, so of two people with the code only one gets in.
    /// </summary>
    /// <param name="code">What was typed as the code that the console showed.</param>
    /// <param name="studioName">What the studio is called in letters.</param>
    /// <param name="owner">The owner's account.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>The owner's account; NotFound once the studio is open.</returns>
    public async Task<Outcome<AccountId>> Open(
        string? code, string? studioName, NewAccount owner, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(owner);
        var name = PersonName.Read(studioName);
        List<Problem> problems = [];
        if (!firstRun.Is(code))
        {
            problems.Add(new Problem("Code", "That isn't the code this start of the program announced. Copy it from the console."));
        }

        if (name is null)
        {
            problems.Add(new Problem("StudioName", $"Write a name of 1 to {PersonName.MaxLength} characters, on one line."));
        }

        problems.AddRange(owner.Problems());
        if (problems.Count > 0)
        {
            return new Outcome<AccountId>.Refused(problems);
        }

        var outcome = await register.MakeAsync(
            owner,
            [Role.Owner, Role.Teacher],
            operation,
            account => new Studio(name!, new AccountId(account.Id), time.GetUtcNow()),
            ct).ConfigureAwait(false);
        return outcome is Outcome<AccountId>.Refused && await Read(ct).ConfigureAwait(false) is not null
            ? new Outcome<AccountId>.NotFound()
            : outcome;
    }
}

/// <summary>The studio as letters and pages show it.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="OpenedAt">Since when.</param>
public sealed record StudioView(string Name, DateTimeOffset OpenedAt);
