using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a reed played when it came against how it plays now.</summary>
internal static class NowWordings
{
    internal static IReadOnlyDictionary<TestKind, string> Gains { get; } = new Dictionary<TestKind, string>
    {
        [TestKind.Opening] = "the opening is nearer to {where it should be|right}",
        [TestKind.ClosingOrder] = "the blades close in a better order",
        [TestKind.Seal] = "it holds its air {better|longer}",
        [TestKind.Crow] = "{the crow is {in better order|clearer}|it crows {more clearly|in better order}}",
        [TestKind.Peep] = "the peep is cleaner",
        [TestKind.SoftestStart] = "soft notes {start|begin|speak} more easily",
        [TestKind.Effort] = "it {asks for|takes} a more comfortable effort",
        [TestKind.TuningNote] = "the tuning note {sits|is} closer to where it belongs",
        [TestKind.TonguedStarts] = "tongued notes {are cleaner|start more cleanly|come out cleaner}",
        [TestKind.LowResponse] = "the low notes {speak|come|answer} sooner",
        [TestKind.HighSteadiness] = "the high notes {hold|stay up} better",
        [TestKind.Swell] = "a long note keeps its place better from soft to loud",
        [TestKind.Edge] = "the edge of the sound is nearer to right",
        [TestKind.Depth] = "the sound has more depth",
    };

    internal static IReadOnlyList<string> Better { get; } =
    [
        "{against|measured against|set beside} how it {arrived|came|was}, <gains>.",
        "compared with {the day it came|its first day here|how it came|how it arrived}, <gains>.",
        "this has changed {since it came|since it arrived|since the day it came|in its time here}: <gains>.",
        "{what has become better|what you gain|what is better}{ by now| today|}: <gains>.",
        "{since it came|since it arrived|in its time here} {there is a change for the better|something has improved|it has improved}: <gains>.",
        "<gains> than {when it came|on the day it came|when it arrived|before|on its first day here}.",
        "{now|today|by now} <gains> than {when it came|on the day it came|when it arrived|before}.",
        "{the table shows it|the table tells it|look at the table}: <gains>.",
    ];

    /// <summary>The same where several things have changed.</summary>
    internal static IReadOnlyList<string> BetterMany { get; } =
    [
        "{against|measured against|set beside} how it {arrived|came|was}, <gains>.",
        "compared with {the day it came|its first day here|how it came|how it arrived}, <gains>.",
        "these things have changed since it {came|arrived}: <gains>.",
        "{since it came|since it arrived|in its time here} {several things have improved|it has improved in more than one way}: <gains>.",
        "{the table shows it|the table tells it|look at the table}: <gains>.",
    ];

    internal static IReadOnlyList<string> WorseInExchange { get; } =
    [
        "{in exchange|for that|in return} it {gave up|lost} a little in <losses>.", "{the price was|it cost} a little in <losses>.",
    ];

    internal static IReadOnlyList<string> Worse { get; } =
    [
        "it has {lost|given up} a little in <losses>.", "{a little|something} {was lost|has been lost} in <losses>.",
    ];

    internal static IReadOnlyList<string> TriedOnlyThen { get; } =
    [
        "I tried <tests> only when it {came|arrived}.", "<tests>: {that|this} I tried only {on arrival|when it came}.", "only {on arrival|when it came} did I try <tests>.",
    ];

    /// <summary>The same where an earlier reed had the same tests only once.</summary>
    internal static IReadOnlyList<string> TriedOnlyThenAgain { get; } =
    [
        "<tests>: {that|this} {is how it came|is from before the work}.", "{at the beginning|before the work} I had noted <tests>, too.", "{here too|again|here as well}, I tried <tests> only {on arrival|when it came}.",
    ];

    internal static IReadOnlyList<string> NotTriedAgain { get; } =
    [
        "when it {came|arrived} I tried <tests>, and I did not try that again after the work.",
        "{on arrival|when it came} I tried <tests>; after the work I did not {repeat that|try that again}.",
    ];

    /// <summary>Where nothing was done: then nothing is said of when.</summary>
    internal static IReadOnlyList<string> Tried { get; } =
    [
        "I tried <tests>.", "{this is what|here is what} I tried{ on this one|}: <tests>.", "what I tried {on this one|here|with this reed}: <tests>.",
    ];
}
