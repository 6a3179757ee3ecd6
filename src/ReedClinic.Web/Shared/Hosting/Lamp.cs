using Microsoft.AspNetCore.Mvc;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>Lamp mode: dark and warm, for working beside a backlight. Remembered in a cookie; without one the device decides.</summary>
public static class Lamp
{
    private const string Cookie = "reedclinic-lamp";

    /// <summary>What the choice is in this request: <c>on</c>, <c>off</c> or <c>device</c>.</summary>
    /// <param name="request">The request.</param>
    /// <returns>The value for the document's <c>data-lamp</c>.</returns>
    public static string Of(HttpRequest? request) =>
        request?.Cookies[NameFor(request)] is "on" or "off" ? request.Cookies[NameFor(request)]! : "device";

    /// <summary>Whether a cookie is the one that remembers the choice.</summary>
    /// <param name="cookie">Its name.</param>
    public static bool IsLamp(string cookie) => cookie is Cookie or "__Host-" + Cookie;

    /// <summary>A plain form posts the choice and comes back to the page it was on.</summary>
    /// <param name="app">The application.</param>
    public static void MapLamp(this WebApplication app) =>
        app.MapPost("/lamp", (HttpContext context, [FromForm] string lamp, [FromForm] string? back) =>
        {
            context.Response.Cookies.Append(NameFor(context.Request), lamp == "on" ? "on" : "off", new CookieOptions
            {
                MaxAge = TimeSpan.FromDays(365),
                HttpOnly = true,
                IsEssential = true,
                SameSite = SameSiteMode.Lax,
                Secure = context.Request.IsHttps,
            });
            return Results.LocalRedirect(LocalPath.OrHome(back));
        }).AllowAnonymous();

    // Over https it says in its name that nobody but this site has set it; by plain http browsers refuse such a name.
    private static string NameFor(HttpRequest request) => request.IsHttps ? "__Host-" + Cookie : Cookie;
}
