using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>“Tip is fine” in the teacher’s words, where a fault of that part is told in the same breath: it is joined to it.</summary>
internal static partial class PartPraised
{
    /// <summary>The sentence.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="findings">What was found on the reed.</param>
    /// <param name="isTold">Whether a fault was told before.</param>
    /// <param name="turn">Makes neighbours choose other words.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static string Say(string words, IReadOnlyList<FindingNow> findings, Func<FindingNow, bool> isTold, int turn, Phrasing phrasing)
    {
        if (Praise().Match(words) is not { Success: true } said)
        {
            return BenchSaid.Sentence(words, turn, phrasing);
        }

        var part = said.Groups["part"].Value.ToLowerInvariant();
        var against = findings.Where(one => one.Finding.Character == FindingCharacter.Fault
            && (one.Finding.Zone.ToString().StartsWith(part, StringComparison.OrdinalIgnoreCase) || one.Finding.FindingKind.Value.StartsWith(part + "-", StringComparison.Ordinal))).ToList();
        var what = ("what", $"the {part} {said.Groups["rest"].Value}");
        return against.Count == 0 ? BenchSaid.Sentence(words, turn, phrasing)
            : against.TrueForAll(one => isTold(one)) ? phrasing.Say("praised-otherwise", turn, FindingFrames.Otherwise, what)
            : phrasing.Say("praised-but", turn, FindingFrames.ButForWhatFollows, what);
    }

    [GeneratedRegex(@"(?i)^\W*(?:the )?(?<part>tip|heart|back|opening|spine|windows|rails) (?<rest>(?:is|are|looks?|seems?) (?:quite |all |very |just )?(?:fine|good|ok|okay|right|well|in order|nice|lovely))\W*$")]
    private static partial Regex Praise();
}
