using System.Globalization;
using System.Net;
using System.Net.Http.Json;

namespace ReedClinic.KillDriver;

/// <summary>Round after round: start the app, send entries, kill it in the middle, look what is there.</summary>
public sealed class KillRounds(string folder, Scene scene, int seed) : IDisposable
{
    private const int Posters = 3;
    private const int MostAcknowledged = 25;
    private const int MostMilliseconds = 25;

    private readonly Random _chance = new(seed);
    private readonly Ledger _ledger = new();
    private readonly Visit _visit = new();
    private Dictionary<string, string>? _form;
    private int _count;

    /// <summary>How many entries were acknowledged in all.</summary>
    public int Acknowledged => _ledger.Acknowledged;

    /// <summary>One round.</summary>
    /// <returns>What the database held after the kill, compared with the ledger.</returns>
    public async Task<Comparison> RunAsync(CancellationToken ct)
    {
        await using (var app = await OpenAsync(ct).ConfigureAwait(false))
        {
            await RepeatUnansweredAsync(ct).ConfigureAwait(false);
            using var stop = CancellationTokenSource.CreateLinkedTokenSource(ct);
            var enough = _ledger.Acknowledged + _chance.Next(1, MostAcknowledged);
            var delay = TimeSpan.FromMilliseconds(_chance.Next(MostMilliseconds));
            var posting = Enumerable.Range(0, Posters).Select(_ => PostUntilSilentAsync(stop.Token)).ToList();
            while (_ledger.Acknowledged < enough && posting.TrueForAll(poster => !poster.IsCompleted))
            {
                await Task.Delay(1, ct).ConfigureAwait(false);
            }

            await Task.Delay(delay, ct).ConfigureAwait(false);
            await app.KillAsync().ConfigureAwait(false);
            await Task.WhenAll(posting).ConfigureAwait(false);
        }

        return _ledger.CompareWith(await scene.StoredAsync(ct).ConfigureAwait(false));
    }

    /// <summary>After the last kill: the app starts again, and what had no answer is sent again under its own id.</summary>
    public async Task<Comparison> SettleAsync(CancellationToken ct)
    {
        await using var app = await OpenAsync(ct).ConfigureAwait(false);
        await RepeatUnansweredAsync(ct).ConfigureAwait(false);
        await RepeatSomeAcknowledgedAsync(ct).ConfigureAwait(false);
        return _ledger.CompareWith(await scene.StoredAsync(ct).ConfigureAwait(false));
    }

    /// <inheritdoc />
    public void Dispose() => _visit.Dispose();

    // The first start signs in; later ones go on with the same cookie and the same form, as an open tab would.
    private async Task<RunningApp> OpenAsync(CancellationToken ct)
    {
        var app = await RunningApp.StartAsync(folder, scene.Settings, ct).ConfigureAwait(false);
        _visit.Home = app.Address;
        if (_form is null)
        {
            await _visit.SignInAsync(Scene.Email, Scene.Password, Scene.CodeKey, ct).ConfigureAwait(false);
            _form = Visit.FormWith(Scene.OperationField, await _visit.PageAsync(scene.Page, ct).ConfigureAwait(false));
        }

        return app;
    }

    private async Task PostUntilSilentAsync(CancellationToken ct)
    {
        try
        {
            while (true)
            {
                var operation = Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
                var text = string.Create(CultureInfo.InvariantCulture, $"entry {Interlocked.Increment(ref _count)}");
                _ledger.Send(operation, text);
                await PostAsync(operation, text, ct).ConfigureAwait(false);
            }
        }
        catch (HttpRequestException)
        {
            // The app is gone. Whatever was on its way stays without an answer.
        }
    }

    private async Task RepeatUnansweredAsync(CancellationToken ct)
    {
        foreach (var (operation, text) in _ledger.Unanswered.ToList())
        {
            await PostAsync(operation, text, ct).ConfigureAwait(false);
        }
    }

    private async Task RepeatSomeAcknowledgedAsync(CancellationToken ct)
    {
        foreach (var (operation, text) in _ledger.Sent.Take(10))
        {
            await PostAsync(operation, text, ct).ConfigureAwait(false);
        }
    }

    // The bench answers 201 with the entry's id when it is asked for JSON, and never before the entry is saved.
    private async Task PostAsync(Guid operation, string text, CancellationToken ct)
    {
        var form = new Dictionary<string, string>(_form!);
        Scene.WriteNote(form, operation, text);
        using var answer = await _visit.PostAsync(scene.PostTo, form, ct).ConfigureAwait(false);
        if (answer.StatusCode != HttpStatusCode.Created)
        {
            throw new InvalidOperationException($"The app refused an entry: {(int)answer.StatusCode} {answer.Headers.Location}");
        }

        var saved = await answer.Content.ReadFromJsonAsync<Saved>(ct).ConfigureAwait(false);
        _ledger.Acknowledge(operation, saved!.EntryId);
    }

    private sealed record Saved(Guid EntryId);
}
