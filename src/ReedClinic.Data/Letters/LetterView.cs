using ReedClinic.Data.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Data.Letters;

/// <summary>A letter as the teacher works on it.</summary>
/// <param name="AtBench">The batch, its reeds and logs.</param>
/// <param name="Draft">The letter as it would go out now: what was changed stays, the rest follows the log.</param>
/// <param name="Composed">The letter as it would be composed now, without what was changed.</param>
/// <param name="Gaps">What is missing and was not waived.</param>
/// <param name="Waived">What is missing and was waived, with the reason.</param>
/// <param name="Versions">The versions that were saved, the newest first.</param>
/// <param name="Version">The version to save against; empty while nothing was saved.</param>
/// <param name="Mark">A mark of the draft: sending names it, so that what was looked at is what is sent.</param>
/// <param name="SentAt">When it was sent; null until then.</param>
public sealed record LetterView(
    BatchAtBenchView AtBench,
    LetterDraft Draft,
    LetterDraft Composed,
    IReadOnlyList<LetterGap> Gaps,
    IReadOnlyList<WaivedGap> Waived,
    IReadOnlyList<LetterVersionRow> Versions,
    Guid Version,
    string Mark,
    DateTimeOffset? SentAt)
{
    /// <summary>Whether it was sent.</summary>
    public bool IsSent => SentAt is not null;

    /// <summary>What it is composed from.</summary>
    internal LetterMaterial Material { get; init; } = default!;
}

/// <summary>A gap that was left open on purpose.</summary>
/// <param name="Gap">What is missing.</param>
/// <param name="Reason">Why it was left open.</param>
public sealed record WaivedGap(LetterGap Gap, string Reason);

/// <summary>One version in the list of versions.</summary>
/// <param name="Number">Its number.</param>
/// <param name="SavedAt">When it was saved.</param>
/// <param name="SavedBy">Who saved it.</param>
/// <param name="IsSent">Whether it is the one that was sent.</param>
public sealed record LetterVersionRow(int Number, DateTimeOffset SavedAt, string SavedBy, bool IsSent);

/// <summary>A letter that was sent, as the student reads it.</summary>
/// <param name="Letter">The letter.</param>
/// <param name="SentAt">When it was sent.</param>
/// <param name="Country">Where the student lives, in their own words, if they said: it tells the size of paper.</param>
public sealed record SentLetter(LetterDraft Letter, DateTimeOffset SentAt, string? Country = null);

/// <summary>What the last letter said that the reeds had in common.</summary>
/// <param name="Code">The batch it was about.</param>
/// <param name="Lesson">The common lesson.</param>
/// <param name="Plan">The steps of the plan.</param>
/// <param name="SentAt">When it was sent.</param>
public sealed record LastLesson(BatchCode Code, string Lesson, IReadOnlyList<string> Plan, DateTimeOffset SentAt);
