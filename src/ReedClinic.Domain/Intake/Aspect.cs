namespace ReedClinic.Domain.Intake;

/// <summary>What a student can mark on a two-sided scale.</summary>
public enum Aspect
{
    /// <summary>How readily a note starts.</summary>
    Response,

    /// <summary>Where the reed sits in pitch.</summary>
    Intonation,

    /// <summary>The gap at the tip.</summary>
    Opening,

    /// <summary>How much air and lip it asks for.</summary>
    Effort,

    /// <summary>What it sounds like.</summary>
    Sound,

    /// <summary>What happens when it is played softly.</summary>
    SoftPlaying,

    /// <summary>What the high notes do.</summary>
    HighNotes,

    /// <summary>What it is like after a while.</summary>
    Tiredness,
}

/// <summary>The words beside a scale: what is asked, and what its two ends and its middle mean.</summary>
/// <param name="Aspect">What is marked.</param>
/// <param name="Name">A short name.</param>
/// <param name="Question">What is asked.</param>
/// <param name="LowEnd">What −2 means.</param>
/// <param name="RatherLow">What −1 means, as a whole phrase.</param>
/// <param name="Middle">What 0 means.</param>
/// <param name="RatherHigh">What +1 means, as a whole phrase.</param>
/// <param name="HighEnd">What +2 means.</param>
public sealed record AspectWords(Aspect Aspect, string Name, string Question, string LowEnd, string RatherLow, string Middle, string RatherHigh, string HighEnd)
{
    /// <summary>All the scales, in the order in which they are asked.</summary>
    public static IReadOnlyList<AspectWords> All { get; } =
    [
        new(Aspect.Response, "Response", "When you start a note, does it come?", "too easily", "a little too easily", "just right", "a little hard to start", "too hard to start"),
        new(Aspect.Intonation, "Intonation", "Where does the reed sit in pitch?", "flat", "a little flat", "in tune", "a little sharp", "sharp"),
        new(Aspect.Opening, "Opening", "How wide is the gap at the tip?", "too closed", "a little too closed", "just right", "a little too open", "too open"),
        new(Aspect.Effort, "Effort", "How hard do you have to blow?", "nothing to blow against", "not quite enough to blow against", "just right", "a little hard", "hard work"),
        new(Aspect.Sound, "Sound", "What does it sound like?", "thin and bright", "a little thin and bright", "as I like it", "a little dull and covered", "dull and covered"),
        new(Aspect.SoftPlaying, "Soft playing", "What happens when you play softly?", "it gets away from me", "it sometimes gets away from me", "it works", "it sometimes won’t start", "it won’t start"),
        new(Aspect.HighNotes, "High notes", "What do the high notes do?", "they sag", "they sag a little", "they sit well", "they go a little sharp and tight", "they go sharp and tight"),
        new(Aspect.Tiredness, "After a while", "What tires you?", "holding it together", "having to hold it together a little", "nothing much", "having to blow against it a little", "blowing against it"),
    ];

    /// <summary>The words of one scale.</summary>
    /// <param name="aspect">What is marked.</param>
    public static AspectWords Of(Aspect aspect) => All[(int)aspect];

    /// <summary>A mark in words: “sharp”, “a little flat”, “in tune”.</summary>
    /// <param name="mark">The mark.</param>
    public string Say(ScaleMark mark) => mark.Value switch
    {
        -2 => LowEnd,
        -1 => RatherLow,
        0 => Middle,
        1 => RatherHigh,
        _ => HighEnd,
    };
}

/// <summary>What a student marked on the scales for one reed; null means “I don't know”, or nothing was marked.</summary>
public sealed record ReedScales
{
    /// <summary>Nothing marked.</summary>
    public static ReedScales Nothing { get; } = new();

    /// <summary>How readily a note starts: too easily (−2) to too hard to start (+2).</summary>
    public ScaleMark? Response { get; init; }

    /// <summary>Pitch: flat (−2) to sharp (+2).</summary>
    public ScaleMark? Intonation { get; init; }

    /// <summary>The gap at the tip: too closed (−2) to too open (+2).</summary>
    public ScaleMark? Opening { get; init; }

    /// <summary>Effort: nothing to blow against (−2) to hard work (+2).</summary>
    public ScaleMark? Effort { get; init; }

    /// <summary>Sound: thin and bright (−2) to dull and covered (+2).</summary>
    public ScaleMark? Sound { get; init; }

    /// <summary>Soft playing: it gets away (−2) to it won’t start (+2).</summary>
    public ScaleMark? SoftPlaying { get; init; }

    /// <summary>High notes: they sag (−2) to they go sharp and tight (+2).</summary>
    public ScaleMark? HighNotes { get; init; }

    /// <summary>Tiredness: from holding it together (−2) to blowing against it (+2).</summary>
    public ScaleMark? Tiredness { get; init; }

    /// <summary>The mark on one scale.</summary>
    /// <param name="aspect">Which scale.</param>
    public ScaleMark? this[Aspect aspect] => aspect switch
    {
        Aspect.Response => Response,
        Aspect.Intonation => Intonation,
        Aspect.Opening => Opening,
        Aspect.Effort => Effort,
        Aspect.Sound => Sound,
        Aspect.SoftPlaying => SoftPlaying,
        Aspect.HighNotes => HighNotes,
        _ => Tiredness,
    };
}
