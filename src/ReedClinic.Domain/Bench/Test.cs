using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

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
            ? new SaidPitch(text, note, cents, PitchOctave, PitchBetween, a4)
            : null;
        private init
        {
            PitchText = value?.Text;
            PitchClass = value?.PitchClass;
            PitchCents = value?.Cents;
            PitchOctave = value?.Octave;
            PitchBetween = value?.Between;
            PitchA4 = value?.A4;
        }
    }

    private string? PitchText { get; init; }

    private PitchClass? PitchClass { get; init; }

    private Cents? PitchCents { get; init; }

    private int? PitchOctave { get; init; }

    private PitchClass? PitchBetween { get; init; }

    private Hertz? PitchA4 { get; init; }

    /// <summary>The word that was chosen, if any.</summary>
    public string? StepWord => Step is { } step ? TestScale.Of(TestKind).Steps[step] : null;

    /// <summary>Makes a test.</summary>
    /// <param name="test">Which test.</param>
    /// <param name="step">The index of the word on its scale.</param>
    /// <param name="pitch">The pitch, for the tests that have one.</param>
    /// <param name="words">A remark.</param>
    /// <returns>The test, or what is wrong with it.</returns>
    public static Outcome<Test> Of(TestKind test, int? step = null, SaidPitch? pitch = null, string? words = null)
    {
        var problems = PlainText.Check(nameof(Words), words).ToList();
        if (!Enum.IsDefined(test))
        {
            problems.Add(new Problem(nameof(TestKind), "Choose a test."));
        }
        else if (step is { } given && (given < 0 || given >= TestScale.Of(test).Steps.Count))
        {
            problems.Add(new Problem(nameof(Step), "Choose one of the words of this test."));
        }
        else if (pitch is not null && !TestScale.Of(test).TakesPitch)
        {
            problems.Add(new Problem(nameof(Pitch), "This test has no pitch of its own."));
        }
        else if (step is null && pitch is null && PlainText.Tidy(words) is null)
        {
            problems.Add(new Problem(nameof(Step), "Choose a word, or say it in your own."));
        }

        return Checked.Give(
            problems,
            () => new Test { TestKind = test, Step = step, Pitch = pitch, Words = PlainText.Tidy(words) });
    }
}
