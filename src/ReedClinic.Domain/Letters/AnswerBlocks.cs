using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>The answers to what the student asked.</summary>
internal static class AnswerBlocks
{
    internal static LetterBlock? General(LetterMaterial material, Phrasing phrasing, LetterSoFar told) =>
        Answers(material, null, phrasing, told, "answers", BlockKind.Answers) is { } block
            ? block with { Heading = "What you asked" }
            : null;

    internal static LetterBlock? About(LetterMaterial material, Reed reed, Phrasing phrasing, LetterSoFar told) =>
        Answers(material, reed.Id, phrasing, told, LetterComposer.Key(reed, "answers"), BlockKind.ReedAnswers);

    // A reed that wasn't in the parcel has no part of its own: what was asked about it is answered with the rest.
    private static ReedId? AnsweredWith(LetterMaterial material, Question question) =>
        material.Batch.Reeds.Any(reed => reed.Id == question.Reed && reed.Presence == Presence.Missing) ? null : question.Reed;

    // A question that was left open is told with the reason, not passed over.
    private static string? Answer(LetterMaterial material, Question question, Phrasing phrasing) =>
        question.Answer is { } answer ? Prose.Sentence(answer)
        : material.ReasonFor(LetterGap.KeyOf(question)) is { } reason
            ? phrasing.Say("left-open", question.Number, AnswerWordings.LeftOpen, ("reason", Prose.Ended(reason)))
        : null;

    // Whether the same question got the same answer before it, in the same part of the letter or further up.
    private static bool IsAnswered(LetterMaterial material, Question question, bool here) => question.Answer is not null && material.Batch.Questions.Any(other =>
        other.Number != question.Number && Same(other.Text, question.Text) && Same(other.Answer, question.Answer)
        && (here
            ? AnsweredWith(material, other) == AnsweredWith(material, question) && other.Number < question.Number
            : Place(material, other) < Place(material, question)));

    /// <summary>Whether a question is what the student wrote of a reed, and no more: it was quoted there.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="question">The question.</param>
    internal static bool IsTheComplaint(LetterMaterial material, Question question) =>
        material.Batch.Reeds.Any(reed => reed.Id == question.Reed && reed.Presence != Presence.Missing && Same(reed.Bothers, question.Text));

    /// <summary>Whether all that was written of a reed is a question, and is answered in its part: then it isn’t asked back.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="reed">The reed.</param>
    internal static bool IsAnsweredThere(LetterMaterial material, Reed reed) =>
        material.Batch.Questions.Any(question => question.Reed == reed.Id && question.Answer is not null && IsTheComplaint(material, question));

    private static string Asked(Question question, Phrasing phrasing) => phrasing.Say(
        "asked", question.Number, question.Answer is null ? AnswerWordings.AskedOpen : AnswerWordings.Asked, ("question", Prose.Quoted(question.Text)));

    private static int Place(LetterMaterial material, Question question) =>
        AnsweredWith(material, question) is { } reed ? material.Batch.Reeds.First(one => one.Id == reed).Number : 0;

    private static bool Same(string? one, string? other) => string.Equals(one?.Trim(), other?.Trim(), StringComparison.OrdinalIgnoreCase);

    // An answer that speaks of scraping is no leave to scrape what goes home finished.
    private static IEnumerable<LetterSentence> AboutTheKnife(LetterMaterial material, Question question, Phrasing phrasing, LetterSoFar told)
    {
        if (!KnifeAnswer.IsAbout(question))
        {
            return [];
        }

        return told.Says("no knife yet")
            ? [LetterSentence.Plain(phrasing.Say("no-knife", 0, CautionWordings.NotYet)), LetterSentence.Plain(phrasing.Say("knife-here", 0, CautionWordings.KnifeBesideAnAnswer(material.Age)))]
            : [LetterSentence.Plain(phrasing.Say("no-knife-again", question.Number, CautionWordings.NotYetAgain))];
    }

    /// <summary>The part in which a question is answered.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="question">The question.</param>
    internal static string PartOf(LetterMaterial material, Question question) =>
        AnsweredWith(material, question) is { } reed ? LetterComposer.Key(material.Batch.Reeds.First(one => one.Id == reed), "answers") : "answers";

    private static LetterBlock? Answers(LetterMaterial material, ReedId? reed, Phrasing phrasing, LetterSoFar told, string key, BlockKind kind)
    {
        List<LetterParagraph> answers =
        [
            .. material.Batch.Questions
                .Where(question => AnsweredWith(material, question) == reed)
                .Select(question => (Question: question, Answer: Answer(material, question, phrasing)))
                .Where(pair => pair.Answer is not null)
                .Where(pair => !IsAnswered(material, pair.Question, here: true))
                .Select(pair => IsAnswered(material, pair.Question, here: false)
                    ? LetterParagraph.Plain(phrasing.Say("asked-above", pair.Question.Number, AnswerWordings.Above, ("question", Prose.Quoted(pair.Question.Text))))
                    : new LetterParagraph(
                [
                    .. IsTheComplaint(material, pair.Question) && pair.Question.Answer is not null
                        ? [LetterSentence.Plain(phrasing.Say("asked-there", pair.Question.Number, AnswerWordings.AskedThere, ("answer", Prose.Inside(pair.Answer!))))]
                        : new[] { LetterSentence.Plain(Asked(pair.Question, phrasing)), LetterSentence.Plain(pair.Answer!) },
                    .. AboutTheKnife(material, pair.Question, phrasing, told),
                ])),
        ];
        answers.AddRange(reed is null ? SaidOfHarm.Said(SaidOfHarm.OfAll(material), material, ofAll: true) : []);
        return answers.Count == 0 ? null : new LetterBlock(key, kind, answers) { Reed = reed };
    }
}
