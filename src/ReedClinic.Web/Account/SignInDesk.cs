using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Identity;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Account;

/// <summary>Signs a person in. A name that nobody has costs as much work and gets the same words as a wrong password.</summary>
/// <param name="accounts">The accounts.</param>
/// <param name="signIn">Identity's own sign-in, which counts wrong tries.</param>
/// <param name="hasher">Checks a password against its hash.</param>
/// <param name="sessions">Who is signed in with which browser.</param>
public sealed class SignInDesk(
    UserManager<ClinicAccount> accounts, SignInManager<ClinicAccount> signIn, IPasswordHasher<ClinicAccount> hasher, SessionRegister sessions)
{
    private static readonly ClinicAccount Nobody = new();

    private static string? _nobodysHash;

    /// <summary>Tries an address and a password.</summary>
    /// <param name="email">What was typed.</param>
    /// <param name="password">What was typed.</param>
    /// <param name="stay">Stays signed in after the browser is closed.</param>
    /// <returns>True when the person is now signed in.</returns>
    public async Task<bool> Try(string? email, string? password, bool stay)
    {
        var account = EmailAddress.Read(email) is { } address ? await accounts.FindByEmailAsync(address).ConfigureAwait(false) : null;
        if (account is null || await accounts.IsLockedOutAsync(account).ConfigureAwait(false))
        {
            _nobodysHash ??= hasher.HashPassword(Nobody, "nobody has this password");
            hasher.VerifyHashedPassword(Nobody, _nobodysHash, password ?? "");
            return false;
        }

        var result = await signIn.CheckPasswordSignInAsync(account, password ?? "", lockoutOnFailure: true).ConfigureAwait(false);
        return result.Succeeded && await BeginAsync(new AccountId(account.Id), SignInWay.Password, stay).ConfigureAwait(false);
    }

    /// <summary>Signs in the person who has just made an account.</summary>
    /// <param name="made">The new account.</param>
    public Task Welcome(AccountId made) => BeginAsync(made, SignInWay.Password, stay: false);

    /// <summary>Ends the session of this browser.</summary>
    public async Task SignOut()
    {
        if (SessionCookie.SessionOf(signIn.Context.User) is { } session)
        {
            await sessions.EndAsync(session, default).ConfigureAwait(false);
        }

        await signIn.Context.SignOutAsync(IdentityConstants.ApplicationScheme).ConfigureAwait(false);
    }

    private async Task<bool> BeginAsync(AccountId account, SignInWay way, bool stay)
    {
        var http = signIn.Context;
        var before = SessionCookie.SessionOf(http.User);
        if (await sessions.BeginAsync(account, way, Device.Of(http.Request), before, http.RequestAborted).ConfigureAwait(false) is not { } session)
        {
            return false;
        }

        await http.SignInAsync(
            IdentityConstants.ApplicationScheme, SessionCookie.Of(session), new AuthenticationProperties { IsPersistent = stay }).ConfigureAwait(false);
        return true;
    }
}
