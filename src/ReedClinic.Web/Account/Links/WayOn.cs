using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Account.Links;

/// <summary>
/// Where somebody was going who has to open a link in their mail first: the mail can't know. It stays with the browser for an
/// hour, or until anybody signs in or out there: the next one may be somebody else. Only a page of this site is ever gone to,
/// and none with a secret in its address.
/// </summary>
public sealed class WayOn
{
    // Whoever has such an address may do what its link is for.
    private static readonly string[] SecretPages = ["/guardian/answer/", "/begin/", "/join/", "/account/new-password/", "/account/new-email/", "/read/"];

    private readonly CookieBuilder _cookie = new() { SameSite = SameSiteMode.Lax, MaxAge = TimeSpan.FromHours(1), IsEssential = true, Path = "/" };

    /// <summary>Reads how cookies are kept here.</summary>
    /// <param name="builder">The host that is being built.</param>
    public WayOn(WebApplicationBuilder builder) => _cookie.Keep("reedclinic-way", builder);

    /// <summary>Remembers where somebody is going, and nothing of before; the first page needs no remembering.</summary>
    /// <param name="context">The request and its answer.</param>
    /// <param name="path">A page of this site; anything else is forgotten.</param>
    public void Remember(HttpContext context, string? path)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (OpenOrHome(path) is { Length: > 1 } local)
        {
            context.Response.Cookies.Append(_cookie.Name!, local, _cookie.Build(context));
            return;
        }

        Forget(context);
    }

    /// <summary>Where they were going; the first page when nobody knows. It is forgotten then.</summary>
    /// <param name="context">The request and its answer.</param>
    public string Take(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        Forget(context);
        return OpenOrHome(context.Request.Cookies[_cookie.Name!]);
    }

    /// <summary>Forgets where anybody was going.</summary>
    /// <param name="context">The request and its answer.</param>
    public void Forget(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (context.Request.Cookies.ContainsKey(_cookie.Name!))
        {
            context.Response.Cookies.Delete(_cookie.Name!, _cookie.Build(context));
        }
    }

    // As a browser would read it, and also where it is the way back of another page.
    private static string OpenOrHome(string? path)
    {
        var local = LocalPath.OrHome(path);
        var (plain, before) = (local, "");
        while (plain != before)
        {
            (before, plain) = (plain, Uri.UnescapeDataString(plain).Replace('\\', '/'));
        }

        return SecretPages.Any(secret => plain.Contains(secret, StringComparison.OrdinalIgnoreCase)) ? "/" : local;
    }
}
