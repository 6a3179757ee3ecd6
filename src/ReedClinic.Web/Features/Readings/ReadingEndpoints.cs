using Microsoft.AspNetCore.Mvc;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Recordings;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Features.Readings;

/// <summary>What the page of a reading asks for beside itself: how far it has come, and its spectrogram.</summary>
public static class ReadingEndpoints
{
    // One question is answered within this time at the latest; in it, it is looked at anew no sooner than this, unless there is news.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(2.5);

    /// <summary>Maps the addresses.</summary>
    /// <param name="app">The application.</param>
    public static void MapReadings(this WebApplication app)
    {
        var readings = app.MapGroup("/recordings/{id:guid}/reading").RequireAuthorization();
        readings.MapGet("/state", StateAsync);
        readings.MapGet("/picture", PictureAsync).WithMetadata(new SandboxedFile());
    }

    // Whoever says how it stood is answered once it stands otherwise, or after a while.
    private static async Task<IResult> StateAsync(Guid id, [FromQuery] string? since, HttpContext http, [AsParameters] Tools tools)
    {
        var ct = http.RequestAborted;
        if (await tools.Actors.Of(http.User, ct).ConfigureAwait(false) is not { } actor
            || await tools.Readings.StateAsync(actor, new RecordingId(id), ct).ConfigureAwait(false) is not { } state)
        {
            return Results.NotFound();
        }

        var told = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        using var _ = tools.News.Listen(state.Reed, () => told.TrySetResult());
        for (var waited = TimeSpan.Zero; state.State.ToString() == since && waited < Longest; waited += Between)
        {
            await Task.WhenAny(told.Task, Task.Delay(Between, tools.Time, ct)).ConfigureAwait(false);
            told = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            if (await tools.Readings.StateAsync(actor, new RecordingId(id), ct).ConfigureAwait(false) is not { } now)
            {
                return Results.NotFound();
            }

            state = now;
        }

        return Results.Json(new { state = state.State.ToString() });
    }

    private static async Task<IResult> PictureAsync(Guid id, HttpContext http, [AsParameters] Tools tools) =>
        await tools.Actors.Of(http.User, http.RequestAborted).ConfigureAwait(false) is { } actor
        && await tools.Readings.PictureAsync(actor, new RecordingId(id), http.RequestAborted).ConfigureAwait(false) is { } picture
            ? Results.Bytes(picture, "image/png")
            : Results.NotFound();

    private sealed record Tools(ActorAccess Actors, SoundReadingBook Readings, BenchNews News, TimeProvider Time);
}
