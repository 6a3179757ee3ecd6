using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Account;

/// <summary>
/// How a page gets its <see cref="Actor"/>: from the session it is signed in with, asked of the database each time, so that
/// a right that was taken away, or a session that was ended elsewhere, is gone at the next operation.
/// </summary>
/// <param name="sessions">Who is signed in with which browser.</param>
public sealed class ActorAccess(SessionRegister sessions)
{
    /// <summary>The actor behind a page's cascading authentication state.</summary>
    /// <param name="signedIn">The page's <c>[CascadingParameter]</c>.</param>
    /// <param name="ct">Stops the reading.</param>
    /// <returns>The actor, or null when nobody is signed in any more.</returns>
    public async Task<Actor?> Of(Task<AuthenticationState>? signedIn, CancellationToken ct = default) =>
        signedIn is null ? null : await Of((await signedIn.ConfigureAwait(false)).User, ct).ConfigureAwait(false);

    /// <summary>The actor behind a request.</summary>
    /// <param name="user">The request's user.</param>
    /// <param name="ct">Stops the reading.</param>
    /// <returns>The actor, or null when nobody is signed in any more.</returns>
    public Task<Actor?> Of(ClaimsPrincipal user, CancellationToken ct = default) => ReadAsync(user, acting: true, ct);

    /// <summary>The same for a page that only watches: looking doesn't keep a session from running out.</summary>
    /// <param name="user">The page's user.</param>
    /// <param name="ct">Stops the reading.</param>
    /// <returns>The actor, or null when nobody is signed in any more.</returns>
    public Task<Actor?> StillHere(ClaimsPrincipal user, CancellationToken ct = default) => ReadAsync(user, acting: false, ct);

    private async Task<Actor?> ReadAsync(ClaimsPrincipal user, bool acting, CancellationToken ct) =>
        SessionCookie.SessionOf(user) is { } session
            ? (await sessions.WhoAsync(session, acting, ct).ConfigureAwait(false))?.Actor
            : null;
}
