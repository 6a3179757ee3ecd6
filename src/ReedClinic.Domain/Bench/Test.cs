using ReedClinic.Domain.Outcomes;

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

    /// <summary>The word that was chosen, if any.</summary>
    public string? StepWord => Step is { } step ? TestScale.Of(TestKind).Steps[step] : null;

    /// <summary>Makes a test.</summary>
    /// <param name="test">Which test.</param>
    /// <param name="step">The index of the word on its scale.</param>
    /// <param name="words">A remark.</param>
    /// <returns>The test, or what is wrong with it.</returns>
    public static Outcome<Test> Of(TestKind test, int? step = null, string? words = null)
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
        else if (step is null && PlainText.Tidy(words) is null)
        {
            problems.Add(new Problem(nameof(Step), "Choose a word, or say it in your own."));
        }

        return Checked.Give(problems, () => new Test { TestKind = test, Step = step, Words = PlainText.Tidy(words) });
    }
}
