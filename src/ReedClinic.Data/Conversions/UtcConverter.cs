using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace ReedClinic.Data.Conversions;

/// <summary>
/// Every instant is stored as UTC, cut to whole microseconds: SQLite can't order an offset, PostgreSQL refuses one
/// other than zero, and keeps microseconds. So both engines give back the same value.
/// </summary>
public sealed class UtcConverter() : ValueConverter<DateTimeOffset, DateTime>(
    instant => ToStored(instant),
    stored => new DateTimeOffset(DateTime.SpecifyKind(stored, DateTimeKind.Utc)))
{
    private static DateTime ToStored(DateTimeOffset instant) =>
        new(instant.UtcTicks - (instant.UtcTicks % TimeSpan.TicksPerMicrosecond), DateTimeKind.Utc);
}
