using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>What follows an account to a new address, in what is about to be saved.</summary>
internal static class AddressChange
{
    /// <summary>Mail about the student that somebody is, and about those for whom they answer, goes to this address from now on.</summary>
    public static async Task WriteToAsync(this ClinicDb db, AccountId account, string email, CancellationToken ct)
    {
        if (await db.Set<Student>().SingleOrDefaultAsync(person => person.Account == account, ct).ConfigureAwait(false) is { } person)
        {
            person.WriteTo(email);
        }

        foreach (var guardianship in await db.Set<Guardianship>().Where(row => row.Account == account).ToListAsync(ct).ConfigureAwait(false))
        {
            guardianship.WriteTo(email);
        }
    }

    /// <summary>Takes links back that were sent before a change: they may lie in a mailbox that is somebody else's by now.</summary>
    public static async Task WithdrawLinksAsync(this ClinicDb db, AccountId account, DateTimeOffset now, CancellationToken ct)
    {
        foreach (var ticket in await db.Set<Ticket>()
            .Where(row => row.Account == account && row.UsedAt == null && row.WithdrawnAt == null
                && (row.Purpose == TicketPurpose.NewPassword || row.Purpose == TicketPurpose.NewEmail))
            .ToListAsync(ct).ConfigureAwait(false))
        {
            ticket.Withdraw(now);
        }
    }

    /// <summary>
    /// Why no link goes out that shows whose an address is; null when one does. What others ask for hinders nobody from
    /// showing that their own address is theirs.
    /// </summary>
    /// <param name="db">The database.</param>
    /// <param name="account">Who asks.</param>
    /// <param name="other">Another address than the present one; null for that.</param>
    /// <param name="now">The time.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task<Problem?> NoLinkNowAsync(this ClinicDb db, ClinicAccount account, string? other, DateTimeOffset now, CancellationToken ct)
    {
        var since = now.AddHours(-1);
        return other is null && account.EmailConfirmed ? new Problem("Email", "That is your address already.")
            : await db.TicketsOfAsync(TicketPurpose.NewEmail, new AccountId(account.Id), since, ct).ConfigureAwait(false) >= SignInBook.MostLinksAnHour
                ? new Problem("Email", "You asked for several links in the last hour, so none goes now. Please look for the newest one, among unwanted mail too, or ask again in an hour.")
            : other is not null && await db.TicketsToAsync(TicketPurpose.NewEmail, other, since, ct).ConfigureAwait(false) >= SignInBook.MostLinksAnHour
                ? new Problem("Email", "No link can go to this address just now. Please ask again in an hour.")
            : null;
    }
}
