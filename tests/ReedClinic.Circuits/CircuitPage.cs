using System.Net;
using System.Net.Security;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace ReedClinic.Circuits;

/// <summary>A browser without a screen: it keeps its cookies and follows no redirects.</summary>
public sealed class CookieClient : HttpClient
{
    private CookieClient(CookieContainer cookies, Uri site, X509Certificate2? authority)
        : base(new SocketsHttpHandler { CookieContainer = cookies, AllowAutoRedirect = false, SslOptions = { RemoteCertificateValidationCallback = Believes(authority) } }) =>
        (Cookies, BaseAddress, Believed) = (cookies, site, Believes(authority));

    /// <summary>Its cookies.</summary>
    public CookieContainer Cookies { get; }

    /// <summary>Whether a site is the one it says it is; null to ask the machine's own authorities.</summary>
    public RemoteCertificateValidationCallback? Believed { get; }

    /// <summary>A new one.</summary>
    /// <param name="site">The site that its addresses begin at.</param>
    /// <param name="authority">The only one that it believes; null for those that the machine believes.</param>
    public static CookieClient For(Uri site, X509Certificate2? authority = null) => new(new CookieContainer(), site, authority);

    private static RemoteCertificateValidationCallback? Believes(X509Certificate2? authority) => authority is null ? null : (_, shown, chain, problems) =>
    {
        if (shown is not X509Certificate2 certificate || chain is null || (problems & ~SslPolicyErrors.RemoteCertificateChainErrors) != SslPolicyErrors.None)
        {
            return false;
        }

        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Clear();
        chain.ChainPolicy.CustomTrustStore.Add(authority);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        return chain.Build(certificate);
    };
}

/// <summary>A page that was fetched, with what a circuit for it is started from.</summary>
/// <param name="Address">Where it is.</param>
/// <param name="Status">How it was answered.</param>
/// <param name="Html">What was answered.</param>
/// <param name="Markers">The components that want a circuit, as the server signed them.</param>
/// <param name="State">What the page remembers for its circuit.</param>
public sealed partial record CircuitPage(Uri Address, HttpStatusCode Status, string Html, IReadOnlyList<string> Markers, string State)
{
    /// <summary>Fetches a page.</summary>
    /// <param name="client">Who asks.</param>
    /// <param name="path">Its path.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task<CircuitPage> ReadAsync(CookieClient client, string path, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(client);
        var address = new Uri(client.BaseAddress!, path);
        using var answer = await client.GetAsync(address, ct).ConfigureAwait(false);
        var html = await answer.Content.ReadAsStringAsync(ct).ConfigureAwait(false);
        return new(address, answer.StatusCode, html, [.. Marked(html)], Remembered().Match(html).Groups[1].Value);
    }

    /// <summary>The order to put this page's components on a circuit.</summary>
    internal string Operations
    {
        get
        {
            var operations = new JsonArray();
            foreach (var (marker, number) in Markers.Select((marker, index) => (marker, index + 1)))
            {
                operations.Add(new JsonObject { ["type"] = "add", ["ssrComponentId"] = number, ["marker"] = JsonNode.Parse(marker) });
            }

            return new JsonObject { ["batchId"] = 1, ["operations"] = operations }.ToJsonString();
        }
    }

    // A component that was drawn beforehand has a marker before and one after it; only the first carries what was signed.
    private static IEnumerable<string> Marked(string html)
    {
        foreach (Match match in Marker().Matches(html))
        {
            using var marker = JsonDocument.Parse(match.Groups[1].Value);
            if (marker.RootElement.TryGetProperty("descriptor", out _))
            {
                yield return match.Groups[1].Value;
            }
        }
    }

    [GeneratedRegex(@"<!--Blazor:(\{.*?\})-->", RegexOptions.Singleline)]
    private static partial Regex Marker();

    [GeneratedRegex(@"<!--Blazor-Server-Component-State:(.*?)-->", RegexOptions.Singleline)]
    private static partial Regex Remembered();
}
