using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Domain.Drawings;

/// <summary>A plot over time, and where on it time begins and ends: what is played can be shown on it.</summary>
/// <param name="Drawing">The plot.</param>
/// <param name="Left">Where its first moment stands, as a share of its width, 0 to 1.</param>
/// <param name="Right">Where its last moment stands.</param>
public sealed record SoundPlot(Sketch Drawing, double Left, double Right);

/// <summary>A sound that is drawn from moment to moment.</summary>
/// <param name="Picture">Its numbers and what they are compared with.</param>
/// <param name="Series">Its moments.</param>
public sealed record SoundTrack(SoundPicture Picture, SoundSeries Series)
{
    /// <summary>The first moment at which a pitch is heard, in seconds; 0 where none is.</summary>
    public double Begins => Math.Max(0, Series.Hertz.Index().FirstOrDefault(one => one.Item is not null).Index) * Series.Step;

    /// <summary>The pitch in each moment, in cents from what it is held against, octaves folded away around its own middle.</summary>
    public IReadOnlyList<double?> Cents
    {
        get
        {
            if (Picture.Figures is not { Pitch.Value: { } middle } || Picture.Figures.From(Picture.Against).Value is not { } stand)
            {
                return [.. Series.Hertz.Select(_ => (double?)null)];
            }

            return [.. Series.Hertz.Select(hertz => hertz is { } at ? stand + EqualTemperament.Between(new Hertz(middle), new Hertz(at)).FoldedToOneOctave.Value : (double?)null)];
        }
    }
}

/// <summary>Lays out how a sound goes: its pitch, its level, and two sounds over each other.</summary>
public static class SoundPlots
{
    private const double Wide = 680;
    private const double Narrow = 320;
    private const double PitchHeight = 226;
    private const double LevelHeight = 176;
    private const double Quietest = -80;

    /// <summary>The pitch, with the moments at which the octaves come.</summary>
    /// <param name="track">The sound.</param>
    /// <param name="isWide">For a wide place.</param>
    public static SoundPlot Pitch(SoundTrack track, bool isWide)
    {
        ArgumentNullException.ThrowIfNull(track);
        var cents = track.Cents;
        var frame = Counted(Frame(isWide, PitchHeight, Extent(cents)), track.Picture.Figures);
        List<SketchPart> parts = [.. Ground(track.Picture, frame), .. Entries(track.Picture.Figures, frame), new SketchPath(SketchInk.Trace, frame.Trace(cents, track.Series.Step, frame.From))];
        return Plot(isWide, PitchHeight, "The pitch from moment to moment", $"Cents from {track.Picture.Against.PitchClass.Name}, sharper above.{Came(track.Picture.Figures)}", parts, frame);
    }

    /// <summary>The level, in decibels under full scale.</summary>
    /// <param name="track">The sound.</param>
    /// <param name="isWide">For a wide place.</param>
    public static SoundPlot Level(SoundTrack track, bool isWide)
    {
        ArgumentNullException.ThrowIfNull(track);
        var frame = Counted(Frame(isWide, LevelHeight, new CentsRange(new Cents(Quietest), Cents.Zero)), track.Picture.Figures);
        List<SketchPart> parts = [.. frame.Moments(), .. new[] { -60, -40, -20, 0 }.SelectMany(level => frame.Across(level, SoundSketch.Number(level, 0)))];
        if (track.Picture.Figures.BreathOnset.Value is not null)
        {
            parts.AddRange(Moment(frame, 0, "breath"));
        }

        parts.Add(new SketchPath(SketchInk.Trace, frame.Trace([.. track.Series.Decibels.Select(level => (double?)level)], track.Series.Step, frame.From)));
        var (least, most) = (track.Series.Decibels.Min(), track.Series.Decibels.Max());
        return Plot(isWide, LevelHeight, "How loud it is from moment to moment", $"From {SoundSketch.Number(least, 0)} to {SoundSketch.Number(most, 0)} decibels, where 0 is the loudest that the recording can hold.", parts, frame);
    }

    /// <summary>Two sounds over each other, both from their first tone on.</summary>
    /// <param name="track">The one that is looked at.</param>
    /// <param name="other">The one it is compared with, dashed.</param>
    /// <param name="isWide">For a wide place.</param>
    public static SoundPlot Beside(SoundTrack track, SoundTrack other, bool isWide)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(other);
        other = other with { Picture = other.Picture with { Kind = track.Picture.Kind, Target = track.Picture.Target } };
        var against = track.Picture.Against;
        IReadOnlyList<double?> cents = track.Cents, others = [.. other.Cents.Select(at => at + Shift(other.Picture, against))];
        var longest = Math.Max(track.Picture.Figures.Seconds - track.Begins, other.Picture.Figures.Seconds - other.Begins);
        var frame = Frame(isWide, PitchHeight, Extent([.. cents, .. others])) with { To = Math.Max(0.1, longest) };
        List<SketchPart> parts =
        [
            .. Ground(track.Picture, frame),
            new SketchPath(SketchInk.OtherTrace, frame.Trace(others, other.Series.Step, -other.Begins)),
            new SketchPath(SketchInk.Trace, frame.Trace(cents, track.Series.Step, -track.Begins)),
        ];
        var words = $"This one stood {SoundTelling.Stand(track.Picture.Figures, against)}, the other {SoundTelling.Stand(other.Picture.Figures, against)}.";
        return Plot(isWide, PitchHeight, "Both over each other, from the first tone on", words, parts, frame);
    }

    private static string Came(ReadingFigures figures) =>
        figures.CameTogether ? " The octaves come together."
        : figures.Order is not { Count: > 1 } order ? ""
        : $" The {SoundTelling.Name(order[0].Octave)} octave is first, the {string.Join(", the ", order.Skip(1).Select(one => $"{SoundTelling.Name(one.Octave)} one {SoundTelling.Seconds(one.Came!.Value - order[0].Came!.Value)} later"))}.";

    // All of the recording, so that what is played can be shown on it; its seconds count from the first sound.
    private static PlotFrame Counted(PlotFrame frame, ReadingFigures figures) => frame with { From = -figures.Zero, To = figures.Seconds - figures.Zero };

    // Both are held against the same note.
    private static double Shift(SoundPicture other, CrowTarget against) =>
        (other.Figures.From(against).Value ?? 0) - (other.Figures.From(other.Against).Value ?? 0);

    private static SoundPlot Plot(bool isWide, double height, string title, string words, IReadOnlyList<SketchPart> parts, PlotFrame frame)
    {
        var width = isWide ? Wide : Narrow;
        return new SoundPlot(new Sketch(width, height, title, words, parts), frame.Left / width, frame.Right / width);
    }

    private static PlotFrame Frame(bool isWide, double height, CentsRange extent) =>
        new(isWide ? 64 : 48, (isWide ? Wide : Narrow) - 14, 34, height - 34, 0, 1, extent.Low.Value, extent.High.Value);

    // What nine tenths of the moments need: a slip of the first milliseconds doesn’t flatten all the rest.
    private static CentsRange Extent(IReadOnlyList<double?> cents)
    {
        var sorted = cents.OfType<double>().Order().ToList();
        return sorted.Count == 0 ? CrowStory.Around([]) : CrowStory.Around([sorted[sorted.Count / 20], sorted[sorted.Count * 19 / 20]]);
    }

    private static IEnumerable<SketchPart> Ground(SoundPicture picture, PlotFrame frame)
    {
        if (picture.ShowsBand)
        {
            yield return new SketchPath(SketchInk.Band, PlotFrame.Box(frame.Left, frame.Y(CrowTarget.ToleranceCents), frame.Right, frame.Y(-CrowTarget.ToleranceCents)));
        }

        var step = frame.High - frame.Low > 400 ? 200 : frame.High - frame.Low > 200 ? 100 : 50;
        for (var cents = Math.Ceiling(frame.Low / step) * step; cents <= frame.High; cents += step)
        {
            foreach (var part in cents == 0 ? frame.Across(0, picture.Against.PitchClass.Name, SketchInk.Aim) : frame.Across(cents, FormattableString.Invariant($"{cents:+0;−0}")))
            {
                yield return part;
            }
        }

        foreach (var part in frame.Moments())
        {
            yield return part;
        }
    }

    // Words that would stand on each other go up and down by turns.
    private static IEnumerable<SketchPart> Entries(ReadingFigures figures, PlotFrame frame)
    {
        if (figures is { CameTogether: true, Order: [var first, ..] })
        {
            var at = frame.X(first.Came!.Value - figures.Zero);
            yield return new SketchPath(SketchInk.Moment, PlotFrame.Line((at, frame.Top - 8), (at, frame.Foot)));
            yield return new SketchWords(SketchType.Name, "together", Math.Min(at, frame.Right - 64), frame.Top - 13, SketchAlign.Start);
            yield break;
        }

        var last = double.MinValue;
        foreach (var octave in figures.Order ?? [])
        {
            var x = frame.X(octave.Came!.Value - figures.Zero);
            yield return new SketchPath(SketchInk.Moment, PlotFrame.Line((x, frame.Top - 8), (x, frame.Foot)));
            if (x - last > 52)
            {
                yield return new SketchWords(SketchType.Name, SoundTelling.Name(octave.Octave), Math.Min(x, frame.Right - 50), frame.Top - 13, SketchAlign.Start);
                last = x;
            }
        }
    }

    private static IEnumerable<SketchPart> Moment(PlotFrame frame, double seconds, string words) =>
    [
        new SketchPath(SketchInk.Moment, PlotFrame.Line((frame.X(seconds), frame.Top - 8), (frame.X(seconds), frame.Foot))),
        new SketchWords(SketchType.Name, words, Math.Min(frame.X(seconds), frame.Right - 50), frame.Top - 13, SketchAlign.Start),
    ];
}
