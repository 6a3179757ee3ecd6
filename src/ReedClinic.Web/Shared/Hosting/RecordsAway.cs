using Microsoft.AspNetCore.Http.HttpResults;
using ReedClinic.Data.Engine;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>
/// When the records can't be reached, or have no room: an answer that needs none of them, says so and says what to do. A form
/// that was sent stays in the browser, one step back.
/// </summary>
public static partial class RecordsAway
{
    /// <summary>After so many seconds a machine may ask again.</summary>
    public const int Seconds = 10;

    /// <summary>Stands inside of the page about other troubles, which asks the records who is there.</summary>
    /// <param name="app">The application.</param>
    public static void UseRecordsAway(this WebApplication app)
    {
        var log = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(RecordsAway));
        app.Use(async (context, next) =>
        {
            try
            {
                await next(context).ConfigureAwait(false);
            }
            catch (Exception trouble) when (!context.Response.HasStarted && RecordsTrouble.Of(trouble) is not RecordsState.Other and var state)
            {
                Told(log, state, Trouble.Reference(context), trouble);
                await AnswerAsync(context, state).ConfigureAwait(false);
            }
        });
    }

    // In a scope of its own: a page that had begun has taken what a page needs of the request's.
    private static async Task AnswerAsync(HttpContext context, RecordsState state)
    {
        context.Response.Clear();
        var status = state == RecordsState.Full ? StatusCodes.Status507InsufficientStorage : StatusCodes.Status503ServiceUnavailable;
        context.Response.StatusCode = status;
        context.Response.Headers.RetryAfter = Seconds.ToString(System.Globalization.CultureInfo.InvariantCulture);
        context.Response.Headers.CacheControl = "no-store";
        var own = context.RequestServices.CreateAsyncScope();
        await using var _ = own.ConfigureAwait(false);
        var before = context.RequestServices;
        context.RequestServices = own.ServiceProvider;
        try
        {
            await new RazorComponentResult<RecordsAwayNote>(new { State = state, Reference = Trouble.Reference(context) }) { StatusCode = status }.ExecuteAsync(context).ConfigureAwait(false);
        }
        finally
        {
            context.RequestServices = before;
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The records are {State} ({Reference}).")]
    private static partial void Told(ILogger log, RecordsState state, string reference, Exception trouble);
}
