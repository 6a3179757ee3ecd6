using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What was typed when a finding ended: the letter says by itself how it ended, so that is said once.</summary>
internal static partial class EndingSaid
{
    // What such words are made of beside the name of the finding and of its place: “not thick any more”. From memory.
    private static readonly HashSet<string> Plain = new(StringComparer.Ordinal)
    {
        "a", "again", "all", "alone", "and", "any", "anymore", "are", "as", "at", "before", "better", "both", "but", "change", "changed", "cured", "done", "fine", "fixed", "from",
        "gone", "good", "in", "improved", "is", "isn’t", "it", "its", "left", "little", "longer", "more", "much", "no", "not", "now", "of", "off", "ok", "on", "order", "out",
        "purpose", "put", "quite", "right", "same", "so", "still", "that", "the", "there", "they", "this", "to", "too", "unchanged", "very", "was", "were",
    };

    // Whatever is done, it stays so: nobody need be told. Common practice.
    private static readonly HashSet<string> Lasting = new(StringComparer.Ordinal) { "worn", "tip-cracked", "body-cracked" };

    /// <summary>Whether it is plain by itself that a fault is as it was: tired cane isn’t made young, and a crack doesn’t close.</summary>
    /// <param name="now">The fault as it stands.</param>
    public static bool GoesWithoutSaying(FindingNow now) => now.Ended?.Now.Ending == FindingEnding.Unchanged && Lasting.Contains(now.Finding.FindingKind.Value);

    /// <summary>Whether words say how it ended, whatever else they say.</summary>
    /// <param name="words">The words.</param>
    public static bool SaysIt(string words) => End().IsMatch(words);

    /// <summary>Whether they say that and nothing more, so that the letter's own sentence is enough.</summary>
    /// <param name="words">The words.</param>
    /// <param name="finding">The finding that ended.</param>
    public static bool IsOnlyThat(string words, Finding finding)
    {
        var known = Words($"{FindingCatalogue.NameOf(finding.FindingKind)} {finding.Zone.Name()} {finding.Zone.NamePlainly()} {finding.Words}").Select(Stem).ToHashSet();
        return SaysIt(words) && Words(words).All(word => Plain.Contains(word) || known.Contains(Stem(word)));
    }

    private static IEnumerable<string> Words(string text) => Word().Matches(text.ToLowerInvariant().Replace('\'', '’')).Select(match => match.Value);

    private static string Stem(string word) => word.TrimEnd('s');

    [GeneratedRegex(@"(?i)\b(gone|better|any ?more|no longer|improved|put right|fixed|cured|fine|in order|unchanged|not changed|no change|as (it|they) (is|was|are|were)|still|on purpose|left (it|that|this|them)|isn['’]t|aren['’]t|(is|are) not)\b")]
    private static partial Regex End();

    [GeneratedRegex(@"\p{L}[\p{L}’]*")]
    private static partial Regex Word();
}
