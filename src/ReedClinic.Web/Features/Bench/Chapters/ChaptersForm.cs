namespace ReedClinic.Web.Features.Bench.Chapters;

/// <summary>Where a bench video can be seen and when it begins, as it was typed, with what was kept when the page was shown.</summary>
public sealed class ChaptersForm
{
    /// <summary>The address.</summary>
    public string? Link { get; set; }

    /// <summary>When it begins.</summary>
    public string? Zero { get; set; }

    /// <summary>The address that was kept.</summary>
    public string? SeenLink { get; set; }

    /// <summary>The beginning that was kept.</summary>
    public string? SeenZero { get; set; }

    /// <summary>True where the chapters are only looked at.</summary>
    public bool Only { get; set; }
}
