namespace ReedClinic.Data.Engine;

/// <summary>Which database holds the studio's records.</summary>
public enum ClinicEngine
{
    /// <summary>A file beside the app; the default.</summary>
    Sqlite,

    /// <summary>A PostgreSQL server, version 15 or later.</summary>
    Postgres,
}
