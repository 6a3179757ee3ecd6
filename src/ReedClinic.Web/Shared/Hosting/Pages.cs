using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Diagnostics;
using MudBlazor.Services;
using ReedClinic.Web.Shared.Circuits;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>Pages: plain HTML by default, a live circuit where a page asks for one.</summary>
public static class Pages
{
    /// <summary>Registers what pages need.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddPages(this WebApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddSingleton(TimeProvider.System);
        services.AddRazorComponents(options =>
        {
            options.DetailedErrors = false;
            options.MaxFormMappingCollectionSize = 256;
            options.MaxFormMappingRecursionDepth = 16;
            options.MaxFormMappingErrorCount = 50;
        }).AddInteractiveServerComponents(CircuitsSetup.Bound).AddHubOptions(CircuitsSetup.Bound);
        services.AddMudServices();
        services.AddCascadingAuthenticationState();
        services.AddSingleton<Announcement>();
        // What can't be read is the sender's trouble, at a developer's desk as anywhere.
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = false);
        services.AddHsts(options =>
        {
            options.MaxAge = TimeSpan.FromDays(365);
            options.IncludeSubDomains = true;
        });
        services.AddAntiforgery(options =>
        {
            options.Cookie.Keep("reedclinic-form", builder);
            options.Cookie.SameSite = SameSiteMode.Strict;
        });
    }

    /// <summary>What stands between a request and its page.</summary>
    /// <param name="app">The application.</param>
    public static void UsePages(this WebApplication app)
    {
        app.UseStatusCodePagesWithReExecute("/stopped/{0}", createScopeForStatusCodePages: true);
        app.Use(ReadAgainAsGet);
        app.UseAntiforgery();
        app.Use(TellOthersApart);
    }

    // A page that stayed open while somebody else signed in asks with its own token: to a script that is the same as being signed out, and no broken form.
    private static Task TellOthersApart(HttpContext context, RequestDelegate next)
    {
        if (context.Features.Get<IAntiforgeryValidationFeature>() is not { IsValid: false }
            || context.User.Identity is not { IsAuthenticated: true }
            || !context.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase))
        {
            return next(context);
        }

        context.Features.Get<IStatusCodePagesFeature>()?.Enabled = false;
        context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Task.CompletedTask;
    }

    // The page that says what went wrong is only read: the form that failed must not be taken in again with it.
    private static async Task ReadAgainAsGet(HttpContext context, RequestDelegate next)
    {
        if (context.Features.Get<IStatusCodeReExecuteFeature>() is not null || context.Features.Get<IExceptionHandlerFeature>() is not null)
        {
            context.Request.Method = HttpMethods.Get;
            context.Features.Set<IAntiforgeryValidationFeature>(null);
        }

        await next(context).ConfigureAwait(false);

        // A page that turns a form away has named the kind of its answer and written none: that would be a blank window.
        var response = context.Response;
        if (response is { HasStarted: false, StatusCode: StatusCodes.Status400BadRequest, ContentLength: null } && response.BodyWriter is { CanGetUnflushedBytes: true, UnflushedBytes: 0 })
        {
            response.ContentType = null;
        }
    }

    /// <summary>Maps files and pages.</summary>
    /// <typeparam name="TRoot">The component that writes the whole document.</typeparam>
    /// <param name="app">The application.</param>
    public static void MapPages<TRoot>(this WebApplication app)
        where TRoot : IComponent
    {
        app.MapStaticAssets().AllowAnonymous();
        app.MapRazorComponents<TRoot>().AddInteractiveServerRenderMode(circuit => circuit.ContentSecurityFrameAncestorsPolicy = "'none'");
    }
}
