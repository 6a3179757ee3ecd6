using System.Net;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>Short ways to ask for pages.</summary>
public static class Browse
{
    public static async Task<(HttpStatusCode Status, string Page, string? Location)> See(this HttpClient client, string path)
    {
        using var response = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        return await Read(response);
    }

    public static async Task<(HttpStatusCode Status, string Page, string? Location)> Read(this HttpResponseMessage response) =>
        (response.StatusCode,
            await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            response.Leads());

    /// <summary>Where an answer leads: the path and query of its Location, or null.</summary>
    public static string? Leads(this HttpResponseMessage response) =>
        response.Headers.Location is not { } to ? null : to.IsAbsoluteUri ? to.PathAndQuery : to.OriginalString;
}
