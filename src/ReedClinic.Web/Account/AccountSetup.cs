using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;
using ReedClinic.Web.Shared.Circuits;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Account;

/// <summary>Who may come in: cookies, roles, and the forms that end in a redirect.</summary>
public static class AccountSetup
{
    /// <summary>A policy for pages where people work: teachers and owners.</summary>
    public const string WorksHere = nameof(WorksHere);

    /// <summary>A policy for pages that change the studio itself: owners.</summary>
    public const string OwnsStudio = nameof(OwnsStudio);

    /// <summary>Adds sign-in to the accounts that the data project keeps.</summary>
    /// <param name="builder">The host that is being built.</param>
    /// <param name="accounts">Identity's builder, as the data project gave it.</param>
    public static void AddAccounts(this WebApplicationBuilder builder, IdentityBuilder accounts)
    {
        accounts.AddSignInManager();
        var services = builder.Services;
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.ConfigureApplicationCookie(cookie => Shape(cookie, builder));
        services.Configure<CookieAuthenticationOptions>(IdentityConstants.TwoFactorUserIdScheme, cookie =>
        {
            cookie.Cookie.Keep("reedclinic-step", builder);
            cookie.Cookie.SameSite = SameSiteMode.Strict;
        });
        services.Configure<IdentityPasskeyOptions>(passkeys =>
        {
            // Discoverable ones only: to use one, nobody has to say who they are.
            passkeys.ResidentKeyRequirement = "required";
            passkeys.UserVerificationRequirement = "required";
            passkeys.ServerDomain = Uri.TryCreate(builder.Configuration["Web:Address"], UriKind.Absolute, out var address) ? address.Host : null;
        });
        services.AddAuthorizationBuilder()
            .AddPolicy(WorksHere, policy => policy.RequireRole(nameof(Role.Teacher), nameof(Role.Owner)))
            .AddPolicy(OwnsStudio, policy => policy.RequireRole(nameof(Role.Owner)));
        services.AddScoped<ActorAccess>();
        services.AddScoped<SignInDesk>();
    }

    /// <summary>Reads who asks, before any page is chosen.</summary>
    /// <param name="app">The application.</param>
    public static void UseAccounts(this WebApplication app)
    {
        // The demo has nothing to protect, and nobody should have to set up a phone to look around in it.
        app.Services.GetRequiredService<SessionRegister>().PasswordWillDo = app.Environment.IsDevelopment();
        app.UseAuthentication();
        app.UseAuthorization();
    }

    /// <summary>Signing out is a form of its own, because a link must never change anything.</summary>
    /// <param name="app">The application.</param>
    public static void MapAccounts(this WebApplication app) =>
        app.MapPost("/account/sign-out", async (SignInDesk desk, OpenCircuits circuits, ActorAccess actors, BeginBook begins, HttpContext context, IFormCollection form) =>
        {
            // The form is bound so that its token is checked before anything happens.
            ArgumentNullException.ThrowIfNull(form);
            var account = context.User.Account();
            if (form["Sure"] != "yes"
                && await actors.Of(context.User, context.RequestAborted).ConfigureAwait(false) is { } actor
                && await begins.IsUnclaimedAsync(actor, context.RequestAborted).ConfigureAwait(false))
            {
                return Results.LocalRedirect("/account/leaving"); // they couldn't sign in again: told first
            }

            await desk.SignOut().ConfigureAwait(false);
            if (account is { } left)
            {
                circuits.TellAll(left);
            }

            context.Response.Headers["Clear-Site-Data"] = "\"cache\"";
            return Results.LocalRedirect(LocalPath.OrHome(form["back"]));
        }).AllowAnonymous();

    private static void Shape(CookieAuthenticationOptions cookie, WebApplicationBuilder builder)
    {
        cookie.Cookie.Keep("reedclinic", builder);
        cookie.Cookie.SameSite = SameSiteMode.Lax;
        cookie.ExpireTimeSpan = SessionRules.StudentLongest; // the session itself ends sooner, in the database
        cookie.SlidingExpiration = false;
        cookie.Events.OnValidatePrincipal = SessionCookie.ReadAsync;
        cookie.Events.OnRedirectToAccessDenied = async context =>
        {
            await RefusalNotes.NoteAsync(context.HttpContext).ConfigureAwait(false);
            context.Response.Redirect(context.RedirectUri);
        };
        cookie.LoginPath = "/account/sign-in";
        cookie.AccessDeniedPath = "/account/not-yours";
        cookie.ReturnUrlParameter = "back";
    }
}
