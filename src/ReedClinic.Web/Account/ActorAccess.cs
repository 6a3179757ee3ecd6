using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Account;

/// <summary>
/// How a page gets its <see cref="Actor"/>: from who is signed in, asked of the database each time, so that a right that
/// was taken away is gone at the next operation.
/// </summary>
/// <param name="accounts">The accounts.</param>
public sealed class ActorAccess(AccountBook accounts)
{
    /// <summary>The actor behind a page's cascading authentication state.</summary>
    /// <param name="signedIn">The page's <c>[CascadingParameter]</c>.</param>
    /// <param name="ct">Stops the reading.</param>
    /// <returns>The actor, or null when nobody is signed in or the account is gone.</returns>
    public async Task<Actor?> Of(Task<AuthenticationState>? signedIn, CancellationToken ct = default) =>
        signedIn is null ? null : await Of((await signedIn.ConfigureAwait(false)).User, ct).ConfigureAwait(false);

    /// <summary>The actor behind a request.</summary>
    /// <param name="user">The request's user.</param>
    /// <param name="ct">Stops the reading.</param>
    /// <returns>The actor, or null when nobody is signed in or the account is gone.</returns>
    public async Task<Actor?> Of(ClaimsPrincipal user, CancellationToken ct = default) =>
        Guid.TryParse(user.FindFirstValue(ClaimTypes.NameIdentifier), out var id)
            ? await accounts.ActorFor(new AccountId(id), ct).ConfigureAwait(false)
            : null;
}
