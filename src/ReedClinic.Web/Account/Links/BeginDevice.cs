using System.Buffers.Text;
using System.Security.Cryptography;
using ReedClinic.Domain.People;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Account.Links;

/// <summary>How a browser that began by a link is known again: a random secret in a cookie, of which only a hash is kept here.</summary>
public sealed class BeginDevice
{
    private const int Characters = 43; // 32 bytes as RFC 4648 base 64 for addresses

    // As long as a batch may travel; the link itself ends sooner.
    private readonly CookieBuilder _cookie = new() { SameSite = SameSiteMode.Lax, MaxAge = TimeSpan.FromDays(90), IsEssential = true, Path = "/" };

    /// <summary>Reads how cookies are kept here.</summary>
    /// <param name="builder">The host that is being built.</param>
    public BeginDevice(WebApplicationBuilder builder) => _cookie.Keep("reedclinic-device", builder);

    /// <summary>The secret that a browser brought; null when it brought none.</summary>
    /// <param name="request">The request.</param>
    public string? Of(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return request.Cookies[_cookie.Name!] is { Length: Characters } secret ? secret : null;
    }

    /// <summary>The same, or a new one, which the browser keeps from now on.</summary>
    /// <param name="context">The request and its answer.</param>
    public string Keep(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var secret = Of(context.Request) ?? Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Ticket.SecretBytes));
        context.Response.Cookies.Append(_cookie.Name!, secret, _cookie.Build(context));
        return secret;
    }
}
