namespace ReedClinic.Web.Features.Studios;

/// <summary>What was typed about how long records are kept.</summary>
public sealed class KeepForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The version it was opened on.</summary>
    public Guid Version { get; set; }

    /// <summary>How many years records are kept.</summary>
    public string? KeepYears { get; set; }

    /// <summary>Whom to ask.</summary>
    public string? PrivacyContact { get; set; }

    /// <summary>The studio's own words.</summary>
    public string? PrivacyWords { get; set; }
}
