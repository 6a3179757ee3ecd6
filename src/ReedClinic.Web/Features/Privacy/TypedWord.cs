using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Privacy;

/// <summary>
/// Carries what somebody typed over the page that asks who they are. It is sealed for them alone and for a while: nobody can
/// hand somebody a link with the word typed already.
/// </summary>
/// <param name="keys">What cookies are sealed with too.</param>
public sealed class TypedWord(IDataProtectionProvider keys)
{
    /// <summary>The longest that is carried, in characters.</summary>
    public const int Longest = 20;

    private static readonly TimeSpan For = TimeSpan.FromMinutes(15);

    /// <summary>What was typed, sealed; null where there is nothing to carry.</summary>
    /// <param name="who">Who typed it.</param>
    /// <param name="typed">What was typed.</param>
    public string? Seal(AccountId who, string? typed) => typed is { Length: > 0 and <= Longest } ? Sealer(who).Protect(typed, For) : null;

    /// <summary>What they had typed; null when it is somebody else's, too old, or no seal of ours.</summary>
    /// <param name="who">Who comes back.</param>
    /// <param name="carried">As it was sealed.</param>
    public string? Open(AccountId who, string? carried)
    {
        if (string.IsNullOrEmpty(carried))
        {
            return null;
        }

        try
        {
            return Sealer(who).Unprotect(carried);
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    private ITimeLimitedDataProtector Sealer(AccountId who) => keys.CreateProtector(nameof(TypedWord), who.Value.ToString()).ToTimeLimitedDataProtector();
}
