using System.Globalization;
using System.Text;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench.Chapters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Account;

namespace ReedClinic.Web.Features.Bench.Chapters;

/// <summary>A reed's passes as a W3C WebVTT file of chapters.</summary>
public static class ChaptersEndpoint
{
    private const string Minutes = "yyyy-MM-dd'T'HH:mm";
    private const string Seconds = Minutes + "':'ss";

    /// <summary>Maps <c>GET /bench/{reedId}/chapters/file?zero=</c>.</summary>
    /// <param name="app">The application.</param>
    public static void MapBenchChapters(this WebApplication app) =>
        app.MapGet("/bench/{reedId:guid}/chapters/file", GetAsync).RequireAuthorization(AccountSetup.WorksHere);

    /// <summary>The zero point as a field of date and time says it, by the clock on the studio's wall, as the log shows its times.</summary>
    /// <param name="text">Such as <c>2026-03-09T10:00:05</c>.</param>
    /// <param name="zone">The studio's zone. An hour that its clock shows twice is the later one, one that it leaves out is as long after midnight as it says.</param>
    /// <returns>The moment, or null for anything else.</returns>
    public static DateTimeOffset? Read(string? text, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return DateTime.TryParseExact(text, [Minutes, Seconds], CultureInfo.InvariantCulture, DateTimeStyles.None, out var typed)
            && typed.Year is > 1 and < 9999 // else its moment may be none
            ? new DateTimeOffset(typed, zone.GetUtcOffset(typed)).ToUniversalTime()
            : null;
    }

    /// <summary>A moment as a field of date and time takes it.</summary>
    /// <param name="zero">The moment.</param>
    /// <param name="zone">The studio's zone.</param>
    public static string Say(DateTimeOffset zero, TimeZoneInfo zone) => TimeZoneInfo.ConvertTime(zero, zone).ToString(Seconds, CultureInfo.InvariantCulture);

    private static async Task<IResult> GetAsync(Guid reedId, string? zero, HttpContext http, ActorAccess actors, BenchBook bench, TimeProvider time)
    {
        var ct = http.RequestAborted;
        if (await actors.Of(http.User, ct).ConfigureAwait(false) is not { } actor
            || await bench.FindAsync(actor, new ReedId(reedId), ct).ConfigureAwait(false) is not { } view)
        {
            return Results.NotFound();
        }

        return (zero is null ? view.Log.Facts.Select(fact => fact.Chain[0].RecordedAt).DefaultIfEmpty().Min() : Read(zero, time.LocalTimeZone)) is { } from
            ? Results.File(Encoding.UTF8.GetBytes(PassChapters.ToWebVtt(PassChapters.Of(view.Log, from))), "text/vtt; charset=utf-8", $"reed-{view.Reed.Number}-chapters.vtt")
            : Results.BadRequest();
    }
}
