using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>
/// The words that were typed, beside what was understood of them: each entry of a line keeps its own, since what was understood may say
/// less, or something else.
/// </summary>
public static partial class TypedWords
{
    // Told beside a title, these say nothing more than it does.
    private static readonly HashSet<string> Small = ["a", "an", "the", "it", "its", "is", "was", "are", "were", "i", "and", "then", "of", "on", "at", "in", "to", "by", "this", "that", "s"];

    private const int Stem = 3;

    /// <summary>The entries of a line with their words: those from where one begins to where the next does, and what comes before the first is its own.</summary>
    /// <param name="line">The line.</param>
    /// <param name="heard">What was understood, and where in the line.</param>
    /// <returns>The same, in the same order.</returns>
    public static IEnumerable<HeardEntry> Beside(string line, IReadOnlyCollection<(HeardEntry One, TextSpan Span)> heard)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(heard);
        List<int> starts = [.. heard.Select(one => one.Span.Start).Distinct().Order()];
        foreach (var (one, span) in heard)
        {
            var at = starts.IndexOf(span.Start);
            var until = Math.Max(span.End, at + 1 < starts.Count ? starts[at + 1] : line.Length);
            var words = line[(at == 0 ? 0 : span.Start)..Math.Min(until, line.Length)];
            yield return one with { Entry = one.Entry.AsSaid(Joint().Replace(words, "").TrimStart(',', ';', ' ')) };
        }
    }

    /// <summary>The words that an entry came from, where they say more than is told of it beside them.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="told">How it is told.</param>
    /// <returns>Null where they say nothing more, or aren’t kept.</returns>
    public static string? BesideTold(BenchEntry entry, EntryLine told)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(told);
        return entry.Said is { } said && Words(string.Join(' ', told.Details.Prepend(told.Title).Prepend(told.Label))) is var known && !Words(said).All(word => known.Exists(other => IsSame(word, other))) ? said : null;
    }

    // “Clip” and “clipped”, “corner” and “corners”.
    private static bool IsSame(string one, string other) => one == other
        || (Math.Min(one.Length, other.Length) >= Stem && (one.StartsWith(other, StringComparison.Ordinal) || other.StartsWith(one, StringComparison.Ordinal)));

    private static List<string> Words(string text) => [.. Word().Matches(text.ToLowerInvariant()).Select(word => word.Value).Except(Small)];

    [GeneratedRegex(@"[\p{L}\p{Nd}♭♯]+")]
    private static partial Regex Word();

    // What only leads over to the next.
    [GeneratedRegex(@"(?:[\s,;:–—]|(?<![\p{L}\p{Nd}])(?:and|then|but)(?=[\s,;:–—]*$))+$", RegexOptions.IgnoreCase)]
    private static partial Regex Joint();
}
