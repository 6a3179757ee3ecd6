namespace ReedClinic.Web.Shared.Trouble;

internal static partial class PanelLog
{
    [LoggerMessage(EventId = 1, Level = LogLevel.Error, Message = "A panel broke; reference {Reference}")]
    public static partial void Broke(ILogger logger, string reference, Exception exception);
}
