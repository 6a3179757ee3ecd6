using Microsoft.AspNetCore.Identity;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Account;

/// <summary>Signs a person in. A name that nobody has costs as much work and gets the same words as a wrong password.</summary>
/// <param name="accounts">The accounts.</param>
/// <param name="signIn">Identity's own sign-in, which counts wrong tries.</param>
/// <param name="hasher">Checks a password against its hash.</param>
public sealed class SignInDesk(UserManager<ClinicAccount> accounts, SignInManager<ClinicAccount> signIn, IPasswordHasher<ClinicAccount> hasher)
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

        var result = await signIn.PasswordSignInAsync(account, password ?? "", stay, lockoutOnFailure: true).ConfigureAwait(false);
        return result.Succeeded;
    }

    /// <summary>Signs in the person who has just made an account.</summary>
    /// <param name="made">The new account.</param>
    public async Task Welcome(AccountId made)
    {
        if (await accounts.FindByIdAsync(made.Value.ToString()).ConfigureAwait(false) is { } account)
        {
            await signIn.SignInAsync(account, isPersistent: false).ConfigureAwait(false);
        }
    }
}
