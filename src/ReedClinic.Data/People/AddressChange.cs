using Microsoft.EntityFrameworkCore;
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
}
