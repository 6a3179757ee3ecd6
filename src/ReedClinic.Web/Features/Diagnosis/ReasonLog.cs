namespace ReedClinic.Web.Features.Diagnosis;

internal static partial class ReasonLog
{
    [LoggerMessage(EventId = 7_301, Level = LogLevel.Warning, Message = "What this bench has taught couldn’t be read; the quiet line goes on with what is at hand.")]
    public static partial void NotLearned(ILogger log, Exception failed);
}
