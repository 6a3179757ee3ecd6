namespace ReedClinic.Web.Account;

/// <summary>What browser somebody has, in words they know it by. Only a rough guess is kept, never the header itself.</summary>
public static class Device
{
    // The first that is found counts: most browsers name others too.
    private static readonly (string Mark, string Name)[] Browsers =
        [("Edg", "Edge"), ("OPR/", "Opera"), ("Firefox/", "Firefox"), ("SamsungBrowser", "Samsung Internet"), ("Chrom", "Chrome"), ("Safari/", "Safari")];

    private static readonly (string Mark, string Name)[] Systems =
        [("iPhone", "an iPhone"), ("iPad", "an iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Mac OS", "a Mac"), ("CrOS", "a Chromebook"), ("Linux", "Linux")];

    /// <summary>The browser that sent a request.</summary>
    /// <param name="request">The request.</param>
    /// <returns>Such as “Firefox on Android”.</returns>
    public static string Of(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var header = request.Headers.UserAgent.ToString();
        var browser = Find(Browsers, header);
        var system = Find(Systems, header);
        return (browser, system) switch
        {
            (null, null) => "another browser",
            (null, { } on) => $"a browser on {on}",
            ({ } name, null) => name,
            ({ } name, { } on) => $"{name} on {on}",
        };
    }

    private static string? Find((string Mark, string Name)[] known, string header) =>
        known.FirstOrDefault(one => header.Contains(one.Mark, StringComparison.Ordinal)).Name;
}
