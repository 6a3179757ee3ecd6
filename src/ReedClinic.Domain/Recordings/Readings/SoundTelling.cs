using System.Globalization;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>Tells in one sentence what a clip says: which octave came first, how soon, where it stands, how steadily.</summary>
public static class SoundTelling
{
    /// <summary>The sentence, with its full stop.</summary>
    /// <param name="kind">What is played; null where no tone is heard.</param>
    /// <param name="figures">What was read.</param>
    /// <param name="target">What a crow is compared with.</param>
    public static string Sentence(SoundKind? kind, ReadingFigures figures, CrowTarget target)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (kind is null || figures.Pitch.Value is null)
        {
            return "No tone is heard in it.";
        }

        var stood = kind == SoundKind.Crow ? $"{Octaves(figures)}; the crow stood {Stand(figures, target)}" : $"The {Name(kind.Value)} stood at {figures.Said(target.Tuning)!.Show()}{Soon(figures)}";
        return stood + (figures.Unsteadiness.Value is { } cents ? $" and held within {Whole(cents)}." : ".");
    }

    /// <summary>The octaves that are heard, those whose beginning is known first and by it.</summary>
    /// <param name="figures">What was read.</param>
    public static IReadOnlyList<OctaveFigure> InOrder(ReadingFigures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        return [.. figures.Octaves.Where(one => one.Sounds).OrderBy(one => one.Entry.Value ?? double.MaxValue).ThenByDescending(one => one.Octave)];
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

    private static string Octaves(ReadingFigures figures)
    {
        var heard = InOrder(figures);
        if (heard.Count == 0)
        {
            return "No octave stands out";
        }

        var others = heard.Skip(1).ToList();
        var names = List([.. heard.Select(one => Name(one.Octave))]);
        if (heard.Any(one => one.Entry.Value is null))
        {
            return heard.Count == 1 ? $"Only the {names} octave sounds" : $"The {names} octaves sound, and which came first can’t be told";
        }

        if (others.Count == 0)
        {
            return $"Only the {names} octave sounds{Soon(figures).TrimEnd(',')}";
        }

        var within = others[^1].Entry.Value!.Value - heard[0].Entry.Value!.Value;
        return $"The {Name(heard[0].Octave)} octave came first{Soon(figures).TrimEnd(',')}, then the {List([.. others.Select(one => Name(one.Octave))])} {(others.Count == 1 ? "one " : "ones ")}within {Seconds(within)}";
    }

    private static string Soon(ReadingFigures figures) => figures.TimeToSpeak.Value is { } soon ? $", {Seconds(soon)} after the breath," : "";

    private static string List(IReadOnlyList<string> names) => names.Count == 1 ? names[0] : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}";

    /// <summary>Seconds to a hundredth; what is less counts as one.</summary>
    internal static string Seconds(double seconds) => seconds < 0.01 ? "0.01 s" : string.Create(CultureInfo.InvariantCulture, $"{seconds:0.00} s");

    private static string Whole(double cents)
    {
        var whole = Math.Max(1, Math.Round(cents));
        return string.Create(CultureInfo.InvariantCulture, $"{whole:0} {(whole == 1 ? "cent" : "cents")}");
    }

    private static string Name(SoundKind kind) => kind switch { SoundKind.Peep => "peep", SoundKind.LongTone => "note", _ => "notes" };
}
