using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What is said to a mark on one of the scales of the intake.</summary>
internal static class MarkWordings
{
    internal static IReadOnlyList<string> Marked { get; } =
    [
        "{under|beside} <scale> you {marked|had marked|chose} <mark>: <answer>.",
        "{your mark|what you marked} {under|beside} <scale> was <mark>: <answer>.",
    ];

    /// <summary>A further complaint, by its name.</summary>
    internal static IReadOnlyList<string> Also { get; } = ["{as for|as to} <what>: <answer>.", "{then|now} {to|about} <what>: <answer>."];

    internal static IReadOnlyList<string> AfterWork { get; } =
    [
        "when it {came|arrived}, <was>, and {after the work|after my work|by the end} <now>", "<was> when it {came|arrived}, and {after the work|after my work|by the end} <now>",
    ];

    /// <summary>Where work came after the last time it was tried.</summary>
    internal static IReadOnlyList<string> BeforeLast { get; } =
        ["when it {came|arrived}, <was>, and when I last tried it, before <before>, <now>", "<was> when it {came|arrived}, and when I last tried it, before <before>, <now>"];

    /// <summary>Before what another test says of it: the thing itself wasn’t tried.</summary>
    internal static IReadOnlyList<string> NotItself { get; } = ["I {made no test of|did not test} {just|exactly} that, but"];

    internal static IReadOnlyList<string> LaterOn { get; } = ["when it {came|arrived}, <was>, and later <now>", "<was> when it {came|arrived}, and later <now>"];

    internal static IReadOnlyList<string> Unchanged { get; } =
        ["<was> when it {came|arrived}, and that has not changed", "when it {came|arrived}, <was>, and it has {stayed so|remained so}"];

    internal static IReadOnlyList<string> Once { get; } = ["{when it came|when it arrived|when I tried it}, <was>", "<was> {when it came|when it arrived|when I tried it}"];

    internal static IReadOnlyList<string> Later { get; } = ["I tried it only later, and {then|by then} <now>"];

    /// <summary>The same of another test than the one that would answer.</summary>
    internal static IReadOnlyList<string> NearLater { get; } = ["later <now>", "later on <now>"];

    /// <summary>What is a matter of taste, and the same for both.</summary>
    internal static IReadOnlyList<string> TasteShared { get; } = ["{in this|here} {we agree|our tastes agree|we think alike}, for <what>", "<what>, so {in this|here} {we agree|our tastes agree|we think alike}"];

    internal static IReadOnlyList<string> Found { get; } = ["I {found|noticed|met} it too"];

    internal static IReadOnlyList<string> Suspected { get; } = ["I {suspect|suspected} it too"];

    internal static IReadOnlyList<string> WorkedOn { get; } = ["I {found|noticed|met} it too, and worked on it"];

    internal static IReadOnlyDictionary<FindingEnding, IReadOnlyList<string>> Ended { get; } = new Dictionary<FindingEnding, IReadOnlyList<string>>
    {
        [FindingEnding.Gone] = ["I {found|noticed|met} it too, and it {has been|is} put right"],
        [FindingEnding.Better] = ["I {found|noticed|met} it too; it is better now, though not quite as it should be"],
        [FindingEnding.Unchanged] = ["I {found|noticed|met} it too, and it is as it was"],
        [FindingEnding.LeftOnPurpose] = ["I {found|noticed|met} it too, and left it as it is, on purpose"],
    };
}
