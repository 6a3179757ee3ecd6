using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace ReedClinic.Circuits;

/// <summary>A browser without a screen: it keeps its cookies and follows no redirects.</summary>
public sealed class CookieClient : HttpClient
{
    private CookieClient(CookieContainer cookies, Uri site)
        : base(new SocketsHttpHandler { CookieContainer = cookies, AllowAutoRedirect = false }) =>
        (Cookies, BaseAddress) = (cookies, site);

    /// <summary>Its cookies.</summary>
    public CookieContainer Cookies { get; }

    /// <summary>A new one.</summary>
    /// <param name="site">The site that its addresses begin at.</param>
    public static CookieClient For(Uri site) => new(new CookieContainer(), site);
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
