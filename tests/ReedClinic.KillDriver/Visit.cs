using System.Collections.Concurrent;
using System.Net;
using System.Text.RegularExpressions;
using ReedClinic.Domain.People;

namespace ReedClinic.KillDriver;

/// <summary>A browser without a screen: it keeps cookies and sends forms, and outlives the app it talks to.</summary>
public sealed partial class Visit : IDisposable
{
    private readonly ConcurrentDictionary<string, string> _cookies = new();
    private readonly HttpClient _http = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false });

    /// <summary>Where the app is now; it changes with every start.</summary>
    public Uri Home { get; set; } = new("http://127.0.0.1");

    /// <summary>Signs in by the forms that people use: the password, then the code.</summary>
    public async Task SignInAsync(string email, string password, byte[] codeKey, CancellationToken ct)
    {
        var form = FormWith("Form.Password", await PageAsync("/account/sign-in", ct).ConfigureAwait(false));
        form["Form.Email"] = email;
        form["Form.Password"] = password;
        using var answer = await PostAsync("/account/sign-in", form, ct).ConfigureAwait(false);
        if (answer.StatusCode is not (HttpStatusCode.Found or HttpStatusCode.SeeOther))
        {
            throw new InvalidOperationException($"Signing in gave {(int)answer.StatusCode}: {await answer.Content.ReadAsStringAsync(ct).ConfigureAwait(false)}");
        }

        var code = FormWith("Form.Code", await PageAsync("/account/code", ct).ConfigureAwait(false));
        code["Form.Code"] = TimeCode.Of(codeKey, TimeCode.StepAt(TimeProvider.System.GetUtcNow()));
        using var into = await PostAsync("/account/code", code, ct).ConfigureAwait(false);
        if (into.StatusCode is not (HttpStatusCode.Found or HttpStatusCode.SeeOther))
        {
            throw new InvalidOperationException($"The code gave {(int)into.StatusCode}.");
        }
    }

    /// <summary>The text of a page.</summary>
    public async Task<string> PageAsync(string path, CancellationToken ct)
    {
        using var answer = await SendAsync(new HttpRequestMessage(HttpMethod.Get, new Uri(Home, path)), ct).ConfigureAwait(false);
        return answer.IsSuccessStatusCode
            ? await answer.Content.ReadAsStringAsync(ct).ConfigureAwait(false)
            : throw new InvalidOperationException($"{path} gave {(int)answer.StatusCode} {answer.Headers.Location}");
    }

    /// <summary>The hidden fields of the form on this page that has a field of this name.</summary>
    public static Dictionary<string, string> FormWith(string field, string page)
    {
        var form = Forms().Matches(page).Select(match => match.Value)
            .FirstOrDefault(text => text.Contains($"name=\"{field}\"", StringComparison.Ordinal))
            ?? throw new InvalidOperationException($"No form with a field {field}.");
        return Inputs().Matches(form)
            .Where(input => input.Value.Contains("type=\"hidden\"", StringComparison.Ordinal))
            .ToDictionary(input => Attribute("name", input.Value), input => Attribute("value", input.Value));
    }

    /// <summary>Sends a form, and would like JSON back.</summary>
    public Task<HttpResponseMessage> PostAsync(string path, Dictionary<string, string> form, CancellationToken ct) => SendAsync(
        new HttpRequestMessage(HttpMethod.Post, new Uri(Home, path))
        {
            Content = new FormUrlEncodedContent(form),
            Headers = { { "Accept", "application/json, text/html" } },
        },
        ct);

    /// <inheritdoc />
    public void Dispose() => _http.Dispose();

    private async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken ct)
    {
        using (request)
        {
            request.Headers.Add("X-Forwarded-Proto", "https");
            if (!_cookies.IsEmpty)
            {
                request.Headers.Add("Cookie", string.Join("; ", _cookies.Select(cookie => $"{cookie.Key}={cookie.Value}")));
            }

            var answer = await _http.SendAsync(request, ct).ConfigureAwait(false);
            foreach (var cookie in answer.Headers.TryGetValues("Set-Cookie", out var set) ? set : [])
            {
                var pair = cookie.Split(';', 2)[0].Split('=', 2);
                _cookies[pair[0]] = pair[1];
            }

            return answer;
        }
    }

    private static string Attribute(string name, string tag) =>
        WebUtility.HtmlDecode(Regex.Match(tag, $"\\b{name}=\"([^\"]*)\"").Groups[1].Value);

    [GeneratedRegex("<form\\b.*?</form>", RegexOptions.Singleline)]
    private static partial Regex Forms();

    [GeneratedRegex("<input\\b[^>]*>")]
    private static partial Regex Inputs();
}
