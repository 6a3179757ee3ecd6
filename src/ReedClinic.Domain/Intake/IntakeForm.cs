namespace ReedClinic.Domain.Intake;

/// <summary>
/// What a student has typed so far, kept as text so that nothing is lost, however odd. <see cref="IntakeReader"/> makes an
/// announcement of it.
/// </summary>
public sealed class IntakeForm
{
    /// <summary>The name of an <see cref="Reeds.Instrument"/>; empty for “I don't know”.</summary>
    public string? Instrument { get; set; }

    /// <summary>The A4 that is tuned to, in hertz; empty for “not sure”.</summary>
    public string? TunesTo { get; set; }

    /// <summary>The name of a <see cref="Reeds.ScrapeStyle"/>; empty for “not sure”.</summary>
    public string? Scrape { get; set; }

    /// <summary>The country the parcel comes from.</summary>
    public string? Country { get; set; }

    /// <summary>Questions about all the reeds, one a line.</summary>
    public string? Questions { get; set; }

    /// <summary>How many reeds were asked for; null where nobody said so yet. The reeds follow once nothing written is in the way.</summary>
    public string? HowMany { get; set; }

    /// <summary>The page that was open last; null before there was one.</summary>
    public string? StoppedAt { get; set; }

    /// <summary>The reeds, in the order of their tags.</summary>
    public IList<ReedForm> Reeds { get; init; } = [];
}

/// <summary>What was typed about one reed.</summary>
public sealed class ReedForm
{
    /// <summary>How to tell it from the others.</summary>
    public string? HowToRecognise { get; set; }

    /// <summary>What bothers its owner.</summary>
    public string? Bothers { get; set; }

    /// <summary>The name of a <see cref="Intake.Permission"/>.</summary>
    public string? Permission { get; set; }

    /// <summary>A number from −2 to 2; empty for “I don't know”.</summary>
    public string? Response { get; set; }

    /// <summary>A number from −2 to 2; empty for “I don't know”.</summary>
    public string? Intonation { get; set; }

    /// <summary>A number from −2 to 2; empty for “I don't know”.</summary>
    public string? Opening { get; set; }

    /// <summary>A number from −2 to 2; empty for “I don't know”.</summary>
    public string? Effort { get; set; }

    /// <summary>A number from −2 to 2; empty for “I don't know”.</summary>
    public string? Sound { get; set; }

    /// <summary>A number from −2 to 2; empty for “I don't know”.</summary>
    public string? SoftPlaying { get; set; }

    /// <summary>A number from −2 to 2; empty for “I don't know”.</summary>
    public string? HighNotes { get; set; }

    /// <summary>A number from −2 to 2; empty for “I don't know”.</summary>
    public string? Tiredness { get; set; }

    /// <summary>Who tied it.</summary>
    public string? TiedBy { get; set; }

    /// <summary>The name of a <see cref="Intake.MadeHow"/>; empty for “I don't know”.</summary>
    public string? MadeHow { get; set; }

    /// <summary>Hours played; empty for “I don't know”.</summary>
    public string? HoursPlayed { get; set; }

    /// <summary>What was tried last.</summary>
    public string? LastTried { get; set; }

    /// <summary>The name of a <see cref="ReedUse"/>; empty for “I don't know”.</summary>
    public string? UsedFor { get; set; }

    /// <summary>What its owner likes about it.</summary>
    public string? Likes { get; set; }

    /// <summary>Questions about this reed, one a line.</summary>
    public string? Questions { get; set; }
}
