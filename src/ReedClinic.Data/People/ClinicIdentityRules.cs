using Microsoft.AspNetCore.Identity;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>What Identity must be told, in one place for the app, the migrations and the tests.</summary>
public static class ClinicIdentityRules
{
    /// <summary>The third schema has the passkey table.</summary>
    internal static void Schema(IdentityOptions options) => options.Stores.SchemaVersion = IdentitySchemaVersions.Version3;

    /// <summary>
    /// Length is what makes a password strong, so nothing is asked of its letters (NIST SP 800-63B-4: at least
    /// 15 characters where the password is the only factor, no composition rules).
    /// </summary>
    internal static void Accounts(IdentityOptions options)
    {
        Schema(options);
        options.User.RequireUniqueEmail = true;
        options.User.AllowedUserNameCharacters = string.Empty; // the name is the address, and any address will do
        options.Password.RequiredLength = PasswordRule.Shortest;
        options.Password.RequiredUniqueChars = 1;
        options.Password.RequireDigit = false;
        options.Password.RequireLowercase = false;
        options.Password.RequireUppercase = false;
        options.Password.RequireNonAlphanumeric = false;
        options.Lockout.AllowedForNewUsers = true;
        options.Lockout.MaxFailedAccessAttempts = WrongTries.Most;
        options.Lockout.DefaultLockoutTimeSpan = WrongTries.Rest;
    }

    /// <summary>The OWASP ASVS 5.0 floor (appendix C) for PBKDF2 with HMAC-SHA-512.</summary>
    internal static void Hashing(PasswordHasherOptions options) => options.IterationCount = 210_000;
}
