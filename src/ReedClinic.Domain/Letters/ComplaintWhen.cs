using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>“Flat by the end of a rehearsal”: a time that stands with a complaint. What was tried at the bench doesn’t answer that half of it, so it is asked back.</summary>
/// <remarks>The words are common English, from memory.</remarks>
internal static partial class ComplaintWhen
{
    /// <summary>The sentence; none where no time was told, where nothing was answered, or where what was found is of that time.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="said">What was answered.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static IEnumerable<LetterSentence> Sentences(Reed reed, BenchLog log, IReadOnlyList<LetterSentence> said, Phrasing phrasing) =>
        said.Count == 0 || Of(reed.Bothers) is not { } when || log.Findings.Any(one => one.Finding.FindingKind.Value == "closes-in-play") ? []
        : [new(phrasing.Say("complaint-when", reed.Number, reed.MayBePlayed && !ComplaintAnswer.IsGivenUp(log) ? ComplaintWordings.When : ComplaintWordings.WhenAlone, ("when", Prose.Quoted(when))), [.. said[^1].From])];

    /// <summary>The words that tell when; null for none.</summary>
    /// <param name="words">The student’s words.</param>
    internal static string? Of(string words) => Time().Match(words) is { Success: true } time ? time.Value.Trim() : null;

    [GeneratedRegex(
        @"(?i)\b(?:after|by|by the end of|towards? the end of|at the end of|near the end of|within|in the course of|halfway through|once I(?:['’]ve| have)? (?:played|been playing)(?: (?:it )?for)?|when I(?:['’]ve| have)? (?:played|been playing)(?: (?:it )?for)?|when (?:it(?:['’]s| is| gets) |the (?:room|hall|church|weather) is )?(?:warm|cold|hot|wet|dry|damp)) ?"
        + @"(?:(?:about|around|only|just|the|a|an|one|two|three|four|five|six|seven|eight|nine|ten|fifteen|twenty|thirty|some|few|a few|\d{1,3}|half an|half|long|whole|first|second|my|our|couple of|quarter of an)[ -])*"
        + @"(?:minutes?|hours?|rehearsals?|pages?|lessons?|practices?|concerts?|services?|lines?|pieces?|movements?|scales?|days?|weeks?|evenings?|while|playing|warming up|warm-up)\b|\bwhen (?:it(?:['’]s| is| gets)|the (?:room|hall|church|weather) is) (?:warm|cold|hot|wet|dry|damp)\b|\bin (?:the )?(?:cold|heat|wet weather|dry weather)(?: (?:room|hall|church))?\b")]
    private static partial Regex Time();
}
