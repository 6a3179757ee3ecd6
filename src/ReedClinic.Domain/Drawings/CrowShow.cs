namespace ReedClinic.Domain.Drawings;

/// <summary>Which way the work runs on a drawing of a crow.</summary>
public enum CrowRun
{
    /// <summary>To the right, sharper above flatter.</summary>
    Across,

    /// <summary>Down, sharper to the right of flatter: for narrow windows.</summary>
    Down,
}

/// <summary>Where what was done stands, on a drawing that runs to the right. One that runs down has it beside the way.</summary>
public enum CrowLabels
{
    /// <summary>Nowhere.</summary>
    None,

    /// <summary>At its step, shortened to it: the drawing’s height is always the same.</summary>
    OnTheWay,

    /// <summary>In lines of their own over the steps where all of them have room, so that nothing crosses them.</summary>
    OverTheWay,
}

/// <summary>What a drawing of a crow’s way explains below itself.</summary>
[Flags]
public enum CrowKeys
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The band of the target.</summary>
    Band = 1,

    /// <summary>That a crow lay somewhere between two pitches.</summary>
    Range = 2,

    /// <summary>That a part of the way wasn’t heard.</summary>
    Gap = 4,

    /// <summary>That a crow was measured from a recording.</summary>
    Measured = 8,
}

/// <summary>What a drawing of a crow’s way shows, and how wide it is.</summary>
/// <param name="Run">Which way the work runs.</param>
/// <param name="Width">How wide it is, in drawing units.</param>
/// <param name="Labels">Where what was done stands.</param>
public sealed record CrowShow(CrowRun Run, double Width, CrowLabels Labels)
{
    private const double Wide = 680;

    /// <summary>For the bench: always as tall as before, so that nothing moves when a crow is said.</summary>
    public static CrowShow Bench { get; } = new(CrowRun.Across, Wide, CrowLabels.OnTheWay);

    /// <summary>For the bench in a narrow window, where the steps stand in a list.</summary>
    public static CrowShow BenchNarrow { get; } = new(CrowRun.Across, 340, CrowLabels.None);

    /// <summary>For a letter on the screen.</summary>
    public static CrowShow Letter { get; } = new(CrowRun.Across, Wide, CrowLabels.OverTheWay);

    /// <summary>For a letter in a narrow window.</summary>
    public static CrowShow LetterNarrow { get; } = new(CrowRun.Down, 300, CrowLabels.OnTheWay);

    /// <summary>For a letter on paper.</summary>
    public static CrowShow Paper { get; } = Letter with { Type = 1.2 };

    /// <summary>For a letter on paper, at the side of the tests: the narrowest first.</summary>
    public static IReadOnlyList<CrowShow> BesideOnPaper { get; } = [Paper with { Width = 360 }, Paper with { Width = 430 }];

    /// <summary>Whether the band of the target is drawn.</summary>
    public bool HasBand { get; init; } = true;

    /// <summary>What is explained below the drawing, where it is on it.</summary>
    public CrowKeys Keys { get; init; }

    /// <summary>The word for the crow before any work.</summary>
    public string Arrival { get; init; } = "came";

    /// <summary>How large its words are against the usual; above 1 where it is shown small.</summary>
    public double Type { get; init; } = 1;
}
