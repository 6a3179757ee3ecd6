namespace ReedClinic.Documents.Letters;

/// <summary>Where a letter stands among those that were sent about the same batch: what it corrects, and whether it was corrected itself.</summary>
/// <param name="Replaces">Of a corrected letter the day of the one that it takes the place of.</param>
/// <param name="WhatChanged">What it puts right.</param>
/// <param name="ReplacedAt">Of a letter that was corrected the day of the one that takes its place.</param>
public sealed record LetterAmong(DateTimeOffset? Replaces = null, string? WhatChanged = null, DateTimeOffset? ReplacedAt = null)
{
    /// <summary>The only letter about its batch.</summary>
    public static LetterAmong Only { get; } = new();

    /// <summary>What stands below the day of the letter, wherever it is kept.</summary>
    /// <param name="day">Its day.</param>
    public IReadOnlyList<string> Lines(DateTimeOffset day) =>
    [
        .. ReplacedAt is { } later ? [LetterPage.ReplacedBy(later, day)] : Array.Empty<string>(),
        .. Replaces is { } before ? [LetterPage.Corrected(before, day)] : Array.Empty<string>(),
        .. WhatChanged is { } words ? [$"Corrected on {LetterPage.Day(day)}: {words}"] : Array.Empty<string>(),
    ];
}
