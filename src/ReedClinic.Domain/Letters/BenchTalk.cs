using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Letters;

/// <summary>Finds what was muttered at the bench and is blunt about a reed or its maker: it isn’t put into a letter as it stands.</summary>
/// <remarks>The words are common English, from memory.</remarks>
internal static partial class BenchTalk
{
    /// <summary>The sentences that are blunt.</summary>
    /// <param name="words">What was said.</param>
    internal static IEnumerable<string> In(string? words) => SpokenOf.Sentences(words).Where(IsBlunt);

    /// <summary>The same words without those sentences, and without the comma at which they were cut off; null where nothing is left.</summary>
    /// <param name="words">What was said.</param>
    internal static string? Without(string? words)
    {
        if (words is null)
        {
            return null;
        }

        List<string> all = [.. SpokenOf.Sentences(words)], kept = [.. all.Where(sentence => !IsBlunt(sentence))];
        var said = Prose.Whole(kept.Count == all.Count ? words : string.Join(' ', kept));
        return said.Length == 0 ? null : said;
    }

    private static bool IsBlunt(string sentence) => Blunt().IsMatch(sentence);

    private const string Bad = "(?:reed|job|work|tip|thing|scrap(?:e|ing)|tying|workmanship)";

    private const string Vain = "(?:saving|keeping|mending|trying|playing|bothering|it|this|that)";

    private const string It = "(?:it|this|this one|this reed|that one|them|these)";

    [GeneratedRegex(
        @"(?i)\b(?:nothing (?:more |else |left )?(?:to be|can be|could be) (?:done|saved)\b.*\b" + It + @"|not to be saved|no hope\b|no (?:use|point)\b(?! in (?!" + Vain + @"\b)| (?!" + Vain + @"\b)\w+ing\b)|(?:past|beyond) (?:all )?(?:saving|help|hope|rescue|repair|redemption)"
        + @"|(?<!\b(?:stroke|scrap|clip|cut|thinn|risk)\w*\b.*)not worth it|not worth (?:saving|keeping|mending|(?:(?:the|my|your|any|more|another|an?) )*(?:time|while|trouble|effort|bother|hour|postage))|waste of|retire " + It
        + @"|(?<!\bmou?ld.*)(?:(?:throw|chuck|toss|fling|bin|dump|scrap) " + It + @"|(?:in|into|for) the (?:bin|rubbish|dustbin|fire))(?!.*\bmou?ld)|give " + It + @" up|give up on|write " + It + @" off|write-off"
        + @"|lost cause|hopeless(?:ly)?|useless|worthless|rubbish|garbage|trash|junk|crap|awful(?! lot)|terrible|(?:awfully|terribly) (?:made|tied|scraped|finished|cut|done|gouged|shaped|bad|poor|(?:\w+ )?" + Bad + @")|horribl[ey]|horrid|dreadful(?:ly)?|ghastly|hideous(?:ly)?|(?:ugly|nasty|lazy) (?:\w+ )?" + Bad + @"|(?:it|this|that)(?: is|[’']s| looks) (?:\w+ )?(?:ugly|nasty)|disgusting|revolting|nastily|pathetic|miserabl[ey]|wretched|lousy|rotten|shoddy"
        + @"|slopp(?:y|ily)|slapdash|careless(?:ly|ness)?|clums(?:y|ily)|(?:she|he|they|you|maker|student|pupil)\b[^.,;]{0,20} lazy|lazily|amateur(?:ish)?|botch(?:ed)?|butcher(?:ed)?|hacked|mangled|massacred|(?<!\b(?:before|be|never|not|\w+n[’']t|would|could|might|may|nearly|almost)\b[^.,;:]{0,20})(?:ruined|wrecked)|stupid(?:ly)?|idiot\w*|damn\w*|bloody|ugh|yuck"
        + @"|an? (?:\w+ )?(?:mess|disaster|catastrophe|horror|wreck|joke)|bad (?:cane|job|work|reed|tying|workmanship)|badly (?:made|tied|scraped|finished|cut|done|gouged|shaped)"
        + @"|(?:who(?:ever)?|what idiot) (?:on earth )?(?:made|tied|scraped|cut|did|taught|sold)|what (?:were|was) (?:they|she|he|you) thinking)\b")]
    private static partial Regex Blunt();
}
