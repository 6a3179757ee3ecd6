using ReedClinic.Domain.Intake;
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

    /// <summary>Beside what a student wrote themselves of body, illness or dirt. It tells nobody what they have.</summary>
    /// <param name="caution">What their words call for.</param>
    /// <param name="age">What is known of the age.</param>
    /// <param name="ofAll">Whether it is said of all reeds.</param>
    internal static string Said(Caution caution, AgeAnswer? age, bool ofAll)
    {
        var (it, them) = ofAll ? ("these reeds", "them") : ("this reed", "it");
        var grownUp = age is AgeAnswer.Younger ? "Tell a parent or guardian at once, and your teacher" : "Tell your teacher, and a parent or guardian if you are not grown up yet";
        return caution switch
        {
            Caution.Body => $"I read in your words that something may hurt, bleed or feel numb, and I am sorry for it: please don’t play {it}, or any other, while that lasts. {grownUp}; ask a doctor or a dentist, and what they say, and your school’s own rules, come before this letter.",
            Caution.Illness => $"I read in your words that somebody is or was ill: please don’t play {it} until that is over, and let nobody else play {them}. {grownUp}; how long to wait, a doctor and your school’s own rules say better than I can.",
            _ => $"I read in your words of mould, dirt or a smell: please look at {it} in good light before you play, and if there is any of it, don’t play {them} but put {them} into a closed bag. {grownUp}; your school’s own rules on it come first.",
        };
    }

    internal static IReadOnlyList<string> MouldOnArrival { get; } =
        ["There was mould on <reed>: I did not play it, and please don't play it either, because mould can make you ill."];

    internal static IReadOnlyList<string> MouldAtWork { get; } = ["It has mould, so I neither played nor scraped it."];

    internal static IReadOnlyList<string> MouldUse { get; } =
        ["Please don't play it: let the cane go, and keep the metal tube under the thread only if you can clean it well."];
}
