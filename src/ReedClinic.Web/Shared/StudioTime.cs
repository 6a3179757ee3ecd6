namespace ReedClinic.Web.Shared;

/// <summary>Moments by the clock on the studio's wall: what people read is in its time zone, what is kept is in UTC.</summary>
public static class StudioTime
{
    /// <summary>The same moment in the studio's time zone.</summary>
    /// <param name="time">The clock, which knows the zone.</param>
    /// <param name="at">The moment.</param>
    public static DateTimeOffset There(this TimeProvider time, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(time);
        return TimeZoneInfo.ConvertTime(at, time.LocalTimeZone);
    }
}
