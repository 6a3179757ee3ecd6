using System.Text.RegularExpressions;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>An answer that leaves half of its question open, or sends the student to a reed that isn’t to be played: the teacher is told before the letter goes.</summary>
/// <remarks>The words are common English, from memory. What an answer means nobody here can say, so it is told and not asked.</remarks>
internal static partial class AnswerShort
{
    private static readonly string[] Numbers = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>The notices.</summary>
    /// <param name="material">What the letter is composed from.</param>
    internal static IEnumerable<LetterGap> Gaps(LetterMaterial material) =>
        material.Batch.Questions.Where(question => question.Answer is not null).SelectMany(question => new[] { Half(material, question), Gone(material, question) }).OfType<LetterGap>();

    private static LetterGap? Half(LetterMaterial material, Question question) => Halves().Split(question.Text).Length is var asked and > 1 && Clauses().Split(question.Answer!.Trim().TrimEnd('.', '!')).Length < asked
        ? Tell(material, question, "half-", $"To {Prose.Quoted(question.Text)} you answer {Prose.Quote(question.Answer)} That asks more than one thing: if the answer leaves one of them open, answer that, too.")
        : null;

    private static LetterGap? Gone(LetterMaterial material, Question question) => WhichFirst().IsMatch(question.Text)
        && material.Batch.Reeds.FirstOrDefault(reed => Names(question.Answer!, reed.Number) && Why(material, reed) is not null) is { } gone
            ? Tell(material, question, "first-", $"To {Prose.Quoted(question.Text)} you answer {Prose.Quote(question.Answer!)} But reed {Prose.Number(gone.Number)} {Why(material, gone)}. Name another in your answer, or say what you mean.")
            : null;

    private static string? Why(LetterMaterial material, Reed reed) => reed.Presence == Presence.Missing ? "wasn’t in the parcel"
        : reed.Fitness == Fitness.Mould ? "has mould"
        : ComplaintAnswer.IsGivenUp(material.LogOf(reed.Id)) ? "can’t be saved" : null;

    private static bool Names(string answer, int number) => Named().Matches(answer).Any(named => named.Groups["which"].Value is var which
        && (Array.FindIndex(Numbers, word => word.Equals(which, StringComparison.OrdinalIgnoreCase)) + 1 == number || which == Prose.Number(number) || which == number.ToString(System.Globalization.CultureInfo.InvariantCulture)));

    private static LetterGap Tell(LetterMaterial material, Question question, string key, string words) => new(key + Prose.Number(question.Number), GapKind.AnswerFallsShort, words)
    {
        Question = question.Id,
        Reed = question.Reed,
        Part = AnswerBlocks.PartOf(material, question),
        IsToldOnly = true,
    };

    [GeneratedRegex(@"(?i)\?\s+(?=\p{L})|,?\s+(?:and|or)(?: also| then)?\s+(?=(?:for )?(?:how|can|could|may|should|shall|do|does|did|is|are|will|would|what|which|when|where|why|who|must)\b)")]
    private static partial Regex Halves();

    [GeneratedRegex(@"(?i)[.;!?,:]\s+|\s[–-]\s|\s+(?:and|but)\s+|\n")]
    private static partial Regex Clauses();

    [GeneratedRegex(@"(?i)\bwhich\b.*\bfirst\b|\bwhich (?:one|reed)\b.*\b(?:play|use|take|concert)\b")]
    private static partial Regex WhichFirst();

    [GeneratedRegex(@"(?i)(?<!\b(?:not|never|than|before|don['’]t \w+) )(?:\b(?:reed|number|no\.?|tag) )(?<which>\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b")]
    private static partial Regex Named();
}
