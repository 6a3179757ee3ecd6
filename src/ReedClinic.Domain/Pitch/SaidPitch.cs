using System.Globalization;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Pitch;

/// <summary>A little off a note, without a number.</summary>
public enum PitchLean
{
    /// <summary>A little low.</summary>
    Flat,

    /// <summary>A little high.</summary>
    Sharp,
}

/// <summary>
/// A pitch as a musician says it, with the A that was in force when it was said: changing what a student tunes to never
/// rewrites what was heard.
/// </summary>
public sealed record SaidPitch
{
    /// <summary>The longest text that is read, in characters.</summary>
    public const int LongestText = 40;

    /// <summary>
    /// How far “a little flat” may reach, in cents: half a semitone, since beyond that the next note would have been named. It is
    /// this program’s own default.
    /// </summary>
    public const double LeanCents = 50;

    /// <summary>Makes a said pitch from its parts, as they were stored.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="pitchClass">The note, or the lower note of “between”.</param>
    /// <param name="cents">The deviation from that note; from −99 to +99, zero for “between”.</param>
    /// <param name="octave">The octave in scientific counting (A4 is the tuning A), if it was said.</param>
    /// <param name="between">The upper note, when the pitch was said as lying between two.</param>
    /// <param name="a4">The A in force.</param>
    /// <param name="lean">A little flat or sharp, when it was said without a number.</param>
    /// <exception cref="ArgumentOutOfRangeException">The deviation is more than 99 cents.</exception>
    /// <exception cref="ArgumentException">It leans and has a number, or lies between two notes, at once.</exception>
    public SaidPitch(
        string text, PitchClass pitchClass, Cents cents, int? octave, PitchClass? between, Hertz a4, PitchLean? lean = null)
    {
        if (lean is not null && (cents.Value != 0 || between is not null))
        {
            throw new ArgumentException("What is a little flat or sharp has no number and lies at one note.", nameof(lean));
        }

        if (Math.Abs(cents.Value) > 99)
        {
            throw new ArgumentOutOfRangeException(nameof(cents), cents.Value, "At most 99 cents from the note that is named.");
        }

        Text = text;
        PitchClass = pitchClass;
        Cents = cents;
        Octave = octave;
        Between = between;
        A4 = a4;
        Lean = lean;
    }

    /// <summary>What was typed, as it was typed.</summary>
    public string Text { get; init; }

    /// <summary>The note, or the lower note of “between”.</summary>
    public PitchClass PitchClass { get; private init; }

    /// <summary>The deviation from that note; plus is sharper. Zero for “between”.</summary>
    public Cents Cents { get; private init; }

    /// <summary>The octave in scientific counting (A4 is the tuning A), if it was said; for “between”, the lower note's.</summary>
    public int? Octave { get; private init; }

    /// <summary>The upper note, when the pitch was said as lying between two.</summary>
    public PitchClass? Between { get; private init; }

    /// <summary>The A in force when it was said.</summary>
    public Hertz A4 { get; private init; }

    /// <summary>A little flat or sharp, when it was said without a number: “a flat C”.</summary>
    public PitchLean? Lean { get; private init; }

    /// <summary>The frequency, when the octave was said and the pitch is one pitch.</summary>
    public Hertz? Frequency => Octave is { } octave && Between is null && Lean is null
        ? EqualTemperament.FrequencyOf((octave + 1) * 12 + PitchClass.Value + Cents.Value / 100, new Tuning(A4))
        : null;

    /// <summary>
    /// Reads a pitch as a musician writes it: <c>C</c>, <c>B♭ +10</c>, <c>C6 -15</c>, <c>Bb</c>, <c>c#5 +5c</c>,
    /// <c>a C, 15 cents flat</c>, <c>between B and C</c>, <c>flat C</c>, <c>C a bit low</c>. <c>B flat</c> is the note B♭.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="tuning">What is tuned to.</param>
    /// <param name="field">The form field that a problem should name.</param>
    /// <returns>The pitch, or one problem that gives examples.</returns>
    public static Outcome<SaidPitch> Read(string? text, Tuning tuning, string field = "pitch") =>
        SaidPitchReader.Read(text, tuning, field);

    /// <summary>How far the pitch lies from a target, octaves folded away; plus is sharper.</summary>
    /// <param name="target">What it is compared with.</param>
    public CentsRange Against(CrowTarget target)
    {
        var shift = EqualTemperament.Between(target.Tuning.A4, A4);
        var at = (PitchClass.Value - target.PitchClass.Value) * 100 + Cents.Value + shift.Value;
        return (Between, Lean) switch
        {
            ({ } upper, _) => Fold(at, PitchClass.OfMidi(upper.Value - PitchClass.Value + 12).Value * 100),
            (_, PitchLean.Flat) => Fold(at - LeanCents, LeanCents),
            (_, PitchLean.Sharp) => Fold(at, LeanCents),
            _ => Fold(at, 0),
        };
    }

    private static CentsRange Fold(double from, double width)
    {
        var low = new Cents(from).FoldedToOneOctave;
        var high = new Cents(low.Value + width);
        return high.Value > 600 + width / 2.0
            ? new CentsRange(new Cents(low.Value - 1200), new Cents(high.Value - 1200))
            : new CentsRange(low, high);
    }

    /// <summary>The pitch in words: “a C, 15 cents flat”, “a C, a little flat”, “between B and C”.</summary>
    public string Show() => Show(Octave);

    /// <summary>The same without an octave, where only the note counts.</summary>
    public string ShowNote() => Show(null);

    private string Show(int? octave)
    {
        if (Between is { } upper)
        {
            var upperOctave = octave is { } o ? o + (upper.Value < PitchClass.Value ? 1 : 0) : (int?)null;
            return string.Create(
                CultureInfo.InvariantCulture, $"between {PitchClass.Name}{octave} and {upper.Name}{upperOctave}");
        }

        var note = PitchClass.WithArticle(octave);
        if (Lean is { } lean)
        {
            return $"{note}, a little {(lean == PitchLean.Flat ? "flat" : "sharp")}";
        }

        var size = Math.Abs(Cents.Value);
        if (size == 0)
        {
            return note;
        }

        var unit = size == 1 ? "cent" : "cents";
        var way = Cents.Value < 0 ? "flat" : "sharp";
        return string.Create(CultureInfo.InvariantCulture, $"{note}, {size:0.##} {unit} {way}");
    }

    /// <inheritdoc/>
    public override string ToString() => Show();
}
