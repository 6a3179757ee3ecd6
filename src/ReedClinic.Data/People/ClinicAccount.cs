using Microsoft.AspNetCore.Identity;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>A sign-in. Who sends reeds is a <see cref="Student"/>, who may have none.</summary>
public sealed class ClinicAccount : IdentityUser<Guid>
{
    /// <summary>The longest sealed key of an authenticator app.</summary>
    public const int LongestCodeKey = 500;

    /// <summary>What this person is called on screens and in letters.</summary>
    public string DisplayName { get; set; } = string.Empty;

    /// <summary>When the account was made.</summary>
    public DateTimeOffset CreatedAt { get; set; }

    /// <summary>The form that made it, so that sending it twice makes one account; null when no form did.</summary>
    public OperationId? MadeBy { get; set; }

    /// <summary>Since when nobody may sign in with it; null while somebody may.</summary>
    public DateTimeOffset? DisabledAt { get; set; }

    /// <summary>The key of their authenticator app, sealed; null when they have none.</summary>
    public string? CodeKey { get; set; }

    /// <summary>Since when the app's codes are asked for; null while the key was never tried.</summary>
    public DateTimeOffset? CodeSince { get; set; }

    /// <summary>The time step of the last code that was taken: none is taken twice.</summary>
    public long? LastCodeStep { get; set; }

    /// <summary>Whether a mail about a letter that goes to this person brings the letter's PDF: only once they chose so.</summary>
    public bool LetterFilesByMail { get; set; }

    /// <summary>Whether whoever works here wants one quiet line of what isn’t checked or may be next at the bench: only once they chose so.</summary>
    public bool ReasoningLine { get; set; }
}
