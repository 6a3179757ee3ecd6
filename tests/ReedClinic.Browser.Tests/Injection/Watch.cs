using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Injection;

/// <summary>What a browser would tell of a text that became more than text: a dialog, a refusal by the content policy, a request to another site.</summary>
internal sealed class Watch
{
    // What can act by itself, wherever it was put together; a link that is only offered isn't among it.
    private const string Acting = """
        () => [...document.querySelectorAll('*')].flatMap(one => [...one.attributes]
          .filter(a => a.name.startsWith('on')
            || (['src', 'href', 'action', 'formaction', 'xlink:href', 'data'].includes(a.name) && /^\s*(javascript|vbscript|data:text)/i.test(a.value))
            || (one.localName !== 'a' && ['src', 'href', 'action', 'data'].includes(a.name) && new URL(a.value, location.href).host !== location.host && !a.value.startsWith('data:image')))
          .map(a => `${one.localName} ${a.name}=${a.value}`))
        """;

    private readonly List<string> _seen = [];
    private readonly Visitor _visitor;

    private Watch(Visitor visitor, Uri home)
    {
        _visitor = visitor;
        var page = visitor.Page;
        page.Dialog += async (_, dialog) =>
        {
            See($"a dialog: {dialog.Message}");
            await dialog.DismissAsync();
        };
        page.Console += (_, message) =>
        {
            if (message.Text.StartsWith("policy ", StringComparison.Ordinal))
            {
                See(message.Text);
            }
        };
        page.Request += (_, request) =>
        {
            var asked = new Uri(request.Url);
            if (asked.Scheme is "http" or "https" or "ws" or "wss" && asked.Authority != home.Authority)
            {
                See($"a request to {request.Url}");
            }
        };
    }

    /// <summary>Everything that was seen, with the page it was seen on.</summary>
    public IReadOnlyList<string> Seen
    {
        get
        {
            lock (_seen)
            {
                return [.. _seen];
            }
        }
    }

    /// <summary>Begins to watch a visitor's window.</summary>
    public static async Task<Watch> OverAsync(Visitor visitor, Uri home)
    {
        await visitor.Page.AddInitScriptAsync("addEventListener('securitypolicyviolation', e => console.error(`policy ${e.violatedDirective} ${e.blockedURI} ${e.sample}`))");
        return new Watch(visitor, home);
    }

    /// <summary>Looks at the page as it is: nothing on it may act by itself.</summary>
    public async Task LookAsync()
    {
        foreach (var acting in await _visitor.Page.EvaluateAsync<string[]>(Acting))
        {
            See(acting);
        }
    }

    private void See(string what)
    {
        lock (_seen)
        {
            _seen.Add($"{_visitor.Page.Url}: {what}");
        }
    }
}
