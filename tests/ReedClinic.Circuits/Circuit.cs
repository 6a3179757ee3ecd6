using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Connections;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.AspNetCore.SignalR.Protocol;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace ReedClinic.Circuits;

/// <summary>
/// One circuit of Blazor Server without a browser: it draws what it is sent, answers what it is asked, and sends events, also
/// such as no browser would send. Thousands fit into one process. <see cref="BlazorPack"/> says what it is pinned to.
/// </summary>
public sealed class Circuit : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly ConcurrentDictionary<string, (long Since, TaskCompletionSource<EventAnswer> Answer)> _asked = new();
    private readonly TaskCompletionSource<Exception?> _closed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource<long> _interop = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly ConcurrentQueue<string> _errors = new();
    private readonly ConcurrentQueue<string> _leads = new();
    private readonly CircuitCounts _counts;
    private TaskCompletionSource _moved = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private int _call;

    private Circuit(HubConnection hub, CircuitCounts counts, Screen? before = null)
    {
        (Hub, _counts, Screen) = (hub, counts, before ?? new Screen());
        hub.Closed += why =>
        {
            _closed.TrySetResult(why);
            Move();
            return Task.CompletedTask;
        };
        Hear();
    }

    /// <summary>The connection itself, for calls that no browser would make.</summary>
    public HubConnection Hub { get; }

    /// <summary>What is drawn.</summary>
    public Screen Screen { get; }

    /// <summary>What the server knows the circuit by; null when it gave none.</summary>
    public string? Secret { get; private set; }

    /// <summary>What the server said went wrong.</summary>
    public IReadOnlyList<string> Errors => [.. _errors];

    /// <summary>Addresses that the server sent the page to.</summary>
    public IReadOnlyList<string> Leads => [.. _leads];

    /// <summary>Ends when the connection does, with the reason if there was one.</summary>
    public Task<Exception?> Closed => _closed.Task;

    /// <summary>True once the connection has ended.</summary>
    public bool IsClosed => _closed.Task.IsCompleted;

    /// <summary>Connects, and starts no circuit yet.</summary>
    /// <param name="client">Whose cookies come along.</param>
    /// <param name="counts">Where events are counted.</param>
    /// <param name="ct">Gives up.</param>
    public static Task<Circuit> ConnectAsync(CookieClient client, CircuitCounts? counts, CancellationToken ct) => ConnectAsync(client, counts, null, ct);

    private static async Task<Circuit> ConnectAsync(CookieClient client, CircuitCounts? counts, Screen? before, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(client);
        var site = client.BaseAddress!;
        var builder = new HubConnectionBuilder().WithUrl(new Uri(site, "_blazor"), HttpTransportType.WebSockets, options =>
        {
            options.SkipNegotiation = true;
            options.Cookies = client.Cookies;
            options.Headers["Origin"] = site.GetLeftPart(UriPartial.Authority);
            if (client.Believed is { } believed)
            {
                options.WebSocketConfiguration = socket => socket.RemoteCertificateValidationCallback = believed;
            }
        });
        builder.Services.RemoveAll<IHubProtocol>();
        builder.Services.AddSingleton<IHubProtocol, BlazorPack>();
        var circuit = new Circuit(builder.Build(), counts ?? new CircuitCounts(), before);
        try
        {
            await circuit.Hub.StartAsync(ct).ConfigureAwait(false);
        }
        catch
        {
            await circuit.DisposeAsync().ConfigureAwait(false);
            throw;
        }

        return circuit;
    }

    /// <summary>Fetches a page, connects, and starts its circuit, as a browser does.</summary>
    /// <param name="client">Who asks.</param>
    /// <param name="path">The page.</param>
    /// <param name="counts">Where events are counted.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task<Circuit> OpenAsync(CookieClient client, string path, CircuitCounts? counts, CancellationToken ct)
    {
        var page = await CircuitPage.ReadAsync(client, path, ct).ConfigureAwait(false);
        if (page.Status != HttpStatusCode.OK || page.Markers.Count == 0)
        {
            throw new InvalidOperationException($"{path} was answered with {(int)page.Status} and {page.Markers.Count} components for a circuit.");
        }

        var circuit = await ConnectAsync(client, counts, ct).ConfigureAwait(false);
        await circuit.StartAsync(page, ct).ConfigureAwait(false);
        return circuit;
    }

    /// <summary>Starts the circuit of a page.</summary>
    /// <param name="page">The page.</param>
    /// <param name="ct">Gives up.</param>
    public async Task StartAsync(CircuitPage page, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(page);
        var site = page.Address.GetLeftPart(UriPartial.Authority) + "/";
        Secret = await Hub.InvokeAsync<string?>("StartCircuit", site, page.Address.AbsoluteUri, "[]", page.State, ct).ConfigureAwait(false);
        if (Secret is not null)
        {
            await Hub.SendAsync("UpdateRootComponents", page.Operations, page.State, ct).ConfigureAwait(false);
        }
    }

    /// <summary>Waits until something can be seen; when the connection ends first, or nothing comes, it says what was seen.</summary>
    /// <param name="what">What is waited for.</param>
    /// <param name="ct">Gives up.</param>
    public async Task UntilAsync(Func<Circuit, bool> what, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(what);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(ct);
        patience.CancelAfter(Patience);
        while (true)
        {
            var moved = Volatile.Read(ref _moved).Task;
            if (what(this))
            {
                return;
            }

            if (IsClosed || patience.IsCancellationRequested)
            {
                throw new TimeoutException($"It never came. Closed: {IsClosed}. Errors: {string.Join("; ", Errors)}. On the screen: {Screen.Text}");
            }

            await Task.WhenAny(moved, Task.Delay(Timeout.Infinite, patience.Token)).ConfigureAwait(false);
        }
    }

    /// <summary>Sends an event to a handler, whether or not it exists.</summary>
    /// <param name="handler">The handler's id.</param>
    /// <param name="name">The event, such as <c>click</c>.</param>
    /// <param name="value">What stands in the field, for a change.</param>
    /// <param name="ct">Gives up.</param>
    /// <returns>The answer, as a task of its own: it comes when the handler is through.</returns>
    public async Task<Task<EventAnswer>> SendAsync(ulong handler, string name, string? value, CancellationToken ct)
    {
        var target = await _interop.Task.WaitAsync(Patience, ct).ConfigureAwait(false);
        object arguments = name switch
        {
            "change" or "input" => new { value },
            "click" => new { type = name, detail = 1, button = 0 },
            _ => new { type = name },
        };
        var json = JsonSerializer.Serialize(new object[] { new { eventHandlerId = handler, eventName = name, eventFieldInfo = (object?)null }, arguments });
        return await CallAsync(null, "DispatchEventAsync", target, json, ct).ConfigureAwait(false);
    }

    /// <summary>Calls a .NET method as scripts do.</summary>
    /// <param name="assembly">Its assembly, for a static method.</param>
    /// <param name="method">Its name.</param>
    /// <param name="target">The object that it belongs to; 0 for a static method.</param>
    /// <param name="json">Its arguments.</param>
    /// <param name="ct">Gives up.</param>
    public async Task<Task<EventAnswer>> CallAsync(string? assembly, string method, long target, string json, CancellationToken ct)
    {
        var call = Interlocked.Increment(ref _call).ToString(CultureInfo.InvariantCulture);
        var answer = new TaskCompletionSource<EventAnswer>(TaskCreationOptions.RunContinuationsAsynchronously);
        _asked[call] = (_counts.Send(), answer);
        await Hub.SendAsync("BeginInvokeDotNetFromJS", call, assembly, method, target, json, ct).ConfigureAwait(false);
        return answer.Task;
    }

    /// <summary>Asks for a circuit that is there already, as a browser does after its network was away.</summary>
    /// <param name="secret">What the server knows it by.</param>
    /// <param name="ct">Gives up.</param>
    /// <returns>True when it was handed over.</returns>
    public Task<bool> TakeUpAsync(string secret, CancellationToken ct) => Hub.InvokeAsync<bool>("ConnectCircuit", secret, ct);

    /// <summary>Comes back over another connection after this one was lost, with what is drawn still there.</summary>
    /// <param name="client">Whose cookies come along.</param>
    /// <param name="ct">Gives up.</param>
    public async Task<Circuit> ComeBackAsync(CookieClient client, CancellationToken ct)
    {
        var back = await ConnectAsync(client, _counts, Screen, ct).ConfigureAwait(false);
        return await back.TakeUpAsync(Secret!, ct).ConfigureAwait(false) ? back : throw new InvalidOperationException("The circuit was gone.");
    }

    /// <summary>Waits until the server is through with everything sent before: it takes one message after another.</summary>
    /// <param name="ct">Gives up.</param>
    public Task SettleAsync(CancellationToken ct) => TakeUpAsync("nobody's", ct);

    /// <summary>Says that its page was closed, as a browser does: the server keeps nothing of it for a return.</summary>
    /// <param name="client">Whose page it was.</param>
    /// <param name="ct">Gives up.</param>
    public async Task LeaveAsync(CookieClient client, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(client);
        using var body = new FormUrlEncodedContent([KeyValuePair.Create("circuitId", Secret ?? "")]);
        using var answer = await client.PostAsync(new Uri(client.BaseAddress!, "_blazor/disconnect"), body, ct).ConfigureAwait(false);
        answer.EnsureSuccessStatusCode();
    }

    /// <inheritdoc />
    public ValueTask DisposeAsync() => Hub.DisposeAsync();

    private void Hear()
    {
        Hub.On<int, byte[]>("JS.RenderBatch", DrawAsync);
        Hub.On<long, string, string, int, long, int>("JS.BeginInvokeJS", (handle, name, json, kind, _, _) => AskedAsync(handle, name, json, kind));
        Hub.On<string, bool, string?>("JS.EndInvokeDotNet", Answered);
        Hub.On<int, string>("JS.AttachComponent", (_, _) => { });
        Hub.On<int>("JS.EndUpdateRootComponents", _ => { });
        Hub.On<string>("JS.Error", error =>
        {
            _errors.Enqueue(error);
            Move();
        });
    }

    private async Task DrawAsync(int number, byte[] data)
    {
        string? trouble = null;
        try
        {
            Screen.Apply(new RenderBatch(data));
            _counts.Drawn();
        }
        catch (Exception broken) when (broken is ArgumentException or IndexOutOfRangeException or NullReferenceException)
        {
            _errors.Enqueue(trouble = $"The batch couldn't be drawn: {broken}");
        }

        await Hub.SendAsync("OnRenderCompleted", (long)number, trouble).ConfigureAwait(false);
        Move();
    }

    private async Task AskedAsync(long handle, string name, string json, int kind)
    {
        using var arguments = JsonDocument.Parse(json);
        switch (name)
        {
            case "Blazor._internal.attachWebRendererInterop":
                _interop.TrySetResult(arguments.RootElement[1].GetProperty("__dotNetObject").GetInt64());
                break;
            case "Blazor._internal.navigationManager.navigateTo":
                _leads.Enqueue(arguments.RootElement[0].GetString()!);
                Move();
                break;
        }

        if (handle != 0)
        {
            // What is asked for as an object gets a reference to one; everything else gets nothing.
            var result = kind == 1 ? """{"__jsObjectId":1}""" : "null";
            await Hub.SendAsync("EndInvokeJSFromDotNet", handle, true, string.Create(CultureInfo.InvariantCulture, $"[{handle},true,{result}]"))
                .ConfigureAwait(false);
        }
    }

    private void Answered(string call, bool succeeded, string? said)
    {
        if (_asked.TryRemove(call, out var asked))
        {
            _counts.Answer(asked.Since, succeeded);
            asked.Answer.TrySetResult(new EventAnswer(succeeded, said));
        }
    }

    private void Move() => Interlocked.Exchange(ref _moved, new(TaskCreationOptions.RunContinuationsAsynchronously)).TrySetResult();
}

/// <summary>What the server said to an event.</summary>
/// <param name="Succeeded">True when its handler came to its end.</param>
/// <param name="Said">What it gave back, or what was wrong.</param>
public sealed record EventAnswer(bool Succeeded, string? Said);
