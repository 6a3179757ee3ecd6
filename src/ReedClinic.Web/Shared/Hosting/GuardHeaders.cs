namespace ReedClinic.Web.Shared.Hosting;

/// <summary>Headers that keep a page to its own scripts, frames and listeners.</summary>
public static class GuardHeaders
{
    /// <summary>
    /// Scripts only from files of this site. Styles may be inline because MudBlazor positions its menus and dialogs by them.
    /// </summary>
    public const string ContentPolicy =
        "default-src 'self'; base-uri 'self'; object-src 'none'; form-action 'self'; frame-ancestors 'none'; " +
        "img-src 'self' data:; script-src 'self'; connect-src 'self'; style-src 'self' 'unsafe-inline'";

    /// <summary>Puts the headers on every response, errors included; a page is never stored by a shared cache.</summary>
    /// <param name="app">The application.</param>
    public static void UseGuardHeaders(this WebApplication app)
    {
        if (!app.Environment.IsDevelopment())
        {
            app.UseHsts();
        }

        app.Use((context, next) =>
        {
            context.Response.OnStarting(static state =>
            {
                Write(((HttpContext)state).Response);
                return Task.CompletedTask;
            }, context);
            return next(context);
        });
    }

    private static void Write(HttpResponse response)
    {
        var headers = response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "strict-origin-when-cross-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), payment=(), usb=()";
        if (response.ContentType?.StartsWith("text/html", StringComparison.OrdinalIgnoreCase) == true)
        {
            headers.CacheControl = "no-store";
        }
    }
}
