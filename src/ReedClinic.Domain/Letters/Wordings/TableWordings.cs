using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>Tests and their words in the table of a letter: the same as in its sentences, for whoever has never worked at a bench.</summary>
internal static class TableWordings
{
    private static readonly Dictionary<TestKind, string> Names = new()
    {
        [TestKind.LowResponse] = "low notes",
        [TestKind.HighSteadiness] = "high notes",
        [TestKind.TonguedStarts] = "tongued notes",
        [TestKind.Edge] = "edge of the sound",
        [TestKind.Depth] = "depth of the sound",
    };

    private static readonly Dictionary<TestKind, IReadOnlyList<string>> Steps = new()
    {
        [TestKind.Crow] = ["high first, then low as well", "high and low at once", "low only", "high only"],
        [TestKind.Opening] = ["closed", "a little narrow", "right", "a little wide", "very wide"],
        [TestKind.ClosingOrder] = ["the middle closes first", "all at once", "the sides close first"],
        [TestKind.LowResponse] = ["don’t speak", "late", "speak with a little care", "speak at once"],
        [TestKind.HighSteadiness] = ["drop out", "wander", "hold with help", "hold"],
    };

    /// <summary>The name of a test.</summary>
    /// <param name="test">The test.</param>
    internal static string Name(TestKind test) => Names.GetValueOrDefault(test) ?? TestScale.Of(test).Name;

    /// <summary>How it came out; null where no word was chosen.</summary>
    /// <param name="test">The test.</param>
    internal static string? Step(Test test) => test.Step is { } step && Steps.TryGetValue(test.TestKind, out var steps) ? steps[step] : test.StepWord;
}
