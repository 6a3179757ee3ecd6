using System.Security.Claims;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Account;

/// <summary>Whose cookie it is.</summary>
public static class SignedIn
{
    /// <summary>The account that somebody says they are, by what the cookie holds. What it may do is <see cref="ActorAccess"/>'s to say.</summary>
    /// <param name="user">The request's or the circuit's user.</param>
    /// <returns>Null when nobody is signed in.</returns>
    public static AccountId? Account(this ClaimsPrincipal? user) =>
        Guid.TryParse(user?.FindFirstValue(ClaimTypes.NameIdentifier), out var id) ? new AccountId(id) : null;
}
