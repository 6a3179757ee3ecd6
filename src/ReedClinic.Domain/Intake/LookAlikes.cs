using System.Text.RegularExpressions;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Intake;

/// <summary>
/// Reeds that can be taken for each other by how they are told apart: all words of one stand in the words of another, such as “red
/// thread” and “red thread, and I bit the corner”. A notice and no lock: a picture or another look may tell them apart.
/// </summary>
public static partial class LookAlikes
{
    private static readonly HashSet<string> Little =
    [
        "a", "an", "the", "this", "that", "and", "with", "it", "its", "is", "has", "have", "my", "i", "on", "in", "of", "at", "by", "to", "one", "reed",
    ];

    /// <summary>For each reed the others that it can be taken for.</summary>
    /// <param name="marks">How each reed is told from the others, as it was written, by its number; null where nothing was.</param>
    /// <returns>By the number of a reed, the numbers of the others; a reed that stands out has none.</returns>
    public static ILookup<int, int> In(IEnumerable<(int Number, string? Mark)> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var said = marks.Select(reed => (reed.Number, Words: Words(reed.Mark))).Where(reed => reed.Words.Count > 0).ToList();
        return said
            .SelectMany(one => said.Where(other => other.Number != one.Number && AreAlike(one.Words, other.Words)).Select(other => (one.Number, Other: other.Number)))
            .ToLookup(pair => pair.Number, pair => pair.Other);
    }

    private static bool AreAlike(HashSet<string> one, HashSet<string> other) => one.IsSubsetOf(other) || other.IsSubsetOf(one);

    private static HashSet<string> Words(string? mark) =>
        [.. Word().Matches(Folding.Of(mark ?? "")).Select(word => word.Value).Where(word => !Little.Contains(word))];

    [GeneratedRegex(@"[\p{L}\p{N}]+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
