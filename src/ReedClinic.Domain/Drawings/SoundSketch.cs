using System.Globalization;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Domain.Drawings;

/// <summary>What a drawing of a sound is made from.</summary>
/// <param name="Kind">What is played; null where no tone is heard.</param>
/// <param name="Figures">The numbers.</param>
/// <param name="Target">What a crow is compared with.</param>
/// <param name="HasBand">Whether there is a band around the target: only where the player said what they tune to.</param>
public sealed record SoundPicture(SoundKind? Kind, ReadingFigures Figures, CrowTarget Target, bool HasBand)
{
    /// <summary>What its pitch is held against: a crow its target, anything else the nearest note.</summary>
    public CrowTarget Against => Kind is SoundKind.Crow or null || Figures.Said(Target.Tuning) is not { } said ? Target : Target with { PitchClass = said.PitchClass };

    /// <summary>Whether the band is drawn.</summary>
    public bool ShowsBand => HasBand && Kind == SoundKind.Crow;
}

/// <summary>
/// The one picture of a sound: three octaves as bars that begin when they come, the first one dark where they don’t come together, and beside them where the pitch
/// stands. For a wide place and for a narrow one.
/// </summary>
public static class SoundSketch
{
    private const double Wide = 680;
    private const double Narrow = 320;
    private const double Lane = 56;
    private const double FirstLane = 58;
    private const double LaneFoot = 196;
    private const double Thick = 15;
    private const double Thin = 5;

    /// <summary>Draws it.</summary>
    /// <param name="picture">What it shows.</param>
    /// <param name="isWide">For a wide place.</param>
    public static Sketch Of(SoundPicture picture, bool isWide)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var lanes = new PlotFrame(isWide ? 74 : 66, isWide ? 430 : Narrow - 14, FirstLane - 30, LaneFoot, 0, 1, 0, 1);
        List<SketchPart> parts = [.. Octaves(picture.Figures, lanes), .. isWide ? Upright(picture) : Lying(picture)];
        return new Sketch(
            isWide ? Wide : Narrow, isWide ? 250 : 346, "What came first, and where it stands",
            SoundTelling.Sentence(picture.Kind, picture.Figures, picture.Target, picture.HasBand), parts);
    }

    // From a little before the first sound until a while after the last octave has come.
    private static (double From, double To) Window(ReadingFigures figures)
    {
        var last = figures.Order is { } order ? order[^1].Came!.Value - figures.Zero : 0;
        return (-0.06 * Math.Max(0.4, last * 1.7), Math.Max(0.4, last * 1.7));
    }

    private static IEnumerable<SketchPart> Octaves(ReadingFigures figures, PlotFrame ground)
    {
        var (from, to) = Window(figures);
        var frame = ground with { From = from, To = to };
        foreach (var part in figures.Order is null ? [] : frame.Moments())
        {
            yield return part;
        }

        var isBreathKnown = figures.BreathOnset.Value is not null;
        var counted = figures.Order is null ? "when each came can’t be told" : isBreathKnown ? "seconds after the breath" : "seconds after the first octave";
        yield return new SketchWords(SketchType.Name, counted, (frame.Left + frame.Right) / 2, LaneFoot + 46, SketchAlign.Middle);
        if (isBreathKnown && figures.Order is not null)
        {
            yield return new SketchPath(SketchInk.Moment, PlotFrame.Line((frame.X(0), frame.Top - 6), (frame.X(0), LaneFoot + 4)));
            yield return new SketchWords(SketchType.Name, "breath", frame.X(0), frame.Top - 12, SketchAlign.Start);
        }

        for (var octave = 6; octave >= 4; octave--)
        {
            var y = FirstLane + ((6 - octave) * Lane);
            yield return new SketchWords(SketchType.Label, SoundTelling.Name(octave), frame.Left - 10, y + 5, SketchAlign.End);
            foreach (var part in One(figures.Octaves.FirstOrDefault(one => one.Octave == octave), figures, frame, y))
            {
                yield return part;
            }
        }
    }

    private static IEnumerable<SketchPart> One(OctaveFigure? octave, ReadingFigures figures, PlotFrame frame, double y)
    {
        if (octave is not { Sounds: true })
        {
            return
            [
                new SketchPath(SketchInk.NoOctave, PlotFrame.Line((frame.Left, y), (frame.Right, y))),
                new SketchWords(SketchType.Step, "not heard", frame.Right, y - 7, SketchAlign.End),
            ];
        }

        var half = Thin + ((Thick - Thin) * Math.Clamp(1 + ((octave.Level.Value ?? 0) / 30), 0, 1));
        if (figures.Order is not { } order || octave.Came is not { } came)
        {
            return [new SketchPath(SketchInk.Octave, PlotFrame.Box(frame.Left, y - half, frame.Right, y + half))];
        }

        var isFirst = octave.Octave == order[0].Octave;
        var start = frame.X(came - figures.Zero);
        var name = figures.CameTogether ? "together" : "first";
        var words = isFirst && figures.BreathOnset.Value is not null ? $"{name}, {SoundTelling.Seconds(came - figures.Zero)}"
            : isFirst || figures.CameTogether ? name
            : $"{SoundTelling.Seconds(came - order[0].Came!.Value)} later";
        var isLate = start > frame.Left + (0.6 * (frame.Right - frame.Left));
        return
        [
            new SketchPath(isFirst && !figures.CameTogether ? SketchInk.FirstOctave : SketchInk.Octave, PlotFrame.Box(start, y - half, frame.Right, y + half)),
            new SketchWords(SketchType.Step, words, isLate ? frame.Right : start, y - half - 5, isLate ? SketchAlign.End : SketchAlign.Start),
        ];
    }

    private static (double Cents, double Spread, CentsRange Extent)? Stand(SoundPicture picture) =>
        picture.Figures.From(picture.Against).Value is { } cents
            ? (cents, picture.Figures.Unsteadiness.Value ?? 0, CrowStory.Around([cents]))
            : null;

    private static string Words(SoundPicture picture) => picture.Figures.Pitch.Value is null ? "" : SoundTelling.Stand(picture.Figures, picture.Against);

    // Sharper above.
    private static IEnumerable<SketchPart> Upright(SoundPicture picture)
    {
        const double left = 548, right = 632, middle = 590;
        if (Stand(picture) is not var (cents, spread, extent))
        {
            yield break;
        }

        var frame = new PlotFrame(left, right, 40, LaneFoot - 6, 0, 1, extent.Low.Value, extent.High.Value);
        if (picture.ShowsBand)
        {
            yield return new SketchPath(SketchInk.Band, PlotFrame.Box(left, frame.Y(CrowTarget.ToleranceCents), right, frame.Y(-CrowTarget.ToleranceCents)));
        }

        yield return new SketchPath(SketchInk.Ruler, PlotFrame.Line((middle, frame.Top), (middle, frame.Foot)));
        yield return new SketchPath(SketchInk.Aim, PlotFrame.Line((left, frame.Y(0)), (right, frame.Y(0))));
        yield return new SketchWords(SketchType.Label, picture.Against.PitchClass.Name, left - 10, frame.Y(0) + 5, SketchAlign.End);
        yield return new SketchWords(SketchType.Name, "sharper", middle, 28, SketchAlign.Middle);
        yield return new SketchWords(SketchType.Name, "flatter", middle, LaneFoot + 12, SketchAlign.Middle);
        if (frame.Y(cents - spread) - frame.Y(cents + spread) > 4)
        {
            yield return new SketchPath(SketchInk.Range, PlotFrame.Line((middle, frame.Y(cents + spread)), (middle, frame.Y(cents - spread))));
        }

        yield return new SketchDot(SketchInk.LastPoint, middle, frame.Y(cents), 7);
        yield return new SketchWords(SketchType.Label, Words(picture), middle, LaneFoot + 46, SketchAlign.Middle);
    }

    // Sharper to the right.
    private static IEnumerable<SketchPart> Lying(SoundPicture picture)
    {
        const double left = 24, right = Narrow - 24, y = 292;
        if (Stand(picture) is not var (cents, spread, extent))
        {
            yield break;
        }

        double X(double at) => left + ((Math.Clamp(at, extent.Low.Value, extent.High.Value) - extent.Low.Value) / (extent.High.Value - extent.Low.Value) * (right - left));
        if (picture.ShowsBand)
        {
            yield return new SketchPath(SketchInk.Band, PlotFrame.Box(X(-CrowTarget.ToleranceCents), y - 18, X(CrowTarget.ToleranceCents), y + 18));
        }

        yield return new SketchPath(SketchInk.Ruler, PlotFrame.Line((left, y), (right, y)));
        yield return new SketchPath(SketchInk.Aim, PlotFrame.Line((X(0), y - 18), (X(0), y + 18)));
        yield return new SketchWords(SketchType.Label, picture.Against.PitchClass.Name, X(0), y - 23, SketchAlign.Middle);
        yield return new SketchWords(SketchType.Name, "flatter", left, y - 23, SketchAlign.Start);
        yield return new SketchWords(SketchType.Name, "sharper", right, y - 23, SketchAlign.End);
        if (X(cents + spread) - X(cents - spread) > 4)
        {
            yield return new SketchPath(SketchInk.Range, PlotFrame.Line((X(cents - spread), y), (X(cents + spread), y)));
        }

        yield return new SketchDot(SketchInk.LastPoint, X(cents), y, 7);
        yield return new SketchWords(SketchType.Label, Words(picture), Narrow / 2, y + 42, SketchAlign.Middle);
    }

    /// <summary>A number with its uncertainty, as a table has it: a minus is a minus, and nothing is less than nought.</summary>
    /// <param name="figure">The number.</param>
    /// <param name="places">Places behind the point.</param>
    /// <param name="unit">Its unit; empty for none.</param>
    /// <param name="withPlus">Whether plus is written too.</param>
    public static string Written(Figure figure, int places, string unit, bool withPlus = false)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return figure.Value is { } value ? $"{Number(value, places, withPlus)} ± {Number(figure.PlusMinus!.Value, places)} {unit}".TrimEnd() : "–";
    }

    /// <summary>A number as it is printed.</summary>
    /// <param name="value">The number.</param>
    /// <param name="places">Places behind the point.</param>
    /// <param name="withPlus">Whether plus is written too.</param>
    public static string Number(double value, int places, bool withPlus = false)
    {
        var rounded = Math.Round(value, places, MidpointRounding.AwayFromZero);
        var size = Math.Abs(rounded).ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return (rounded < 0 ? "−" : withPlus && rounded > 0 ? "+" : "") + size;
    }
}
