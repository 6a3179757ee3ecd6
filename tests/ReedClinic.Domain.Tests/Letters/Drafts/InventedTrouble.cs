using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Tests.Letters.Drafts;

/// <summary>A fault as an invented reed may have it: what is usually done about it, and which tests show it.</summary>
/// <param name="Kind">The fault.</param>
/// <param name="Works">What is done about it.</param>
/// <param name="Tests">The tests that show it.</param>
/// <param name="Bothers">How a student may say it.</param>
internal sealed record InventedTrouble(string Kind, string[] Works, TestKind[] Tests, string Bothers)
{
    /// <summary>Whether it is about the opening.</summary>
    public bool IsOfTheOpening => Kind.StartsWith("opening", StringComparison.Ordinal) || Kind == "spine-scraped";

    /// <summary>Whether it lies above the middle of a test with two sides.</summary>
    /// <param name="test">The test.</param>
    public bool IsHigh(TestKind test) => (Kind, test) is ("opening-wide", TestKind.Opening or TestKind.Effort) or ("opening-narrow", TestKind.TuningNote) or ("tip-short", TestKind.Effort);

    /// <summary>How it may end: what nothing is done about stays.</summary>
    /// <param name="ending">How it would end otherwise.</param>
    public FindingEnding EndsAs(FindingEnding ending) => Works.Length == 0 ? FindingEnding.Unchanged : ending;

    /// <summary>What is met most often stands more than once.</summary>
    public static IReadOnlyList<InventedTrouble> All { get; } =
    [
        .. Enumerable.Repeat(new InventedTrouble(
            "tip-corners-thick", ["thin-corners", "clip-hair"], [TestKind.SoftestStart, TestKind.Crow], "Soft notes come in with a thump"), 5),
        .. Enumerable.Repeat(new InventedTrouble(
            "tip-not-separate", ["define-tip", "thin-tip-sides"], [TestKind.Crow, TestKind.TonguedStarts], "Every start is a little vague"), 3),
        .. Enumerable.Repeat(new InventedTrouble(
            "back-thick", ["open-windows"], [TestKind.LowResponse, TestKind.Depth], "The bottom notes keep me waiting"), 3),
        .. Enumerable.Repeat(new InventedTrouble(
            "left-right-uneven", ["even-up"], [TestKind.Crow, TestKind.Swell], "It feels lopsided in my mouth"), 2),
        .. Enumerable.Repeat(new InventedTrouble(
            "heart-sides-thick", ["take-heart-sides", "blend"], [TestKind.ClosingOrder, TestKind.LowResponse], "It is tiring after one page"), 2),
        new("tip-thick", ["thin-tip-sides", "thin-edge"], [TestKind.SoftestStart, TestKind.Peep], "I can't get it to whisper"),
        new("tip-long", ["clip", "thin-corners"], [TestKind.Crow, TestKind.HighSteadiness], "It squeaks when I tongue quickly"),
        new("tip-short", ["lengthen-tip"], [TestKind.TonguedStarts, TestKind.Effort], "It starts like a door that sticks"),
        new("step-abrupt", ["blend"], [TestKind.TonguedStarts], "The slurs have a bump in them"),
        new("tip-centre-thin", ["clip-hair"], [TestKind.HighSteadiness, TestKind.TuningNote], "The high A slides down"),
        new("opening-wide", ["close-press", "soak"], [TestKind.Opening, TestKind.Effort], "It wears my lips out"),
        new("opening-narrow", ["open-squeeze", "round-eye"], [TestKind.Opening, TestKind.TuningNote], "It sounds pinched"),
        new("heart-thin", ["clip-hair"], [TestKind.Swell, TestKind.TuningNote], "It goes flat when I play out"),
        new("heart-thick", ["dust-heart"], [TestKind.Crow, TestKind.LowResponse], "It is like blowing a plank"),
        new("spine-scraped", ["clip-hair"], [TestKind.Opening, TestKind.HighSteadiness], "It closes up on me"),
        new("slipped-against-winding", ["realign"], [TestKind.Seal], "It changes from day to day"),
        new("side-leak", ["seal-sides"], [TestKind.Seal], "I hear air beside the note"),
        new("bumps", ["smooth-bumps"], [TestKind.TonguedStarts], "Repeated notes come out uneven"),
        new("thread-too-high", ["retie"], [TestKind.Depth, TestKind.Seal], "It sounds choked"),
        new("dirty-inside", ["clean-inside"], [TestKind.Peep], "It got dull over the last week"),
        new("cork-loose", ["refit-cork"], [TestKind.LowResponse], "It wobbles in the oboe"),
        new("worn", [], [TestKind.Depth], "It was lovely in autumn"),
        new("tip-wavy", ["soak"], [TestKind.SoftestStart], "The tip looks frilly"),
        new("blades-uneven", ["even-up"], [TestKind.Crow], "One side up is better than the other"),
        new("windows-uneven", ["open-windows"], [TestKind.Depth], "I scraped more on one side, I think"),
    ];

    /// <summary>What is good about a reed and doesn't speak against what is the matter with it.</summary>
    /// <param name="troubles">What is the matter with it.</param>
    public static IEnumerable<string> StrengthsBeside(IEnumerable<InventedTrouble> troubles)
    {
        var words = troubles.SelectMany(trouble => trouble.Kind.Split('-')).Concat(troubles.Any(trouble => trouble.Kind.Contains("uneven", StringComparison.Ordinal)) ? ["quadrants"] : []).ToHashSet();
        return Strengths.Where(strength => !strength.Split('-').Any(words.Contains));
    }

    /// <summary>What may be good about a reed.</summary>
    public static IReadOnlyList<string> Strengths { get; } =
        [.. FindingCatalogue.All.Where(kind => kind.Usually == FindingCharacter.Strength).Select(kind => kind.Id.Value)];
}
