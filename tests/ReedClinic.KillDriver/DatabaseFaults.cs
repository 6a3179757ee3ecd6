using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Json;

namespace ReedClinic.KillDriver;

/// <summary>Three people write while something befalls the database; who gets no yes sends the same again, as a person would.</summary>
public sealed class DatabaseFaults(Scene scene, RunningApp app) : IDisposable
{
    private const int Posters = 3;
    private static readonly TimeSpan Again = TimeSpan.FromMilliseconds(200);

    private readonly Ledger _ledger = new();
    private readonly Visit _visit = new() { Home = app.Address };
    private readonly ConcurrentBag<(HttpStatusCode Status, TimeSpan After)> _refused = [];
    private readonly ConcurrentBag<TimeSpan> _waits = [];
    private readonly HttpClient _watcher = new() { BaseAddress = app.Address };
    private Dictionary<string, string>? _form;
    private int _count;

    /// <summary>How many entries were acknowledged.</summary>
    public int Acknowledged => _ledger.Acknowledged;

    /// <summary>What was said instead of yes, and after how long.</summary>
    public IReadOnlyCollection<(HttpStatusCode Status, TimeSpan After)> Refused => _refused;

    /// <summary>The longest time from first sending something to its yes.</summary>
    public TimeSpan LongestWait => _waits.IsEmpty ? default : _waits.Max();

    /// <summary>Signs in.</summary>
    public async Task OpenAsync(CancellationToken ct)
    {
        await _visit.SignInAsync(Scene.Email, Scene.Password, Scene.CodeKey, ct).ConfigureAwait(false);
        _form = Visit.FormWith(Scene.OperationField, await _visit.PageAsync(scene.Page, ct).ConfigureAwait(false));
    }

    /// <summary>Writes while something happens, and after it until each of the writers has a yes for what they had sent.</summary>
    /// <param name="happening">What happens; it begins when somebody has been told yes.</param>
    /// <param name="words">What each entry ends in.</param>
    /// <param name="ct">Gives up.</param>
    public async Task DuringAsync(Func<Task> happening, string words, CancellationToken ct)
    {
        using var stop = new CancellationTokenSource();
        var before = Acknowledged;
        var posting = Enumerable.Range(0, Posters).Select(_ => PostAsync(words, stop.Token, ct)).ToList();
        await UntilAsync(() => Acknowledged > before + 5, posting, ct).ConfigureAwait(false);
        await happening().ConfigureAwait(false);
        before = Acknowledged;
        await UntilAsync(() => Acknowledged > before + 5, posting, ct).ConfigureAwait(false);
        await stop.CancelAsync().ConfigureAwait(false);
        await Task.WhenAll(posting).ConfigureAwait(false);
    }

    /// <summary>Sends one thing once.</summary>
    public async Task<(HttpStatusCode Status, TimeSpan After)> OnceAsync(string words, CancellationToken ct)
    {
        var (operation, text) = (Guid.CreateVersion7(TimeProvider.System.GetUtcNow()), Text(words));
        _ledger.Send(operation, text);
        return await SendAsync(operation, text, ct).ConfigureAwait(false);
    }

    /// <summary>Asks for an address that tells of health.</summary>
    public async Task<(HttpStatusCode Status, TimeSpan After)> HealthAsync(string which, CancellationToken ct)
    {
        var began = Stopwatch.GetTimestamp();
        using var answer = await _watcher.GetAsync(new Uri($"/health/{which}", UriKind.Relative), ct).ConfigureAwait(false);
        return (answer.StatusCode, Stopwatch.GetElapsedTime(began));
    }

    /// <summary>Reads the bench's page.</summary>
    public Task<string> PageAsync(CancellationToken ct) => _visit.PageAsync(scene.Page, ct);

    /// <summary>Compares what was acknowledged with what is stored.</summary>
    public async Task<Comparison> CompareAsync(CancellationToken ct) => _ledger.CompareWith(await scene.StoredAsync(ct).ConfigureAwait(false));

    /// <inheritdoc />
    public void Dispose()
    {
        _visit.Dispose();
        _watcher.Dispose();
    }

    private static async Task UntilAsync(Func<bool> enough, List<Task> posting, CancellationToken ct)
    {
        while (!enough())
        {
            if (posting.Find(poster => poster.IsFaulted) is { } broken)
            {
                await broken.ConfigureAwait(false);
            }

            await Task.Delay(5, ct).ConfigureAwait(false);
        }
    }

    private async Task PostAsync(string words, CancellationToken stop, CancellationToken ct)
    {
        while (!stop.IsCancellationRequested)
        {
            var (operation, text, began) = (Guid.CreateVersion7(TimeProvider.System.GetUtcNow()), Text(words), Stopwatch.GetTimestamp());
            _ledger.Send(operation, text);
            while (await SendAsync(operation, text, ct).ConfigureAwait(false) is var (status, after) && status != HttpStatusCode.Created)
            {
                _refused.Add((status, after));
                await Task.Delay(Again, ct).ConfigureAwait(false);
            }

            _waits.Add(Stopwatch.GetElapsedTime(began));
        }
    }

    private async Task<(HttpStatusCode Status, TimeSpan After)> SendAsync(Guid operation, string text, CancellationToken ct)
    {
        var form = new Dictionary<string, string>(_form!);
        Scene.WriteNote(form, operation, text);
        var began = Stopwatch.GetTimestamp();
        using var answer = await _visit.PostAsync(scene.PostTo, form, ct).ConfigureAwait(false);
        var after = Stopwatch.GetElapsedTime(began);
        if (answer.StatusCode == HttpStatusCode.Created)
        {
            _ledger.Acknowledge(operation, (await answer.Content.ReadFromJsonAsync<Saved>(ct).ConfigureAwait(false))!.EntryId);
        }

        return (answer.StatusCode, after);
    }

    private string Text(string words) => string.Create(CultureInfo.InvariantCulture, $"entry {Interlocked.Increment(ref _count)} {words}").Trim();

    private sealed record Saved(Guid EntryId);
}
