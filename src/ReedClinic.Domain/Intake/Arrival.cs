using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Intake;

/// <summary>Whether a reed was in the parcel.</summary>
public enum Presence
{
    /// <summary>Announced; the parcel hasn't been opened.</summary>
    Expected,

    /// <summary>Announced and in the parcel.</summary>
    Here,

    /// <summary>Announced, and not in the parcel.</summary>
    Missing,

    /// <summary>In the parcel without having been announced.</summary>
    Extra,
}

/// <summary>The hand that wound the thread, as the thread shows it. It belongs to the maker of the reed.</summary>
public enum WindingHand
{
    /// <summary>It couldn't be read, or nobody looked.</summary>
    NotRead,

    /// <summary>Wound by a right hand.</summary>
    Right,

    /// <summary>Wound by a left hand.</summary>
    Left,
}

/// <summary>Which way the upper blade is set off against the lower, seen from the upper blade's face with the tip up.</summary>
public enum Overlap
{
    /// <summary>It couldn't be read, or nobody looked.</summary>
    NotRead,

    /// <summary>The blades lie exactly over each other.</summary>
    None,

    /// <summary>The upper blade lies to the left.</summary>
    UpperToTheLeft,

    /// <summary>The upper blade lies to the right.</summary>
    UpperToTheRight,
}

/// <summary>Whether a reed may be handled and played.</summary>
public enum Fitness
{
    /// <summary>Clean, dry enough, nothing against playing it.</summary>
    Fit,

    /// <summary>Damp: it has to dry in moving air and be looked at again before anything else.</summary>
    DryFirst,

    /// <summary>Mould: nobody plays it.</summary>
    Mould,
}

/// <summary>What follows from how fit a reed is, in words for the person who unpacks it.</summary>
/// <param name="Fitness">How fit it is.</param>
/// <param name="Choice">What is ticked.</param>
/// <param name="WhatFollows">What to do now.</param>
public sealed record FitnessWords(Fitness Fitness, string Choice, string WhatFollows)
{
    /// <summary>The three answers.</summary>
    public static IReadOnlyList<FitnessWords> All { get; } =
    [
        new(Fitness.Fit, "Fit to handle", "It can go to the bench. Rinse it and wash your hands before it is played."),
        new(
            Fitness.DryFirst,
            "Dry it first",
            "Leave it open in moving air, away from heat and from the other reeds, and look at it again when it is dry. "
            + "Until then it stays off the bench."),
        new(
            Fitness.Mould,
            "Mould: not to be played",
            "Nobody plays it. Put it in a closed bag apart from the other reeds, wash your hands and wipe the bench. "
            + "Whoever sent it is told on the page of the batch and in the letter, and by mail where mail goes out; it isn’t worked on."),
    ];

    /// <summary>The words for one answer.</summary>
    /// <param name="fitness">How fit it is.</param>
    public static FitnessWords Of(Fitness fitness) => All[(int)fitness];
}

/// <summary>What was seen of one reed when the parcel was opened.</summary>
/// <param name="Presence">In the parcel or not.</param>
/// <param name="UpperMark">How the upper blade is told from the lower, such as “pencil dot near the thread”.</param>
/// <param name="Winding">The winding hand.</param>
/// <param name="Overlap">Which way the blades overlap.</param>
/// <param name="OverlapAgrees">
/// Whether the overlap goes the way the winding pushes; null when it wasn't judged. Neither way is wrong by itself.
/// </param>
/// <param name="Damage">What is damaged, in words.</param>
/// <param name="Fitness">Whether it may be handled and played; must be said of a reed that is here.</param>
public sealed record ReedArrival(
    Presence Presence,
    string? UpperMark = null,
    WindingHand Winding = WindingHand.NotRead,
    Overlap Overlap = Overlap.NotRead,
    bool? OverlapAgrees = null,
    string? Damage = null,
    Fitness? Fitness = null)
{
    /// <summary>The longest words about the upper blade's mark, in characters.</summary>
    public const int LongestUpperMark = 120;

    /// <summary>The longest words about damage, in characters.</summary>
    public const int LongestDamage = 500;

    /// <summary>What contradicts itself; empty when all is well.</summary>
    /// <param name="prefix">What stands before the names of the fields, such as “Reeds[0].”.</param>
    public IReadOnlyList<Problem> Check(string prefix = "")
    {
        var problems = new List<Problem>();
        PlainText.Read(UpperMark, prefix + nameof(UpperMark), LongestUpperMark, problems);
        PlainText.Read(Damage, prefix + nameof(Damage), LongestDamage, problems, severalLines: true);
        if (Presence is Presence.Here or Presence.Extra && Fitness is null)
        {
            problems.Add(new Problem(prefix + nameof(Fitness), "Say whether it is fit to handle before it goes any further."));
        }

        if (OverlapAgrees is not null
            && (Winding == WindingHand.NotRead || Overlap is Overlap.NotRead or Overlap.None))
        {
            problems.Add(new Problem(
                prefix + nameof(OverlapAgrees), "Whether they agree can only be said when both the winding and the overlap were read."));
        }

        return problems;
    }
}
