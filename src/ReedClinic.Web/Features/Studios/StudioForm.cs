namespace ReedClinic.Web.Features.Studios;

/// <summary>What was typed about the studio.</summary>
public sealed class StudioForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The version it was opened on.</summary>
    public Guid Version { get; set; }

    /// <summary>What the studio is called.</summary>
    public string? StudioName { get; set; }

    /// <summary>Where parcels are posted to.</summary>
    public string? PostTo { get; set; }

    /// <summary>Where mail is written to.</summary>
    public string? WriteTo { get; set; }
}
