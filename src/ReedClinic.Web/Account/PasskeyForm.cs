namespace ReedClinic.Web.Account;

/// <summary>What a browser's authenticator said, with a name for a new passkey.</summary>
public sealed class PasskeyForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The answer, as JSON.</summary>
    public string? Credential { get; set; }

    /// <summary>What its owner calls the passkey.</summary>
    public string? Name { get; set; }

    /// <summary>The passkey to be removed, in hexadecimal.</summary>
    public string? Id { get; set; }
}
