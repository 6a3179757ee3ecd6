namespace ReedClinic.Web.Shared.Insight;

/// <summary>Where figures and traces go; nowhere unless a setting says so.</summary>
/// <param name="Otlp">A collector that speaks OTLP over HTTP, without the signal's own path; null for nobody.</param>
/// <param name="Headers">What that collector wants to be shown, as <c>name=value</c> with commas; null for nothing.</param>
public sealed record InsightSettings(Uri? Otlp, string? Headers)
{
    /// <summary>The one setting that turns it on.</summary>
    public const string Address = "Insight:Otlp";

    /// <summary>A key that the collector asks for had better come from <c>Secrets:Folder</c>.</summary>
    public const string Key = "Insight:Headers";

    /// <summary>Reads them.</summary>
    /// <param name="settings">The host's settings.</param>
    /// <exception cref="InvalidOperationException">The address is none.</exception>
    public static InsightSettings Read(IConfiguration settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (settings[Address] is not { Length: > 0 } said)
        {
            return new(null, null);
        }

        return Uri.TryCreate(said.TrimEnd('/') + "/", UriKind.Absolute, out var address) && (address.Scheme == Uri.UriSchemeHttp || address.Scheme == Uri.UriSchemeHttps)
            ? new(address, settings[Key])
            : throw new InvalidOperationException($"{Address} is '{said}'; it has to be the address of a collector, such as http://127.0.0.1:4318.");
    }
}
