using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What warns of harm. Each has one wording, so that it is the same in every letter, word for word.</summary>
/// <remarks>No word of the trade stands in them: what explains one differs from letter to letter. All of it is common practice.</remarks>
internal static class CautionWordings
{
    internal static IReadOnlyList<string> NotAlone { get; } = ["If you are not grown up yet, use a knife only with a parent or guardian and your teacher beside you."];

    internal static IReadOnlyList<string> NotAloneYounger { get; } = ["Use a knife only with a parent or guardian and your teacher beside you."];

    /// <summary>
    /// Who has to be beside a knife. Whoever may come without a guardian’s yes need not be grown up, so they read the same as those
    /// of whom no age is known.
    /// </summary>
    /// <param name="age">What is known of the age.</param>
    internal static IReadOnlyList<string> Knife(AgeAnswer? age) => age is AgeAnswer.Younger ? NotAloneYounger : NotAlone;

    /// <summary>Beside an answer that speaks of scraping: the reeds that go home are finished.</summary>
    internal static IReadOnlyList<string> NotYet { get; } = ["Please take no knife to a reed that comes back from me: play it first, and scrape nothing on it before your next lesson or before you have asked me."];

    /// <summary>The same beside a further answer.</summary>
    internal static IReadOnlyList<string> NotYetAgain { get; } =
        ["What I said above about the knife holds here too.", "Here too: play it first, and ask me before you scrape it.", "This is no leave to scrape a reed that comes back from me, either: play it first."];

    /// <summary>What a knife may do, beside such an answer.</summary>
    /// <param name="age">What is known of the age.</param>
    internal static IReadOnlyList<string> KnifeBesideAnAnswer(AgeAnswer? age) => age is AgeAnswer.Younger
        ? ["A knife is very sharp: never use one without a parent or guardian and your teacher beside you."]
        : ["A knife is very sharp: if you are not grown up yet, never use one without a parent or guardian and your teacher beside you."];

    /// <summary>Whom to ask when something hurts.</summary>
    /// <param name="age">What is known of the age.</param>
    internal static string Unwell(AgeAnswer? age) => age is AgeAnswer.Younger
        ? "If your lips, teeth or breathing trouble you, tell a parent or guardian at once and ask a doctor or a dentist together; what they say, and your school’s own rules, come before anything in this letter."
        : "If your lips, teeth or breathing trouble you, ask a doctor or a dentist; what they say, and your school’s own rules, come before anything in this letter.";

    internal static IReadOnlyList<string> MouldOnArrival { get; } =
        ["There was mould on <reed>: I did not play it, and please don't play it either, because mould can make you ill."];

    internal static IReadOnlyList<string> MouldAtWork { get; } = ["It has mould, so I neither played nor scraped it."];

    internal static IReadOnlyList<string> MouldUse { get; } =
        ["Please don't play it: let the cane go, and keep the metal tube under the thread only if you can clean it well."];
}
