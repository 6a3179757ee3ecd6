using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Identity;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Account;

/// <summary>Where a sign-in stands.</summary>
public enum SignInStep
{
    /// <summary>It was refused.</summary>
    No,

    /// <summary>The password was right; a code is asked for.</summary>
    Code,

    /// <summary>They are in.</summary>
    In,
}

/// <summary>Signs a person in. A name that nobody has costs as much work and gets the same words as a wrong password.</summary>
/// <param name="accounts">The accounts.</param>
/// <param name="signIn">Identity's own sign-in, which checks passkeys.</param>
/// <param name="hasher">Checks a password against its hash.</param>
/// <param name="sessions">Who is signed in with which browser.</param>
/// <param name="second">Checks the second step.</param>
/// <param name="wrong">Counts wrong tries.</param>
/// <param name="way">Where somebody was going with this browser, which is nobody else's.</param>
public sealed class SignInDesk(
    UserManager<ClinicAccount> accounts,
    SignInManager<ClinicAccount> signIn,
    IPasswordHasher<ClinicAccount> hasher,
    SessionRegister sessions,
    SecondStepCheck second,
    WrongTries wrong,
    Links.WayOn way)
{
    private const string StayClaim = "stay";
    private const string PasswordRightClaim = "password-right";

    private static readonly ClinicAccount Nobody = new();

    private static string? _nobodysHash;

    private HttpContext Http => signIn.Context;

    /// <summary>Tries an address and a password.</summary>
    /// <param name="email">What was typed.</param>
    /// <param name="password">What was typed.</param>
    /// <param name="stay">Stays signed in after the browser is closed.</param>
    /// <returns>Where the sign-in stands then.</returns>
    public async Task<SignInStep> Try(string? email, string? password, bool stay)
    {
        var account = EmailAddress.ReadAny(email) is { } address ? await accounts.FindByEmailAsync(address).ConfigureAwait(false) : null;
        if (account?.PasswordHash is null || await accounts.IsLockedOutAsync(account).ConfigureAwait(false))
        {
            _nobodysHash ??= hasher.HashPassword(Nobody, "nobody has this password");
            hasher.VerifyHashedPassword(Nobody, _nobodysHash, password ?? "");
            return await RefuseAsync(account is null ? null : new AccountId(account.Id), lockedOut: false).ConfigureAwait(false);
        }

        if (!await accounts.CheckPasswordAsync(account, password ?? "").ConfigureAwait(false))
        {
            return await CountAsync(new AccountId(account.Id)).ConfigureAwait(false);
        }

        // Wrong tries are forgotten once somebody is in, and not before: else each right password would begin the count of
        // wrong codes anew.
        var id = new AccountId(account.Id);
        if (await second.IsAskedOfAsync(id, Http.RequestAborted).ConfigureAwait(false))
        {
            await RememberAsync(id, stay).ConfigureAwait(false);
            return SignInStep.Code;
        }

        await wrong.ForgetAsync(id, Http.RequestAborted).ConfigureAwait(false);
        return await BeginAsync(id, SignInWay.Password, stay).ConfigureAwait(false);
    }

    /// <summary>Whether a right password waits for its code in this browser.</summary>
    public async Task<bool> IsCodeDue() => await RememberedAsync().ConfigureAwait(false) is not null;

    /// <summary>Tries the code after the password. Wrong codes count as wrong passwords do.</summary>
    /// <param name="typed">Six digits, or a recovery code.</param>
    /// <returns>Where the sign-in stands then; <see cref="SignInStep.No"/> when it has to begin anew.</returns>
    public async Task<SignInStep> TryCode(string? typed)
    {
        if (await RememberedAsync().ConfigureAwait(false) is not { } due
            || await accounts.FindByIdAsync(due.Account.Value.ToString()).ConfigureAwait(false) is not { } account
            || await accounts.IsLockedOutAsync(account).ConfigureAwait(false))
        {
            await Http.SignOutAsync(IdentityConstants.TwoFactorUserIdScheme).ConfigureAwait(false);
            return SignInStep.No;
        }

        if (await second.TakeAsync(due.Account, typed, Http.RequestAborted).ConfigureAwait(false) is { } step)
        {
            await Http.SignOutAsync(IdentityConstants.TwoFactorUserIdScheme).ConfigureAwait(false);
            return await BeginAsync(due.Account, step, due.Stay).ConfigureAwait(false);
        }

        await CountAsync(due.Account).ConfigureAwait(false);
        return SignInStep.Code;
    }

    /// <summary>Tries a passkey. It is never locked out: a flood of wrong passwords must not keep out whoever has one.</summary>
    /// <param name="credential">What the browser's authenticator said, as JSON.</param>
    /// <param name="stay">Stays signed in after the browser is closed.</param>
    /// <param name="only">The only account that is meant; null for any.</param>
    /// <returns>Where the sign-in stands then.</returns>
    public async Task<SignInStep> TryPasskey(string? credential, bool stay, AccountId? only = null)
    {
        var result = await AssertAsync(credential).ConfigureAwait(false);
        if (result is not { Succeeded: true } || (only is { } one && result.User.Id != one.Value))
        {
            return await RefuseAsync(null, lockedOut: false).ConfigureAwait(false);
        }

        await accounts.AddOrUpdatePasskeyAsync(result.User, result.Passkey).ConfigureAwait(false);
        return await BeginAsync(new AccountId(result.User.Id), SignInWay.Passkey, stay).ConfigureAwait(false);
    }

    /// <summary>Counts a wrong password that was typed on a page inside, as if it had been typed at the door.</summary>
    /// <param name="who">Whose page it is.</param>
    public Task CountWrong(AccountId who) => CountAsync(who);

    /// <summary>Begins a session for somebody who has just proved who they are on a page of their own.</summary>
    /// <param name="who">The account.</param>
    /// <param name="by">How they proved it.</param>
    public Task Welcome(AccountId who, SignInWay by = SignInWay.Password) => BeginAsync(who, by, stay: false);

    /// <summary>Ends the session of this browser.</summary>
    public async Task SignOut()
    {
        if (SessionCookie.SessionOf(Http.User) is { } session)
        {
            await sessions.EndAsync(session, default).ConfigureAwait(false);
        }

        await Http.SignOutAsync(IdentityConstants.ApplicationScheme).ConfigureAwait(false);
        way.Forget(Http);
    }

    private async Task<PasskeyAssertionResult<ClinicAccount>?> AssertAsync(string? credential)
    {
        if (credential is not { Length: > 0 and <= 20_000 })
        {
            return null;
        }

        try
        {
            return await signIn.PerformPasskeyAssertionAsync(credential).ConfigureAwait(false);
        }
        catch (InvalidOperationException)
        {
            // Nothing was asked of this browser, or it took too long.
            return null;
        }
    }

    private async Task<SignInStep> BeginAsync(AccountId account, SignInWay by, bool stay)
    {
        var before = SessionCookie.SessionOf(Http.User);
        if (await sessions.BeginAsync(account, by, Device.Of(Http.Request), before, Http.RequestAborted).ConfigureAwait(false) is not { } session)
        {
            // The account is closed.
            return await RefuseAsync(account, lockedOut: false).ConfigureAwait(false);
        }

        await Http.SignInAsync(
            IdentityConstants.ApplicationScheme,
            SessionCookie.Of(session),
            new AuthenticationProperties { IsPersistent = stay || await StaysAsync(account).ConfigureAwait(false) }).ConfigureAwait(false);
        way.Forget(Http);
        return SignInStep.In;
    }

    // Whoever chose to stay signed in, and proves once more who they are, stays so.
    private async Task<bool> StaysAsync(AccountId account) =>
        Http.User.Account() == account
        && (await Http.AuthenticateAsync(IdentityConstants.ApplicationScheme).ConfigureAwait(false)).Properties?.IsPersistent == true;

    // To its end, also when whoever tries doesn't wait for the answer.
    private async Task<SignInStep> CountAsync(AccountId account) =>
        await RefuseAsync(account, await wrong.CountAsync(account, CancellationToken.None).ConfigureAwait(false)).ConfigureAwait(false);

    private async Task<SignInStep> RefuseAsync(AccountId? account, bool lockedOut)
    {
        await sessions.RefuseAsync(account, lockedOut, Http.RequestAborted).ConfigureAwait(false);
        return SignInStep.No;
    }

    // In a sealed cookie of five minutes: who gave the right password, and nothing else.
    private Task RememberAsync(AccountId account, bool stay)
    {
        var identity = new ClaimsIdentity(
            [new Claim(PasswordRightClaim, account.Value.ToString()), new Claim(StayClaim, stay.ToString())], IdentityConstants.TwoFactorUserIdScheme);
        return Http.SignInAsync(IdentityConstants.TwoFactorUserIdScheme, new ClaimsPrincipal(identity));
    }

    private async Task<(AccountId Account, bool Stay)?> RememberedAsync()
    {
        var kept = await Http.AuthenticateAsync(IdentityConstants.TwoFactorUserIdScheme).ConfigureAwait(false);
        return Guid.TryParse(kept.Principal?.FindFirstValue(PasswordRightClaim), out var id)
            ? (new AccountId(id), kept.Principal!.FindFirstValue(StayClaim) == bool.TrueString)
            : null;
    }
}
