using Microsoft.AspNetCore.Identity;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>A sign-in. Who sends reeds is a <see cref="Student"/>, who may have none.</summary>
public sealed class ClinicAccount : IdentityUser<Guid>
{
    /// <summary>What this person is called on screens and in letters.</summary>
    public string DisplayName { get; set; } = string.Empty;

    /// <summary>When the account was made.</summary>
    public DateTimeOffset CreatedAt { get; set; }

    /// <summary>The form that made it, so that sending it twice makes one account; null when no form did.</summary>
    public OperationId? MadeBy { get; set; }
}
