namespace ReedClinic.Domain.Upkeep;

/// <summary>What goes on behind the pages, each by a worker of its own.</summary>
public enum QuietWork
{
    /// <summary>Sending mail.</summary>
    Mail,

    /// <summary>Putting notes onto the audit's chain.</summary>
    Audit,

    /// <summary>Letting go of what was kept long enough, and keeping files and rows in step.</summary>
    Records,

    /// <summary>Reading sounds.</summary>
    Sound,

    /// <summary>Hearing of the studio's other processes.</summary>
    Wire,

    /// <summary>Counting what whoever watches the machine is told.</summary>
    Figures,
}

/// <summary>Work behind the pages that has failed since it last went well, and is tried again.</summary>
/// <param name="Work">Which.</param>
/// <param name="Since">When the first of these failures was.</param>
/// <param name="Times">How many there were in a row, at least one.</param>
public sealed record StumblingWork(QuietWork Work, DateTimeOffset Since, int Times);
