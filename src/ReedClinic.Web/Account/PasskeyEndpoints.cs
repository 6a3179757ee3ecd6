using Microsoft.AspNetCore.Identity;
using ReedClinic.Data.People;

namespace ReedClinic.Web.Account;

/// <summary>
/// What a browser needs to know to make or use a passkey. To use one it is never told whose: whoever asks learns nothing about
/// who has an account. OWASP ASVS 5.0: 6.3.8, 6.7.2.
/// </summary>
public static class PasskeyEndpoints
{
    /// <summary>Maps both questions.</summary>
    /// <param name="app">The application.</param>
    public static void MapPasskeys(this WebApplication app)
    {
        app.MapPost("/account/passkey/use", UseAsync).AllowAnonymous();
        app.MapPost("/account/passkey/make", MakeAsync).RequireAuthorization();
    }

    // The forms are bound so that their tokens are checked before anything happens.
    private static async Task<IResult> UseAsync(SignInManager<ClinicAccount> signIn, IFormCollection form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return Results.Content(await signIn.MakePasskeyRequestOptionsAsync(null).ConfigureAwait(false), "application/json");
    }

    private static async Task<IResult> MakeAsync(
        SignInManager<ClinicAccount> signIn, ActorAccess actors, SignInBook book, HttpContext http, IFormCollection form)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (await actors.Of(http.User, http.RequestAborted).ConfigureAwait(false) is not { } actor
            || await book.ReadAsync(actor, http.RequestAborted).ConfigureAwait(false) is not { } means)
        {
            return Results.NotFound();
        }

        if (!actor.IsFresh)
        {
            return Results.StatusCode(StatusCodes.Status403Forbidden);
        }

        var options = await signIn.MakePasskeyCreationOptionsAsync(
            new PasskeyUserEntity { Id = actor.Account.Value.ToString(), Name = means.Email, DisplayName = means.Name }).ConfigureAwait(false);
        return Results.Content(options, "application/json");
    }
}
