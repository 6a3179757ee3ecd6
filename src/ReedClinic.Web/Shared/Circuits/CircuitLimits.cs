namespace ReedClinic.Web.Shared.Circuits;

/// <summary>How many circuits one account may have, and from which sites; the settings under <c>Circuits</c>.</summary>
public sealed class CircuitLimits
{
    /// <summary>Where the settings stand.</summary>
    public const string Section = "Circuits";

    /// <summary>How many pages with a circuit one account may work in at a time. One more is told so, kindly.</summary>
    public int PerAccount { get; set; } = 10;

    /// <summary>How many connections one account may have at a time. One more is refused: no person has so many tabs.</summary>
    public int ConnectionsPerAccount { get; set; } = 30;

    /// <summary>
    /// Other sites' origins that may connect, with commas; nobody's by default. For a proxy that hands a request on under
    /// another host name than the one in the browser's address line.
    /// </summary>
    public string? Origins { get; set; }

    /// <summary>Whether the numbers make sense together.</summary>
    public bool IsSound => PerAccount >= 1 && ConnectionsPerAccount >= PerAccount;

    /// <summary>Whether a browser that is on a page of this origin may connect to this site.</summary>
    /// <param name="origin">The request's <c>Origin</c>, as the browser wrote it.</param>
    /// <param name="own">This site's own origin.</param>
    public bool Allows(string origin, string own) =>
        string.Equals(origin, own, StringComparison.OrdinalIgnoreCase)
        || (Origins ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Contains(origin, StringComparer.OrdinalIgnoreCase);
}
