using ReedClinic.Data.Bench;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Data.Letters;

/// <summary>A letter as the teacher works on it.</summary>
/// <param name="AtBench">The batch, its reeds and logs.</param>
/// <param name="Draft">The letter as it would go out now: what was changed stays, the rest follows the log. Of a sent letter what was sent, of a correction what it says.</param>
/// <param name="Composed">The letter as it would be composed now, without what was changed. Once it was sent: what was sent.</param>
/// <param name="Gaps">What is missing and was not waived.</param>
/// <param name="Waived">What is missing and was waived, with the reason.</param>
/// <param name="Versions">The versions that were saved, the newest first.</param>
/// <param name="Version">The version to save against; empty while nothing was saved.</param>
/// <param name="Mark">A mark of the draft: sending names it, so that what was looked at is what is sent.</param>
/// <param name="SentAt">When it was sent last; null until then.</param>
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
    /// <summary>Since when it is corrected; null while it isn't.</summary>
    public DateTimeOffset? CorrectingSince { get; init; }

    /// <summary>What the correction puts right, as far as it was said.</summary>
    public string? WhatChanged { get; init; }

    /// <summary>Whether it was sent, and nobody corrects it: then its words are closed.</summary>
    public bool IsSent => SentAt is not null && CorrectingSince is null;

    /// <summary>Whether a correction of it is being written.</summary>
    public bool IsCorrection => CorrectingSince is not null;

    /// <summary>What the teacher is told of, and may go all the same.</summary>
    public IReadOnlyList<LetterGap> Notices { get; init; } = [];

    /// <summary>The batch of the letter before it, which it may speak of; null where there was none.</summary>
    public BatchAtBenchView? Before { get; init; }

    /// <summary>What was written down at the bench since it was sent, and isn’t in it; nothing while it wasn’t sent.</summary>
    public IReadOnlyList<(Reed Reed, BenchFact Fact)> RecordedSince => SentAt is { } sent
        ? [.. AtBench.Reeds.SelectMany(row => LetterAfter.Of(row.Log, sent, Draft).Select(fact => (row.Reed, fact)))]
        : [];

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
/// <param name="IsSent">Whether it is one that was sent.</param>
public sealed record LetterVersionRow(int Number, DateTimeOffset SavedAt, string SavedBy, bool IsSent);

/// <summary>A letter that was sent, as the student reads it.</summary>
/// <param name="Letter">The letter.</param>
/// <param name="SentAt">When it was sent.</param>
/// <param name="Country">Where the student lives, in their own words, if they said: it tells the size of paper.</param>
public sealed record SentLetter(LetterDraft Letter, DateTimeOffset SentAt, string? Country = null)
{
    /// <summary>1 for the letter, 2 for its first correction, and so on.</summary>
    public int Ordinal { get; init; } = 1;

    /// <summary>The pictures that stand in it, for whoever prints it or gives it out.</summary>
    public IReadOnlyList<NotePictureFile> Pictures { get; init; } = [];

    /// <summary>Its page, as it is shown, as UTF-8; null when it isn't kept yet.</summary>
    public byte[]? Page { get; init; }

    /// <summary>What was put right; null for the first.</summary>
    public string? WhatChanged { get; init; }

    /// <summary>When the one that it takes the place of was sent; null for the first.</summary>
    public DateTimeOffset? Replaces { get; init; }

    /// <summary>When the one that takes its place was sent; null for the newest.</summary>
    public DateTimeOffset? ReplacedAt { get; init; }
}

/// <summary>What the last letter said that the reeds had in common.</summary>
/// <param name="Code">The batch it was about.</param>
/// <param name="Lesson">The common lesson.</param>
/// <param name="Plan">The steps of the plan.</param>
/// <param name="SentAt">When it was sent.</param>
public sealed record LastLesson(BatchCode Code, string Lesson, IReadOnlyList<string> Plan, DateTimeOffset SentAt);
