using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Recurrence;

/// <summary>What the teacher chose to say about a batch as a whole: the common lesson, what is done well, a likely habit.</summary>
public sealed class CommonThread
{
    private CommonThread()
    {
    }

    /// <summary>The longest text of each part, in UTF-16 characters.</summary>
    public const int LongestText = 1000;

    /// <summary>The batch.</summary>
    public BatchId BatchId { get; private init; }

    /// <summary>Which wording this is; another one stands after each change.</summary>
    public Guid Version { get; private set; }

    /// <summary>The finding that the common lesson is about; null while none was chosen or it is in words alone.</summary>
    public FindingKindId? LessonKind { get; private set; }

    /// <summary>The common lesson in the teacher's words.</summary>
    public string? LessonWords { get; private set; }

    /// <summary>The strength that is named; null while none was chosen or it is in words alone.</summary>
    public FindingKindId? StrengthKind { get; private set; }

    /// <summary>What is done well, in the teacher's words.</summary>
    public string? StrengthWords { get; private set; }

    /// <summary>The likely habit behind the lesson, as it was typed.</summary>
    public string? HabitWords { get; private set; }

    /// <summary>When it was chosen.</summary>
    public DateTimeOffset ChosenAt { get; private set; }

    /// <summary>Who chose it.</summary>
    public AccountId ChosenBy { get; private set; }

    /// <summary>The habit as one sentence, always as "perhaps": nobody at the bench saw how the reed was made.</summary>
    public string? HabitSentence => HabitWords is { } words ? Perhaps(words) : null;

    /// <summary>An empty one for a batch.</summary>
    /// <param name="batch">The batch.</param>
    /// <returns>The common thread, with nothing chosen.</returns>
    public static CommonThread For(BatchId batch) => new() { BatchId = batch };

    /// <summary>What is wrong with a choice.</summary>
    /// <param name="choice">The choice.</param>
    /// <returns>The problems; none when it can be taken.</returns>
    public static IReadOnlyList<Problem> Check(ThreadChoice choice) =>
    [
        .. KindIsKnown(nameof(LessonKind), choice.LessonKind),
        .. KindIsKnown(nameof(StrengthKind), choice.StrengthKind),
        .. PlainText.Check(nameof(LessonWords), choice.LessonWords, LongestText),
        .. PlainText.Check(nameof(StrengthWords), choice.StrengthWords, LongestText),
        .. PlainText.Check(nameof(HabitWords), choice.HabitWords, LongestText),
    ];

    /// <summary>Takes a choice over.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="by">Who chooses.</param>
    /// <param name="at">When.</param>
    /// <exception cref="ArgumentException">The choice has problems.</exception>
    public void Choose(ThreadChoice choice, AccountId by, DateTimeOffset at)
    {
        if (Check(choice) is [{ } problem, ..])
        {
            throw new ArgumentException(problem.Message, nameof(choice));
        }

        LessonKind = choice.LessonKind;
        LessonWords = PlainText.Tidy(choice.LessonWords);
        StrengthKind = choice.StrengthKind;
        StrengthWords = PlainText.Tidy(choice.StrengthWords);
        HabitWords = PlainText.Tidy(choice.HabitWords);
        ChosenBy = by;
        ChosenAt = at;
    }

    private static IEnumerable<Problem> KindIsKnown(string field, FindingKindId? kind) =>
        kind is { } given && FindingCatalogue.Find(given) is null
            ? [new Problem(field, "Choose one from the list, or say it in your own words.")]
            : [];

    private static string Perhaps(string words)
    {
        var rest = words.TrimEnd('.', ' ');
        foreach (var opening in (string[])["perhaps", "maybe"])
        {
            if (rest.StartsWith(opening, StringComparison.OrdinalIgnoreCase))
            {
                rest = rest[opening.Length..].TrimStart(' ', ',');
            }
        }

        // A capital goes when it only opened the sentence; "I" and initials keep theirs.
        if (rest.Length > 1 && char.IsUpper(rest[0]) && char.IsLower(rest[1]))
        {
            rest = char.ToLowerInvariant(rest[0]) + rest[1..];
        }

        // What has no verb of its own gets one: “scraping up the middle”, “too little light”.
        var first = rest.Split(' ')[0];
        if (first is "too" || (first.Length > 5 && first.EndsWith("ing", StringComparison.Ordinal)))
        {
            rest = "it comes from " + rest;
        }

        return rest.EndsWith('?') || rest.EndsWith('!') ? $"Perhaps {rest}" : $"Perhaps {rest}.";
    }
}

/// <summary>What the teacher chose, as it comes from the form.</summary>
/// <param name="LessonKind">The finding that the common lesson is about.</param>
/// <param name="LessonWords">The common lesson in words.</param>
/// <param name="StrengthKind">The strength that is named.</param>
/// <param name="StrengthWords">What is done well, in words.</param>
/// <param name="HabitWords">The likely habit.</param>
public sealed record ThreadChoice(
    FindingKindId? LessonKind = null,
    string? LessonWords = null,
    FindingKindId? StrengthKind = null,
    string? StrengthWords = null,
    string? HabitWords = null)
{
    /// <summary>The choice with the studio’s own kinds told in words, as letters tell them: by name, and in the words that were typed or the line for students.</summary>
    /// <param name="own">What the studio added.</param>
    public ThreadChoice InWords(OwnKinds own)
    {
        ArgumentNullException.ThrowIfNull(own);
        var (lesson, strength) = (Told(own, LessonKind, LessonWords), Told(own, StrengthKind, StrengthWords));
        return this with { LessonKind = lesson.Kind, LessonWords = lesson.Words, StrengthKind = strength.Kind, StrengthWords = strength.Words };
    }

    private static (FindingKindId? Kind, string? Words) Told(OwnKinds own, FindingKindId? kind, string? words) =>
        kind is { } given && OwnId.Is(given.Value) && own.Find(given) is { } known
            ? (null, OwnId.Words(known.Name, PlainText.Tidy(words) ?? known.ForStudent))
            : (kind, words);
}
