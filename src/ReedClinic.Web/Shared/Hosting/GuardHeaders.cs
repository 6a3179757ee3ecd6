using Microsoft.AspNetCore.StaticAssets;

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

    /// <summary>For what somebody sent: it is looked at and heard, and as a page of its own it can do nothing.</summary>
    public const string FilePolicy = "sandbox; default-src 'none'; img-src 'self'; media-src 'self'; style-src 'unsafe-inline'; frame-ancestors 'none'";

    /// <summary>
    /// Puts the headers on every response, errors included. Nothing is stored anywhere but files that come with the program;
    /// no address is told to another site, because it may hold a link that works once.
    /// </summary>
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
        app.Use(RefuseTrace);
    }

    // TRACE sends a request back as it came, cookies included: RFC 9110, 9.3.8.
    private static Task RefuseTrace(HttpContext context, RequestDelegate next)
    {
        if (!HttpMethods.IsTrace(context.Request.Method))
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
        return Task.CompletedTask;
    }

    // What answers in its stead, such as the way to sign in, is a page like any other.
    private static bool IsFile(HttpResponse response) => response.StatusCode is < StatusCodes.Status300MultipleChoices or StatusCodes.Status304NotModified
        && response.HttpContext.GetEndpoint()?.Metadata.GetMetadata<SandboxedFile>() is not null;

    private static void Write(HttpResponse response)
    {
        var headers = response.Headers;
        headers.ContentSecurityPolicy = IsFile(response) ? FilePolicy : ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "same-origin"; // "no-referrer" would make a form’s own Origin null
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(self), payment=(), usb=()";
        if (response.HttpContext.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is null || response.StatusCode >= StatusCodes.Status400BadRequest)
        {
            headers.CacheControl = "no-store";
        }

        if (response.HttpContext.GetEndpoint()?.Metadata.GetMetadata<SecretAddressAttribute>() is not null)
        {
            headers["Referrer-Policy"] = "no-referrer"; // no form stands on such a page
            headers["X-Robots-Tag"] = "noindex, nofollow";
            headers.CacheControl = "private, no-store";
            headers.Remove("Set-Cookie"); // nothing to be known again by: the framework would give every page a cookie for forms
        }
    }
}
