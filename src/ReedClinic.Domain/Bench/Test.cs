using System.Globalization;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Domain.Bench;

/// <summary>How the reed played under one test, by word and, for some tests, by pitch.</summary>
public sealed class Test : BenchEntry
{
    private Test()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Test;

    /// <summary>Which test.</summary>
    public TestKind TestKind { get; private init; }

    /// <summary>The index of the word on this test's <see cref="TestScale"/>.</summary>
    public int? Step { get; private init; }

    /// <summary>A remark.</summary>
    public string? Words { get; private init; }

    /// <summary>The pitch, as it was said, for the tests that have one.</summary>
    public SaidPitch? Pitch
    {
        get => PitchText is { } text && PitchClass is { } note && PitchCents is { } cents && PitchA4 is { } a4
            ? new SaidPitch(text, note, cents, PitchOctave, PitchBetween, a4, PitchLean)
            : null;
        private init
        {
            PitchText = value?.Text;
            PitchClass = value?.PitchClass;
            PitchCents = value?.Cents;
            PitchOctave = value?.Octave;
            PitchBetween = value?.Between;
            PitchA4 = value?.A4;
            PitchLean = value?.Lean;
        }
    }

    private string? PitchText { get; init; }

    private PitchClass? PitchClass { get; init; }

    private Cents? PitchCents { get; init; }

    private int? PitchOctave { get; init; }

    private PitchClass? PitchBetween { get; init; }

    private Hertz? PitchA4 { get; init; }

    private PitchLean? PitchLean { get; init; }

    /// <summary>What was measured, in tenths of a millimetre, for the test that is a number.</summary>
    public decimal? Millimetres
    {
        get => LengthTenths / 10m;
        private init => LengthTenths = value is { } mm ? (int)(mm * 10m) : null;
    }

    private int? LengthTenths { get; init; }

    /// <summary>The recording that it was measured from; null where somebody said it. What is measured stands beside what is said and replaces nothing.</summary>
    public RecordingId? MeasuredFrom { get; private init; }

    /// <summary>The word that was chosen, if any.</summary>
    public string? StepWord => Step is { } step ? TestScale.Of(TestKind).Steps[step] : null;

    /// <summary>What was measured, such as “70.5 mm”; null when nothing was.</summary>
    public string? MeasuredWords => Millimetres is { } mm ? string.Create(CultureInfo.InvariantCulture, $"{mm:0.0} mm") : null;

    /// <summary>Makes a test.</summary>
    /// <param name="test">Which test.</param>
    /// <param name="step">The index of the word on its scale.</param>
    /// <param name="pitch">The pitch, for the tests that have one.</param>
    /// <param name="words">A remark.</param>
    /// <param name="millimetres">The number, for the test that is one; whole tenths.</param>
    /// <param name="measuredFrom">The recording that it was measured from, if nobody said it.</param>
    /// <returns>The test, or what is wrong with it.</returns>
    public static Outcome<Test> Of(
        TestKind test, int? step = null, SaidPitch? pitch = null, string? words = null, decimal? millimetres = null, RecordingId? measuredFrom = null)
    {
        var problems = PlainText.Check(nameof(Words), words).ToList();
        if (!Enum.IsDefined(test))
        {
            problems.Add(new Problem(nameof(TestKind), "Choose a test."));
        }
        else if (Misfit(TestScale.Of(test), step, pitch, words, millimetres) is { } problem)
        {
            problems.Add(problem);
        }

        return Checked.Give(
            problems,
            () => new Test { TestKind = test, Step = step, Pitch = pitch, Words = PlainText.Tidy(words), Millimetres = millimetres, MeasuredFrom = measuredFrom });
    }

    private static Problem? Misfit(TestScale scale, int? step, SaidPitch? pitch, string? words, decimal? millimetres) => scale switch
    {
        _ when step is { } given && (given < 0 || given >= scale.Steps.Count) =>
            new Problem(nameof(Step), "Choose one of the words of this test."),
        { TakesPitch: false } when pitch is not null => new Problem(nameof(Pitch), "This test has no pitch of its own."),
        { TakesMillimetres: false } when millimetres is not null => new Problem(nameof(Millimetres), "This test isn’t measured."),
        { TakesMillimetres: true } => ReedLengths.Check(millimetres),
        _ when step is null && pitch is null && PlainText.Tidy(words) is null =>
            new Problem(nameof(Step), "Choose a word, or say it in your own."),
        _ => null,
    };
}
