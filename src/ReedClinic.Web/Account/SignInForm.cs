namespace ReedClinic.Web.Account;

/// <summary>What was typed to sign in.</summary>
public sealed class SignInForm
{
    /// <summary>The address.</summary>
    public string? Email { get; set; }

    /// <summary>The password; never shown again.</summary>
    public string? Password { get; set; }

    /// <summary>The code after the password.</summary>
    public string? Code { get; set; }

    /// <summary>Stays signed in after the browser is closed.</summary>
    public bool Stay { get; set; }
}
