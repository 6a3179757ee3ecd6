using System.Globalization;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>Whether a crow stands on its target.</summary>
public enum CrowStand
{
    /// <summary>On it, or near enough.</summary>
    InTune,

    /// <summary>Sharper than that.</summary>
    High,

    /// <summary>Flatter than that.</summary>
    Low,
}

/// <summary>Tells in few words what a clip says: whether it is in tune, which octaves sound, which came first and how soon.</summary>
public static class SoundTelling
{
    private const double Semitone = 100;

    /// <summary>Whether it is in tune; null for anything but a crow, and where no tone is heard.</summary>
    /// <param name="kind">What is played; null where no tone is heard.</param>
    /// <param name="figures">What was read.</param>
    /// <param name="target">What a crow is compared with.</param>
    public static CrowStand? StandOf(SoundKind? kind, ReadingFigures figures, CrowTarget target)
    {
        ArgumentNullException.ThrowIfNull(figures);
        return kind != SoundKind.Crow || figures.From(target).Value is not { } cents ? null
            : Math.Abs(Math.Round(cents)) <= CrowTarget.ToleranceCents ? CrowStand.InTune
            : cents > 0 ? CrowStand.High
            : CrowStand.Low;
    }

    /// <summary>What comes first: “In tune: 14 cents below C”, without a full stop.</summary>
    /// <param name="kind">What is played; null where no tone is heard.</param>
    /// <param name="figures">What was read.</param>
    /// <param name="target">What a crow is compared with.</param>
    /// <param name="isTuningSaid">Whether the player said what they tune to; else the tuning it was held against is told.</param>
    public static string Head(SoundKind? kind, ReadingFigures figures, CrowTarget target, bool isTuningSaid)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (kind is null || figures.Said(target.Tuning) is not { } said)
        {
            return "No tone is heard in it";
        }

        if (StandOf(kind, figures, target) is not { } stand)
        {
            return $"The {Name(kind.Value)} stood at {said.Show()}";
        }

        var words = stand switch { CrowStand.InTune => "In tune", CrowStand.High => "High", _ => "Low" };
        var by = isTuningSaid ? "" : string.Create(CultureInfo.InvariantCulture, $" for A at {target.Tuning.A4.Value:0.#} Hz");
        var near = Math.Abs(figures.From(target).Value ?? 0) > Semitone / 2 ? $", nearer to {said.PitchClass.Name}" : "";
        return $"{words}{by}: {Stand(figures, target)}{near}";
    }

    /// <summary>What was heard, where it isn’t known what is played: “A note near A4, 8 cents high”, without a full stop and without a judgement.</summary>
    /// <param name="figures">What was read.</param>
    /// <param name="tuning">What is tuned to.</param>
    /// <returns>The words; null where no pitch was read.</returns>
    public static string? Heard(ReadingFigures figures, Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (figures.Said(tuning) is not { Octave: { } octave } said)
        {
            return null;
        }

        var cents = (int)said.Cents.Value;
        var off = cents == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {Math.Abs(cents)} {(Math.Abs(cents) == 1 ? "cent" : "cents")} {(cents > 0 ? "high" : "low")}");
        return string.Create(CultureInfo.InvariantCulture, $"A note near {said.PitchClass.Name}{octave}{off}");
    }

    /// <summary>Which octaves sound, which came first, and how soon: a sentence with its full stop; empty where that isn’t asked.</summary>
    /// <param name="kind">What is played; null where no tone is heard.</param>
    /// <param name="figures">What was read.</param>
    public static string Octaves(SoundKind? kind, ReadingFigures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (kind is null || figures.Pitch.Value is null)
        {
            return "";
        }

        if (kind != SoundKind.Crow)
        {
            return figures.TimeToSpeak.Value is { } soon ? $"It spoke {Seconds(soon)} after the breath." : "";
        }

        var heard = figures.Octaves.Where(one => one.Sounds).Reverse().ToList();
        return heard.Count switch
        {
            0 => "No octave stands out.",
            1 => $"Only the {Name(heard[0].Octave)} octave sounds{Soon(figures)}.",
            3 => $"All three octaves sound{Came(figures)}.",
            _ => $"The {List([.. heard.Select(one => Name(one.Octave))])} octaves sound{Came(figures)}.",
        };
    }

    /// <summary>All of it, for whoever doesn’t see the page.</summary>
    /// <param name="kind">What is played; null where no tone is heard.</param>
    /// <param name="figures">What was read.</param>
    /// <param name="target">What a crow is compared with.</param>
    /// <param name="isTuningSaid">Whether the player said what they tune to.</param>
    public static string Sentence(SoundKind? kind, ReadingFigures figures, CrowTarget target, bool isTuningSaid) =>
        $"{Head(kind, figures, target, isTuningSaid)}. {Octaves(kind, figures)}".TrimEnd();

    /// <summary>The octaves that are heard: in the order in which they came where that is known, else the high one first.</summary>
    /// <param name="figures">What was read.</param>
    public static IReadOnlyList<OctaveFigure> InOrder(ReadingFigures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        return figures.Order ?? [.. figures.Octaves.Where(one => one.Sounds).OrderByDescending(one => one.Octave)];
    }

    /// <summary>Where the pitch stands, such as “14 cents below C”.</summary>
    /// <param name="figures">What was read.</param>
    /// <param name="target">What it is compared with.</param>
    public static string Stand(ReadingFigures figures, CrowTarget target)
    {
        ArgumentNullException.ThrowIfNull(figures);
        var cents = new Cents(Math.Round(figures.From(target).Value ?? 0));
        return (cents == Cents.Zero ? "on " : "") + CentsWords.Stand(new CentsRange(cents, cents), target.PitchClass.Name);
    }

    /// <summary>The name of one of the three octaves.</summary>
    /// <param name="octave">4, 5 or 6.</param>
    public static string Name(int octave) => octave switch { 4 => "low", 5 => "middle", _ => "high" };

    private static string Came(ReadingFigures figures)
    {
        if (figures.Order is not { } order)
        {
            return ", and which came first can’t be told: nothing quiet is before them";
        }

        var within = order[^1].Came!.Value - order[0].Came!.Value;
        return figures.CameTogether ? (order.Count == 2 ? ", both at once" : ", all at once") + Soon(figures)
            : $": the {Name(order[0].Octave)} one first{Soon(figures)}, then the {(order.Count == 2 ? $"{Name(order[1].Octave)} one {Seconds(within)} later" : $"others within {Seconds(within)}")}";
    }

    private static string Soon(ReadingFigures figures) => figures.TimeToSpeak.Value is { } soon ? $", {Seconds(soon)} after the breath" : "";

    private static string List(IReadOnlyList<string> names) => names.Count == 1 ? names[0] : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}";

    /// <summary>Seconds to a hundredth; what is less counts as one.</summary>
    internal static string Seconds(double seconds) => seconds < 0.01 ? "0.01 s" : string.Create(CultureInfo.InvariantCulture, $"{seconds:0.00} s");

    private static string Name(SoundKind kind) => kind switch { SoundKind.Peep => "peep", SoundKind.LongTone => "note", _ => "notes" };
}
