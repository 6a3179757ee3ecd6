namespace ReedClinic.Domain.Bench;

/// <summary>A test at the bench.</summary>
public enum TestKind
{
    /// <summary>The reed alone, lips at the thread, no embouchure.</summary>
    Crow,

    /// <summary>The reed alone in playing position.</summary>
    Peep,

    /// <summary>How softly a note can be started.</summary>
    SoftestStart,

    /// <summary>How much work it is to blow.</summary>
    Effort,

    /// <summary>How much edge the sound has.</summary>
    Edge,

    /// <summary>How much depth the sound has.</summary>
    Depth,

    /// <summary>How the lowest notes speak.</summary>
    LowResponse,

    /// <summary>How the high notes hold.</summary>
    HighSteadiness,

    /// <summary>The gap at the tip, seen end-on and wet.</summary>
    Opening,

    /// <summary>Where the instrument's tuning note sits with a relaxed lip.</summary>
    TuningNote,

    /// <summary>One long note from soft to loud and back.</summary>
    Swell,

    /// <summary>Repeated tongued notes.</summary>
    TonguedStarts,

    /// <summary>Whether the reed holds a vacuum.</summary>
    Seal,

    /// <summary>Which part closes first under a light press.</summary>
    ClosingOrder,

    /// <summary>The length over all, by a ruler or a gauge.</summary>
    Length,
}

/// <summary>How the steps of a scale are ordered.</summary>
public enum ScaleShape
{
    /// <summary>From poor to good.</summary>
    OneSided,

    /// <summary>Two poor ends with the good step between them.</summary>
    TwoSided,

    /// <summary>Kinds, not degrees.</summary>
    Kinds,

    /// <summary>A number and no words.</summary>
    Measured,
}

/// <summary>The words in which one test is told.</summary>
/// <param name="TestKind">The test.</param>
/// <param name="Name">Its name, in small letters.</param>
/// <param name="How">How it is done, in one line.</param>
/// <param name="Steps">The words, in order; none when it is measured.</param>
/// <param name="Good">The index of the step that is wished for.</param>
/// <param name="Shape">How the steps are ordered.</param>
/// <param name="TakesPitch">Whether a pitch can be said with it.</param>
/// <remarks>The tests are common practice; the words and their steps are this program's own.</remarks>
public sealed record TestScale(
    TestKind TestKind,
    string Name,
    string How,
    IReadOnlyList<string> Steps,
    int Good,
    ScaleShape Shape,
    bool TakesPitch = false)
{
    /// <summary>Every scale, in the order in which a reed is usually tried.</summary>
    public static IReadOnlyList<TestScale> All { get; } =
    [
        new(TestKind.Opening, "opening", "Look at the tip end-on, wet and at rest.",
            ["closed", "a little closed", "right", "a little open", "very open"], 2, ScaleShape.TwoSided),
        new(TestKind.ClosingOrder, "closing order", "Press the faces lightly together and watch what meets first.",
            ["the centre closes first", "all at once", "the sides close first"], 2, ScaleShape.OneSided),
        new(TestKind.Seal, "seal", "Stop the cork end, draw the air out, and listen.",
            ["does not hold", "fades at once", "holds for a moment", "holds, then opens with a small pop"], 3, ScaleShape.OneSided),
        new(TestKind.Crow, "crow", "Lips at the thread, no embouchure; the smallest air first, then more.",
            ["high, then low joins", "high and low all at once", "low only", "high only"], 0, ScaleShape.Kinds, TakesPitch: true),
        new(TestKind.Peep, "peep", "The reed alone, in playing position.",
            ["clean", "already crowing"], 0, ScaleShape.Kinds, TakesPitch: true),
        new(TestKind.SoftestStart, "softest start", "Start a middle note with the breath alone, as softly as it will go.",
            ["will not start softly", "needs a push", "starts softly", "starts on a breath"], 3, ScaleShape.OneSided),
        new(TestKind.Effort, "effort", "Play for a minute at a middling loudness.",
            ["far too easy", "a little too easy", "right", "a little too hard", "far too hard"], 2, ScaleShape.TwoSided),
        new(TestKind.TuningNote, "tuning note", "Play the tuning note without helping it.",
            ["flat", "a little flat", "in tune", "a little sharp", "sharp"], 2, ScaleShape.TwoSided, TakesPitch: true),
        new(TestKind.TonguedStarts, "tongued starts", "Repeat one note, short and dry.",
            ["thuds", "unsure", "mostly clean", "clean every time"], 3, ScaleShape.OneSided),
        new(TestKind.LowResponse, "low response", "The lowest notes, softly, slurred and tongued.",
            ["will not speak", "late", "speaks with care", "speaks at once"], 3, ScaleShape.OneSided),
        new(TestKind.HighSteadiness, "high steadiness", "Hold the high notes at a middling loudness.",
            ["drops out", "wanders", "holds with help", "holds"], 3, ScaleShape.OneSided),
        new(TestKind.Swell, "swell", "One long note, from soft to loud and back.",
            ["breaks", "goes wild when loud", "sags when loud", "keeps its place"], 3, ScaleShape.OneSided),
        new(TestKind.Edge, "edge", "Listen to the sound across the room.",
            ["covered", "a little covered", "right", "a little edgy", "very edgy"], 2, ScaleShape.TwoSided),
        new(TestKind.Depth, "depth", "Listen for the bottom of the sound.",
            ["hollow", "thin", "enough", "full"], 3, ScaleShape.OneSided),
        new(TestKind.Length, "length", "From the cork end to the tip, by a ruler or a gauge.", [], 0, ScaleShape.Measured),
    ];

    /// <summary>Whether it is told in millimetres and not in words.</summary>
    public bool TakesMillimetres => Shape == ScaleShape.Measured;

    /// <summary>The scale of one test.</summary>
    /// <param name="test">The test.</param>
    /// <returns>Its scale.</returns>
    public static TestScale Of(TestKind test) => All.First(scale => scale.TestKind == test);

    /// <summary>How far a step is from the good one: 0 is good. For kinds it is 0 or 1.</summary>
    /// <param name="step">The index of a step.</param>
    /// <returns>The number of steps between them.</returns>
    public int FromGood(int step) => Shape == ScaleShape.Kinds
        ? (step == Good ? 0 : 1)
        : Math.Abs(step - Good);
}
