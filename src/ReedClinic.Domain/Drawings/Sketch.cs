namespace ReedClinic.Domain.Drawings;

/// <summary>What a part of a drawing stands for. Whoever shows the drawing gives it its colour, its line and its pattern.</summary>
public enum SketchInk
{
    /// <summary>The face of a blade.</summary>
    Cane,

    /// <summary>Bark, rails and edges, a shade darker than the face.</summary>
    Bark,

    /// <summary>Windows, a shade paler than the face.</summary>
    Pale,

    /// <summary>Lines along the cane.</summary>
    Grain,

    /// <summary>An outline.</summary>
    Line,

    /// <summary>A line between two zones.</summary>
    ZoneLine,

    /// <summary>A border that is felt rather than seen.</summary>
    SoftLine,

    /// <summary>The thread's body, and a cork.</summary>
    Thread,

    /// <summary>The turns of the thread.</summary>
    Turns,

    /// <summary>Metal: a staple, a knife.</summary>
    Metal,

    /// <summary>A dark plaque.</summary>
    Plaque,

    /// <summary>A finger.</summary>
    Hand,

    /// <summary>Where nothing is: the gap of an opening.</summary>
    Gap,

    /// <summary>A place that is good.</summary>
    Strength,

    /// <summary>A place that gets in the way.</summary>
    Fault,

    /// <summary>A matter of taste.</summary>
    Taste,

    /// <summary>A place that is perhaps good.</summary>
    StrengthSuspected,

    /// <summary>A place that is suspected to get in the way.</summary>
    FaultSuspected,

    /// <summary>Perhaps a matter of taste.</summary>
    TasteSuspected,

    /// <summary>A place that was worked once.</summary>
    Worked,

    /// <summary>A place that was worked twice.</summary>
    WorkedTwice,

    /// <summary>A place that was worked often.</summary>
    WorkedOften,

    /// <summary>A place that is not to be touched.</summary>
    LeaveAlone,

    /// <summary>A thin line that leads from words to what they mean.</summary>
    Leader,

    /// <summary>A numbered disc.</summary>
    Disc,

    /// <summary>The way of a hand or of a knife.</summary>
    Arrow,

    /// <summary>The band in which something is on its target.</summary>
    Band,

    /// <summary>The target.</summary>
    Aim,

    /// <summary>The way of what was measured.</summary>
    Way,

    /// <summary>A part of the way on which nothing was measured.</summary>
    WayGap,

    /// <summary>How uncertain a measured point is.</summary>
    Range,

    /// <summary>A measured point.</summary>
    Point,

    /// <summary>The last measured point.</summary>
    LastPoint,

    /// <summary>The ring round a point that was measured from a recording, and not said.</summary>
    Measured,

    /// <summary>An octave that is the first to sound.</summary>
    FirstOctave,

    /// <summary>An octave that sounds later.</summary>
    Octave,

    /// <summary>An octave that isn’t heard.</summary>
    NoOctave,

    /// <summary>A thin line to read by.</summary>
    Ruler,

    /// <summary>A moment at which something begins.</summary>
    Moment,

    /// <summary>A pitch or a level from moment to moment.</summary>
    Trace,

    /// <summary>The same of the recording that it is compared with.</summary>
    OtherTrace,
}

/// <summary>How words on a drawing are set.</summary>
public enum SketchType
{
    /// <summary>The name of a part, slanted.</summary>
    Name,

    /// <summary>A label.</summary>
    Label,

    /// <summary>A number in a disc.</summary>
    Number,

    /// <summary>What was done, slanted and small.</summary>
    Step,
}

/// <summary>Where words lie against their point.</summary>
public enum SketchAlign
{
    /// <summary>They begin there.</summary>
    Start,

    /// <summary>Their middle is there.</summary>
    Middle,

    /// <summary>They end there.</summary>
    End,
}

/// <summary>One part of a drawing; later parts lie over earlier ones.</summary>
public abstract record SketchPart;

/// <summary>A line or a shape.</summary>
/// <param name="Ink">What it stands for.</param>
/// <param name="Data">Path data with absolute M, L, H, V, Q and Z, in drawing units.</param>
/// <param name="X">How far it is moved to the right.</param>
/// <param name="Y">How far it is moved down.</param>
public sealed record SketchPath(SketchInk Ink, string Data, double X = 0, double Y = 0) : SketchPart;

/// <summary>A dot.</summary>
/// <param name="Ink">What it stands for.</param>
/// <param name="X">Its middle.</param>
/// <param name="Y">Its middle.</param>
/// <param name="Radius">Its radius.</param>
public sealed record SketchDot(SketchInk Ink, double X, double Y, double Radius) : SketchPart;

/// <summary>A few words.</summary>
/// <param name="Type">How they are set.</param>
/// <param name="Text">The words, on one line.</param>
/// <param name="X">Their point.</param>
/// <param name="Y">Their base line.</param>
/// <param name="Align">Where they lie against their point.</param>
public sealed record SketchWords(SketchType Type, string Text, double X, double Y, SketchAlign Align = SketchAlign.Start) : SketchPart;

/// <summary>
/// A drawing as shapes with names, the same for the screen and for paper. What lies beyond its width and height isn't shown.
/// </summary>
/// <param name="Width">Its width, in drawing units.</param>
/// <param name="Height">Its height.</param>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Description">What it shows, in sentences, for whoever doesn't see it.</param>
/// <param name="Parts">Its parts, the lowest first.</param>
public sealed record Sketch(double Width, double Height, string Title, string Description, IReadOnlyList<SketchPart> Parts)
{
    /// <summary>How large its words are against the usual; above 1 where it is shown small.</summary>
    public double Type { get; init; } = 1;
}
