using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.StaticAssets;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;
using ReedClinic.Web.Features.Letters;

namespace ReedClinic.Web.Account;

/// <summary>
/// The cookie of somebody who is signed in. It holds the session's id and nothing else that counts: who they are and what
/// they may is read from the database with every request, so that nothing outlives the session or a right that was taken.
/// </summary>
public static class SessionCookie
{
    /// <summary>The claim of somebody who answers for a student, or did until they took it back. It is no role that anybody is given: the menu shows the way by it.</summary>
    public const string Guardian = nameof(Guardian);

    private const string SessionClaim = "sid";

    /// <summary>The session that a user is signed in with; null for a visitor.</summary>
    /// <param name="user">The user.</param>
    public static SessionId? SessionOf(ClaimsPrincipal user)
    {
        ArgumentNullException.ThrowIfNull(user);
        return Guid.TryParse(user.FindFirstValue(SessionClaim), out var id) ? new SessionId(id) : null;
    }

    /// <summary>The user of a session, as the cookie first carries it.</summary>
    /// <param name="session">The session.</param>
    public static ClaimsPrincipal Of(SessionId session) =>
        new(new ClaimsIdentity([new Claim(SessionClaim, session.Value.ToString())], IdentityConstants.ApplicationScheme));

    /// <summary>Reads who is behind the cookie, or takes it away.</summary>
    /// <param name="context">The request and its cookie.</param>
    public static async Task ReadAsync(CookieValidatePrincipalContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var http = context.HttpContext;
        if (context.Principal is not { } user || SessionOf(user) is not { } id)
        {
            context.RejectPrincipal();
            return;
        }

        // A style sheet is the same for everybody, and a page asks for a dozen.
        if (http.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null)
        {
            return;
        }

        if (await KeptLetters.FindAsync(http, id).ConfigureAwait(false) is { } letter)
        {
            context.ReplacePrincipal(As(letter.Person));
            return;
        }

        var sessions = http.RequestServices.GetRequiredService<SessionRegister>();
        if (await sessions.WhoAsync(id, acting: true, http.RequestAborted).ConfigureAwait(false) is { } person)
        {
            context.ReplacePrincipal(As(person));
            return;
        }

        context.RejectPrincipal();
        await http.SignOutAsync(IdentityConstants.ApplicationScheme).ConfigureAwait(false);
    }

    private static ClaimsPrincipal As(SignedInPerson person)
    {
        var identity = new ClaimsIdentity(IdentityConstants.ApplicationScheme);
        identity.AddClaim(new Claim(SessionClaim, person.Session.Id.Value.ToString()));
        identity.AddClaim(new Claim(ClaimTypes.NameIdentifier, person.Actor.Account.Value.ToString()));
        identity.AddClaim(new Claim(ClaimTypes.Name, person.Name));
        foreach (var role in RolesOf(person.Actor))
        {
            identity.AddClaim(new Claim(ClaimTypes.Role, role.ToString()));
        }

        if (person.Actor.Guards)
        {
            identity.AddClaim(new Claim(ClaimTypes.Role, Guardian));
        }

        return new ClaimsPrincipal(identity);
    }

    private static IEnumerable<Role> RolesOf(Actor actor)
    {
        if (actor.Student is not null)
        {
            yield return Role.Student;
        }

        if (actor.IsTeacher)
        {
            yield return Role.Teacher;
        }

        if (actor.IsOwner)
        {
            yield return Role.Owner;
        }
    }
}
