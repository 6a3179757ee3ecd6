using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>A form as a browser sees it: every field with what stands in it, the hidden ones included.</summary>
public sealed class Form
{
    private readonly HttpClient _client;
    private readonly string _action;
    private readonly List<KeyValuePair<string, string>> _fields;

    private Form(HttpClient client, string action, List<KeyValuePair<string, string>> fields) =>
        (_client, _action, _fields) = (client, action, fields);

    /// <summary>The form at a path; the one whose action is named, else the one that is marked as the page's own.</summary>
    public static async Task<Form> At(HttpClient client, string path, string? action = null)
    {
        using var response = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        return Of(client, path, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), action);
    }

    /// <summary>The form in a page that was read already.</summary>
    public static Form Of(HttpClient client, string path, string page, string? action = null)
    {
        using var document = new HtmlParser().ParseDocument(page);
        var form = (action is null
            ? document.QuerySelector("main form[method=post]")
            : document.QuerySelector($"form[action='{action}']")) as IHtmlFormElement;
        Assert.NotNull(form);
        return new Form(client, form.GetAttribute("action") is { Length: > 0 } own ? own : path, [.. Fields(form)]);
    }

    /// <summary>One of several forms in a page that was read already, by its name.</summary>
    public static Form Named(HttpClient client, string path, string page, string name)
    {
        using var document = new HtmlParser().ParseDocument(page);
        var form = document.QuerySelector($"form:has(input[name='_handler'][value='{name}'])") as IHtmlFormElement;
        Assert.NotNull(form);
        return new Form(client, path, [.. Fields(form)]);
    }

    /// <summary>What stands in a field.</summary>
    public string? this[string name] => _fields.Where(f => f.Key == name).Select(f => f.Value).FirstOrDefault();

    /// <summary>Types into a field, or ticks a choice.</summary>
    public Form Set(string name, string value)
    {
        _fields.RemoveAll(f => f.Key == name);
        _fields.Add(new(name, value));
        return this;
    }

    /// <summary>Leaves a field out.</summary>
    public Form Without(string name)
    {
        _fields.RemoveAll(f => f.Key == name);
        return this;
    }

    /// <summary>Sends it.</summary>
    public Task<HttpResponseMessage> Post() => PostTo(_action);

    /// <summary>Sends it somewhere else, as a script does.</summary>
    public async Task<HttpResponseMessage> PostTo(string path)
    {
        using var content = new FormUrlEncodedContent(_fields);
        return await _client.PostAsync(new Uri(path, UriKind.Relative), content, TestContext.Current.CancellationToken);
    }

    /// <summary>Sends something that isn't a form, with the form's token in a header, as a script does.</summary>
    public async Task<HttpResponseMessage> SendTo(HttpMethod method, string path, byte[]? body = null)
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative)) { Content = new ByteArrayContent(body ?? []) };
        request.Headers.Add("RequestVerificationToken", this["__RequestVerificationToken"]);
        return await _client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>Types into a field in some cases.</summary>
    public Form SetWhen(bool holds, string name, string value) => holds ? Set(name, value) : this;

    private static IEnumerable<KeyValuePair<string, string>> Fields(IHtmlFormElement form)
    {
        foreach (var element in form.QuerySelectorAll("input[name], textarea[name], select[name]"))
        {
            var name = element.GetAttribute("name")!;
            switch (element)
            {
                case IHtmlInputElement { Type: "radio" or "checkbox", IsChecked: false }:
                    break;
                case IHtmlInputElement input:
                    yield return new(name, input.Value);
                    break;
                case IHtmlTextAreaElement area:
                    yield return new(name, area.Value);
                    break;
                case IHtmlSelectElement select:
                    yield return new(name, select.Value ?? "");
                    break;
            }
        }
    }
}
