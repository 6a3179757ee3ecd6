namespace ReedClinic.Web.Features.Guardians;

/// <summary>What a student typed about their guardian.</summary>
public sealed class GuardianForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>What the guardian is called.</summary>
    public string? Name { get; set; }

    /// <summary>Where a mail reaches them.</summary>
    public string? Email { get; set; }
}

/// <summary>Which side of the set age a student is on, as the form spells it.</summary>
public sealed class AgeForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The answer.</summary>
    public string? Age { get; set; }
}

/// <summary>What a guardian typed to agree.</summary>
public sealed class AgreeForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>What they want to be called.</summary>
    public string? Name { get; set; }

    /// <summary>Their password; never shown again.</summary>
    public string? Password { get; set; }
}

/// <summary>A guardian's no.</summary>
public sealed class NoForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }
}
