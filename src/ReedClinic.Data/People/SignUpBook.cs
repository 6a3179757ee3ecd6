using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Asking for a student's account, as anybody may while the studio is open to them.</summary>
public sealed class SignUpBook(StrangerLinks links)
{
    /// <summary>Sends a link to make an account with, or word that there is one already. The answer is the same.</summary>
    /// <returns>NotFound while accounts are made by invitation only.</returns>
    public Task<Outcome<bool>> AskAsync(string? email, OperationId operation, CancellationToken ct) =>
        links.AskAsync(TicketPurpose.JoinAsStudent, email, operation, ct);
}
