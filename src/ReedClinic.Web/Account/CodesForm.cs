namespace ReedClinic.Web.Account;

/// <summary>What was typed about the second step.</summary>
public sealed class CodesForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The code of this moment.</summary>
    public string? Code { get; set; }

    /// <summary>The password, where it is asked for once more.</summary>
    public string? Password { get; set; }
}
