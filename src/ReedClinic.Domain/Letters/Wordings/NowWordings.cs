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
        [TestKind.Crow] = "{the crow {is clearer|comes more clearly|is nearer to what it should be}|it crows {more clearly|more as it should}}",
        [TestKind.Peep] = "the peep is {cleaner|clearer}",
        [TestKind.SoftestStart] = "soft notes {start|begin|speak} more easily",
        [TestKind.Effort] = "it {asks for|takes} a more comfortable effort",
        [TestKind.TuningNote] = "the tuning note {sits|is} closer to where it belongs",
        [TestKind.TonguedStarts] = "tongued notes {are cleaner|start more cleanly|come out cleaner}",
        [TestKind.LowResponse] = "the low notes {speak|come|answer} sooner",
        [TestKind.HighSteadiness] = "the high notes {hold|stay up} better",
        [TestKind.Swell] = "a long note {keeps|holds} its place better from soft to loud",
        [TestKind.Edge] = "{the edge of the sound is nearer to right|the sound has nearly the edge it should have|the edge of the sound has come closer to right}",
        [TestKind.Depth] = "{the sound has more depth|the sound goes deeper|there is more depth in the sound}",
    };

    /// <summary>The same where it is right now, and not only nearer to it.</summary>
    internal static IReadOnlyDictionary<TestKind, string> There { get; } = new Dictionary<TestKind, string>
    {
        [TestKind.Opening] = "the opening is {right|as it should be}",
        [TestKind.Crow] = "{the crow {is clearer|comes more clearly}|it crows more clearly}",
        [TestKind.Effort] = "{it is right to blow|the effort is right}",
        [TestKind.TuningNote] = "the tuning note is {in tune|where it belongs}",
        [TestKind.Edge] = "the edge of the sound is right",
    };

    internal static IReadOnlyList<string> Better { get; } =
    [
        "compared with how it {arrived|came|was at first|played at first}, <gains>.",
        "compared with {the day it came|its first day here|the day it arrived}, <gains>.",
        "this has changed {since it came|since it arrived|since the day it came|in its time here}: <gains>.",
        "{what has become better|what you gain|what is better}{ by now| today|}: <gains>.",
        "{since it came|since it arrived|in its time here} {there is a change for the better|something has improved|it has improved}: <gains>.",
        "<gains> than {when it came|on the day it came|when it arrived|before|on its first day here}.",
        "{now|today|by now} <gains> than {when it came|on the day it came|when it arrived|before}.",
        "{its table of tests shows it|you can see it in its table of tests}: <gains>.",
    ];

    /// <summary>The same where several things have changed.</summary>
    internal static IReadOnlyList<string> BetterMany { get; } =
    [
        "compared with how it {arrived|came|was at first|played at first}, <gains>.",
        "compared with {the day it came|its first day here|the day it arrived}, <gains>.",
        "these things have changed since it {came|arrived}: <gains>.",
        "{since it came|since it arrived|in its time here} {several things have improved|it has improved in more than one way}: <gains>.",
        "{its table of tests shows it|you can see it in its table of tests}: <gains>.",
    ];

    internal static IReadOnlyList<string> WorseInExchange { get; } =
    [
        "{in exchange|for that|in return} it {gave up|lost} something in <losses>.", "{the price was|it cost} something in <losses>.",
    ];

    /// <summary>The same where nothing was done: a second try gave less.</summary>
    internal static IReadOnlyList<string> WorseByItself { get; } =
    [
        "{when I tried it again|at a second try}, with no work in between, it did less well in <losses>.", "I {tried|played} it twice and did nothing to it in between; the second time it did less well in <losses>.",
    ];

    internal static IReadOnlyList<string> Worse { get; } =
    [
        "it has {lost|given up} something in <losses>.", "something {was lost|has been lost} in <losses>.",
    ];

    /// <summary>How a test came out, as a clause about the time when the reed came; in the order of the test's own words.</summary>
    internal static IReadOnlyDictionary<TestKind, IReadOnlyList<string>> Stood { get; } = new Dictionary<TestKind, IReadOnlyList<string>>
    {
        [TestKind.Opening] = ["the blades were closed at the tip", "the opening was a little {small|narrow}", "the opening was {right|as it should be}", "the opening was a little {wide|large}", "the opening was very {wide|large}"],
        [TestKind.ClosingOrder] = ["the middle of its blades closed first", "its blades closed all at once", "the sides of its blades closed first"],
        [TestKind.Seal] = ["it did not hold its air", "it {lost|let go of} its air at once", "it held its air for a moment", "it held its air{ well|}"],
        [TestKind.Crow] = ["{it crowed|its crow came} as it should (high, then low)", "it crowed high and low at once", "it crowed low only", "it crowed high only"],
        [TestKind.Peep] = ["its peep was clean", "its peep was already a crow"],
        [TestKind.SoftestStart] = ["it would not start softly", "a soft note needed a push", "it started softly", "it started on a breath"],
        [TestKind.Effort] = ["it was far too easy to blow", "it was a little too easy to blow", "{the effort was right|it was right to blow}", "it was a little too hard to blow", "it was far too hard to blow"],
        [TestKind.TuningNote] = ["the tuning note was flat", "the tuning note was a little flat", "the tuning note was in tune", "the tuning note was a little sharp", "the tuning note was sharp"],
        [TestKind.TonguedStarts] = ["tongued notes began with a thud", "tongued notes were unsure", "tongued notes were mostly clean", "tongued notes were clean every time"],
        [TestKind.LowResponse] = ["the low notes would not speak", "the low notes were late", "the low notes spoke with a little care", "the low notes spoke at once"],
        [TestKind.HighSteadiness] = ["the high notes dropped out", "the high notes wandered", "the high notes held with help", "the high notes held"],
        [TestKind.Swell] = ["a long note broke", "a long note went wild at its loudest", "a long note sagged at its loudest", "a long note kept its place from soft to loud"],
        [TestKind.Edge] = ["the sound was covered", "the sound was a little covered", "the edge of the sound was right", "the sound was a little edgy", "the sound was very edgy"],
        [TestKind.Depth] = ["the sound was hollow", "the sound was thin", "the sound was deep enough", "the sound was full"],
    };

    /// <summary>A crow whose word is what it was, and which stands nearer to its note.</summary>
    /// <param name="note">The note.</param>
    internal static string NearerInPitch(string note) => $"the crow {{stands|is}} {{nearer|closer}} to {note}";

    /// <summary>Behind what was tried in a row whose test wasn't repeated after the last work: a cut is called one, since it changes most.</summary>
    /// <param name="since">What was done after it; nothing for a test that tells how the reed is now.</param>
    internal static string LastTried(IReadOnlyList<LiveFact<Adjustment>> since) => since.Count == 0 ? "" : $" (last tried before {BeforeWhat(since)})";

    /// <summary>What it was that a test came before: “the last cut”.</summary>
    /// <param name="since">What was done after it.</param>
    internal static string BeforeWhat(IReadOnlyList<LiveFact<Adjustment>> since) =>
        since.MaxBy(work => (work.Pass, work.Sequence))!.Now.AdjustmentKind.Value is "clip" or "clip-hair" ? "the last cut" : "the last work";

    /// <summary>Where nothing was tried again after the last work.</summary>
    internal static IReadOnlyList<string> NotTriedSince { get; } =
    [
        "after the last work {on it|on this reed} I did not {try|play} it again: {what I tell of it|all of this} is from before{ that|}.",
        "I did not {try|play} it again after the last {work on it|thing I did}, so {its table ends|what I tell of it ends} before that.",
    ];

    internal static IReadOnlyList<string> TriedOnlyThen { get; } =
    [
        "when it {came|arrived}, <tests>; I {did not try|have not tried} {that|this} again{ after the work|}.",
        "<tests> {when it came|when it arrived|on arrival}; after the work I did not {try that again|come back to that|repeat that}.",
        "{on arrival|at first}, <tests>; {later|after the work} I did not {try that again|repeat that|come back to that}.",
    ];

    /// <summary>The same where an earlier reed had the same tests only once.</summary>
    internal static IReadOnlyList<string> TriedOnlyThenAgain { get; } =
    [
        "{before the work|when it came|on arrival|when it arrived}, <tests>.",
        "<tests> {before the work|when it came|on arrival|when it arrived}.",
        "{before I began|before I began to work|before I worked on it}, <tests>.",
    ];

    /// <summary>The same where one of them was off its right value: that it may be so still is said.</summary>
    internal static IReadOnlyList<string> TriedOnlyThenOff { get; } =
    [
        "<tests> {when it came|when it arrived|on arrival}, and I did not come back to {that|this}.",
        "{when it came|when it arrived|on arrival}, <tests>; I did not come back to {that|this}{ later| after the work|}.",
        "{before the work|before I began}, <tests>; {to that I did not come back|I did not come back to that|I have not come back to that}.",
    ];

    internal static IReadOnlyList<string> NotTriedAgain { get; } =
    [
        "when it {came|arrived}, <tests>, and I did not try that again after the work.",
        "{on arrival|when it came}, <tests>; after the work I did not {repeat that|try that again}.",
    ];

    /// <summary>Where nothing was done: then nothing is said of when.</summary>
    internal static IReadOnlyList<string> Tried { get; } =
    [
        "{when I tried it|as I tried it}, <tests>.", "{this is how I found it|here is how I found it}: <tests>.", "<tests>{ when I tried it| in my hands|}.",
    ];
}
