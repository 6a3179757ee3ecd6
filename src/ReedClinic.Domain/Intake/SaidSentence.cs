using System.Text.RegularExpressions;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Intake;

/// <summary>One sentence as its words, small and without diacritics; commas stay as words of their own.</summary>
internal sealed partial class SaidSentence
{
    private readonly string[] _words;

    private SaidSentence(string[] words) => _words = words;

    /// <summary>A word, or nothing beyond either end.</summary>
    /// <param name="at">Its place, from 0.</param>
    public string this[int at] => at >= 0 && at < _words.Length ? _words[at] : "";

    /// <summary>The sentences of a text.</summary>
    /// <param name="text">What was written.</param>
    public static IEnumerable<SaidSentence> Of(string? text) => Sentence().Matches(Folding.Of((text ?? "").Replace('\n', '.').Replace('’', '\'')))
        .Select(match => new SaidSentence([.. Word().Matches(Denials().Replace(match.Value, " n't "))
            .Select(word => word.Value is "without" or "no" or "not" or "never" or "nor" or "neither" or "none" ? word.Value : Plain(word.Value))]))
        .Where(sentence => sentence._words.Length > 0);

    /// <summary>Whether one of some words is in it, denied or not.</summary>
    /// <param name="words">The words.</param>
    public bool Any(IReadOnlySet<string> words) => _words.Any(words.Contains);

    /// <summary>Whether it says something somewhere without denying it.</summary>
    /// <param name="holds">Whether it is said at a place.</param>
    /// <param name="evenDenied">True to count what is denied, too.</param>
    public bool Says(Func<int, bool> holds, bool evenDenied = false)
    {
        for (var at = 0; at < _words.Length; at++)
        {
            if (holds(at) && (evenDenied || !IsDenied(at)))
            {
                return true;
            }
        }

        return false;
    }

    // Only a “no” that stands close before it, with nothing between but what belongs to it: “no idea why it bleeds” denies nothing.
    private bool IsDenied(int at)
    {
        var before = at - 1;
        while (CautionWords.BetweenNoAndIt.Contains(this[before]))
        {
            before--;
        }

        return CautionWords.Denials.Contains(this[before])
            && !(this[before] is "without" ? _words.Take(before).Any(CautionWords.TurnsWithout.Contains) : IsOfAnotherTime(before) || (this[before] is "never" && this[before + 1] is "been" && this[before + 2] is "so"));
    }

    // “I never had a sore lip before this reed”, “it doesn't hurt unless …”, “until this one my lips were never sore”: denied of another time, and said of this one.
    private bool IsOfAnotherTime(int denial)
    {
        if (this[denial - 1] is "wo")
        {
            return false;
        }

        var clause = _words.Skip(denial + 1).TakeWhile(word => word is not ("," or "and")).Count();
        return IsTurned(0) || Enumerable.Range(denial + 1, Math.Max(0, _words.Length - denial - 1))
            .Any(at => (CautionWords.Until.Contains(this[at]) || (at <= denial + clause && CautionWords.OfAnother.Contains(this[at]))) && IsTurned(at));
    }

    // “I never scrape it before I send it” is of no other time.
    private bool IsTurned(int at) => (CautionWords.Until.Contains(this[at]) || CautionWords.OfAnother.Contains(this[at]))
        && !Enumerable.Range(at + 1, 4).Any(next => CautionWords.Posting.Contains(this[next]));

    private static string Plain(string word) => word.StartsWith("mold", StringComparison.Ordinal) ? "mould" + word[4..] : word;

    [GeneratedRegex(@"[^.!?…;:]+")]
    private static partial Regex Sentence();

    // “don't”, and as it is typed in haste; “cannot”.
    [GeneratedRegex(@"n't\b|(?<=\b(?:do|does|did|is|was|are|were|have|has|had|ca|wo|should|would|could))nt\b|(?<=\bcan)not\b")]
    private static partial Regex Denials();

    [GeneratedRegex(@"n't|[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)*|,")]
    private static partial Regex Word();
}
