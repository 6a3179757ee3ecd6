namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What the student had allowed, beside what was done.</summary>
internal static class WishWordings
{
    internal static IReadOnlyList<string> SafeOnly { get; } =
    [
        "you had asked for safe changes only, and nothing that I did {took any cane away|has taken any cane away}.",
        "{as you wished|as you asked|just as you wanted}, {I made safe changes only|there were safe changes only}: no cane {was taken away|has gone|was scraped off}.",
        "{safe changes only, you had said|you had allowed safe changes only}, and {that is how it was done|I kept to that}: no cane {was taken away|has gone|was scraped off}.",
    ];

    /// <summary>The same where an earlier reed has told it in full.</summary>
    internal static IReadOnlyList<string> SafeOnlyAgain { get; } =
    [
        "{here too|here as well|from this one, too,} no cane {was taken away|has gone|was scraped off}{, as you wished|}.",
        "{as you wished|as you asked}, no cane {was taken away|has gone|was scraped off} {here either|from this one either}.",
    ];

    /// <summary>Where cane was taken within what was allowed.</summary>
    internal static IReadOnlyList<string> SmallSteps { get; } =
    [
        "you had asked for safe changes only, so I {took|kept to} small steps, {with a test after each pass|and tried it after each pass}.",
        "{as you wished|as you asked|just as you wanted}, {I kept to safe changes|these were safe changes}: small steps, {with a test after each pass|each pass tried before the next}.",
        "{safe changes only, you had said|you had allowed safe changes only}, and {that is how it was done|I kept to that}: {a little at a time|in small steps}, {with a test after each pass|and tried after each pass}.",
    ];

    /// <summary>The same where something was done that a student may not count among safe changes: how it was done is told, and not that the wish was kept.</summary>
    internal static IReadOnlyList<string> SmallStepsAlone => [SmallSteps[0]];

    /// <summary>The same where no cane was taken.</summary>
    internal static IReadOnlyList<string> NoCaneAlone => [SafeOnly[0]];

    /// <summary>The same where an earlier reed has told it in full.</summary>
    internal static IReadOnlyList<string> SmallStepsAgain { get; } =
    [
        "{here too|here as well|on this one too} I {kept to|took} small steps{, as you wished|, as you asked|}.",
        "{as you wished|as you asked}, I {kept to|took} small steps {here too|here as well|on this one too}.",
    ];

    internal static IReadOnlyList<string> SaidNothing { get; } = ["you {had said|said} nothing about {this one|it}"];

    internal static IReadOnlyList<string> AskedForAdvice { get; } = ["{you had asked|you asked|you had wished} for advice only"];

    internal static IReadOnlyList<string> AskedForSafeChanges { get; } = ["{you had asked|you asked|you had wished} for safe changes only"];

    internal static IReadOnlyList<string> Agreed { get; } =
    [
        "<asked>; I did <work>, and we have agreed on it since.", "<asked>; I did <work>, which we have agreed on since.",
    ];

    internal static IReadOnlyList<string> Beyond { get; } = ["<asked>, {and|and yet} I did <work>.", "<asked>; {all the same|even so} I did <work>."];

    /// <summary>The same where the teacher said that it was done without being agreed.</summary>
    internal static IReadOnlyList<string> Unagreed { get; } =
    [
        "<asked>, and I went further than that without asking you first: I did <work>; {please tell me|do tell me} if you would rather {have been asked|I asked another time}.",
    ];

    internal static IReadOnlyList<string> AlsoAgreed { get; } =
    [
        "another part of the work went further too, and we have agreed on it since.",
        "{some more|a further part} of the work went {beyond|further than} that, and we have agreed on it since.",
    ];
}
