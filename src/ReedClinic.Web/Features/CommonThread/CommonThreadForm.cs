using ReedClinic.Domain.Diagnosis.Habits;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Web.Features.CommonThread;

/// <summary>What a teacher typed about a batch as a whole.</summary>
public sealed class CommonThreadForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The version of the choice that the form was opened on.</summary>
    public Guid Version { get; set; }

    /// <summary>The kind of finding that the lesson is about; empty for own words.</summary>
    public string? LessonKind { get; set; }

    /// <summary>The lesson in words.</summary>
    public string? LessonWords { get; set; }

    /// <summary>The strength that is named; empty for own words.</summary>
    public string? StrengthKind { get; set; }

    /// <summary>What is done well, in words.</summary>
    public string? StrengthWords { get; set; }

    /// <summary>The likely habit.</summary>
    public string? HabitWords { get; set; }

    /// <summary>The guessed habit that was taken over; empty for none.</summary>
    public string? HabitFrom { get; set; }

    /// <summary>The form as it opens.</summary>
    /// <param name="chosen">What was chosen before, if anything.</param>
    /// <returns>A form with a new operation to come.</returns>
    public static CommonThreadForm Of(Domain.Recurrence.CommonThread? chosen) => new()
    {
        Version = chosen?.Version ?? Guid.Empty,
        LessonKind = chosen?.LessonKind?.Value,
        LessonWords = chosen?.LessonWords,
        StrengthKind = chosen?.StrengthKind?.Value,
        StrengthWords = chosen?.StrengthWords,
        HabitWords = chosen?.HabitWords,
    };

    /// <summary>The choice that was made, or one problem when the form is empty.</summary>
    /// <param name="whenEmpty">One sentence for an empty form.</param>
    /// <param name="guesses">The habits that were offered. What was typed counts before a guess.</param>
    /// <param name="stood">The words that stood there before: those weren’t typed now.</param>
    /// <returns>The choice; what it says is checked when it is saved.</returns>
    public Outcome<ThreadChoice> ToDomain(string whenEmpty, IReadOnlyList<LikelyHabit> guesses, string? stood = null)
    {
        var guess = guesses.FirstOrDefault(one => one.Id == HabitFrom)?.Sentence;
        var isTyped = !string.IsNullOrWhiteSpace(HabitWords) && HabitWords.Trim() != stood;
        var habit = guess is null || isTyped ? HabitWords : guess;
        var parts = new[] { LessonKind, LessonWords, StrengthKind, StrengthWords, habit };
        return parts.All(string.IsNullOrWhiteSpace)
            ? new Outcome<ThreadChoice>.Refused([new Problem(nameof(LessonKind), whenEmpty)])
            : new Outcome<ThreadChoice>.Done(new ThreadChoice(
                Kind(LessonKind), LessonWords, Kind(StrengthKind), StrengthWords, habit));
    }

    private static FindingKindId? Kind(string? typed) =>
        string.IsNullOrWhiteSpace(typed) ? null : new FindingKindId(typed);
}
