using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>What the student and the teacher typed: a letter leaves it as it is.</summary>
internal static class TypedWords
{
    /// <summary>All of it that is more than one word; a single word may be ours as well.</summary>
    /// <param name="material">What the letter is composed from.</param>
    public static IReadOnlyList<string> In(LetterMaterial material)
    {
        var (batch, thread) = (material.Batch, material.Thread);
        IEnumerable<string?> typed =
        [
            material.StudentName, material.Signature, batch.ArrivalNote, thread.LessonWords, thread.StrengthWords, thread.HabitSentence,
            .. material.Waived.Values,
            .. material.Own.Lines,
            .. batch.Questions.SelectMany(question => new[] { question.Text, question.Answer }),
            .. batch.Reeds.SelectMany(reed => new[] { reed.Bothers, reed.Likes, reed.HowToRecognise, reed.UpperMark, reed.Damage }),
            .. batch.Reeds.SelectMany(reed => material.LogOf(reed.Id).Facts).SelectMany(fact => Of(fact.Now)),
        ];
        return
        [
            .. typed.OfType<string>()
                .Select(words => Prose.Ended(words).Trim('.', ' '))
                .Where(words => words.Contains(' ', StringComparison.Ordinal))
                .Distinct(StringComparer.OrdinalIgnoreCase)
                .OrderByDescending(words => words.Length),
        ];
    }

    /// <summary>What the student typed of it.</summary>
    /// <param name="material">What the letter is composed from.</param>
    public static IReadOnlyList<string> OfTheStudent(LetterMaterial material) =>
    [
        .. material.Batch.Questions.Select(question => question.Text)
            .Concat(material.Batch.Reeds.SelectMany(reed => new[] { reed.Bothers, reed.Likes, reed.HowToRecognise }))
            .OfType<string>().Select(words => Prose.Ended(words).Trim('.', ' ')).Where(words => words.Length > 0).OrderByDescending(words => words.Length),
    ];

    /// <summary>What was typed with one entry, and may stand in a letter.</summary>
    /// <param name="entry">The entry.</param>
    internal static IEnumerable<string?> Of(BenchEntry? entry) => entry switch
    {
        Finding finding => [finding.Words],
        FindingEnded ended => [ended.Words],
        LeaveAlone left => [left.Words],
        Adjustment work => [work.Words, Agreement.Without(work.Words), work.Amount.Words],
        Risk risk => [risk.Words],
        RiskClosed closed => [closed.Words],
        Stopped stop => [stop.Words],
        Verdict verdict => [verdict.Words],
        Parked parked => [parked.Words],
        Test test => [test.Words, test.Pitch?.Show()],
        _ => [],
    };
}
