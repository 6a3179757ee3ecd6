using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Account.Links;

/// <summary>
/// Where somebody was going who has to open a link in their mail first: the mail can't know. It stays with the browser for an
/// hour, and only a page of this site is ever gone to.
/// </summary>
public sealed class WayOn
{
    private readonly CookieBuilder _cookie = new() { SameSite = SameSiteMode.Lax, MaxAge = TimeSpan.FromHours(1), IsEssential = true, Path = "/" };

    /// <summary>Reads how cookies are kept here.</summary>
    /// <param name="builder">The host that is being built.</param>
    public WayOn(WebApplicationBuilder builder) => _cookie.Keep("reedclinic-way", builder);

    /// <summary>Remembers where somebody is going; the first page needs no remembering.</summary>
    /// <param name="context">The request and its answer.</param>
    /// <param name="path">A page of this site; anything else is forgotten.</param>
    public void Remember(HttpContext context, string? path)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (LocalPath.OrHome(path) is { Length: > 1 } local)
        {
            context.Response.Cookies.Append(_cookie.Name!, local, _cookie.Build(context));
        }
    }

    /// <summary>Where they were going; the first page when nobody knows. It is forgotten then.</summary>
    /// <param name="context">The request and its answer.</param>
    public string Take(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (!context.Request.Cookies.TryGetValue(_cookie.Name!, out var kept))
        {
            return "/";
        }

        context.Response.Cookies.Delete(_cookie.Name!, _cookie.Build(context));
        return LocalPath.OrHome(kept);
    }
}
