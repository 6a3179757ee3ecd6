using System.Text.RegularExpressions;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Letters;

/// <summary>Parts that were changed by hand against what the letter advises: a knife where it asks to wait or for somebody beside it, a caution that was taken out. The teacher is told, and no more.</summary>
/// <remarks>The words are common ones, from memory.</remarks>
internal static partial class LetterAdvice
{
    private static readonly HashSet<BlockKind> OfTheNextReed = [BlockKind.Lesson, BlockKind.Habit, BlockKind.CheckYourself, BlockKind.Stroke, BlockKind.Plan];

    /// <summary>The notices, at most one of each kind for a part.</summary>
    /// <param name="letter">The letter as it stands.</param>
    /// <param name="material">What it is composed from.</param>
    internal static IEnumerable<LetterGap> Gaps(LetterDraft letter, LetterMaterial material) => letter.Blocks.Where(block => block.IsEdited)
        .SelectMany(block => new[] { OfAKnife(block, letter, material), OfACaution(block, material) }).OfType<LetterGap>();

    private static LetterGap? OfAKnife(LetterBlock block, LetterDraft letter, LetterMaterial material)
    {
        var told = Own(block).Where(sentence => Asks().IsMatch(Spares().Replace(sentence, "that"))).ToList();
        var ofTheNext = OfTheNextReed.Contains(block.Kind);
        if (!ofTheNext && told.Find(sentence => !AnotherReed().IsMatch(sentence) && !WithSomebody().IsMatch(sentence)) is { } now)
        {
            return Tell(block, now, "Reeds that come back are to be played first, and the letter asks for no knife on them before the next lesson. If you mean it so, say when, and who is beside the knife.");
        }

        var guarded = letter.Blocks.Any(part => (part == block || (ofTheNext && OfTheNextReed.Contains(part.Kind))) && WithSomebody().IsMatch(part.Text));
        if (told.Find(sentence => material.Age is AgeAnswer.Younger ? !guarded || Alone().IsMatch(sentence) : material.Age is null && Alone().IsMatch(sentence)) is { } alone)
        {
            return Tell(block, alone, "Whoever isn’t grown up needs a parent or guardian and the teacher beside a knife. Say so there, too, or leave it to a lesson.");
        }

        return ofTheNext && told.Find(sentence => Kept().IsMatch(sentence) && !Kept().IsMatch(block.ComposedText!)) is { } kept
            ? Tell(block, kept, "The heart, the spine and the rails carry a reed, and before you changed this part it took no cane from them. If you mean it so, say how little, and when to stop.")
            : null;
    }

    private static LetterGap? OfACaution(LetterBlock block, LetterMaterial material)
    {
        var missing = Cautions(material).FirstOrDefault(caution =>
            block.ComposedText!.Contains(caution.Text, StringComparison.Ordinal) && !block.Text.Contains(caution.Text, StringComparison.Ordinal)
            && !(caution.OfAKnife && block.Kind != BlockKind.Cautions && block.Text.Length == 0)
            && !(caution.OfAKnife ? WithSomebody() : AsksToBeSafe()).IsMatch(block.Text));
        return missing.Text is null ? null : new(
            "caution-" + block.Key,
            GapKind.CautionTakenOut,
            $"A caution was taken out of {Name(block)}: {Prose.Quote(missing.Text)} Put it back in your own words if it still holds.")
        {
            Reed = block.Reed,
            Part = block.Key,
            IsToldOnly = true,
        };
    }

    private static IEnumerable<(string Text, bool OfAKnife)> Cautions(LetterMaterial material)
    {
        AgeAnswer?[] ages = [material.Age, null, AgeAnswer.Younger];
        return
        [
            .. ages.SelectMany(age => CautionWordings.KnifeBesideAnAnswer(age).Concat(CautionWordings.Knife(age))).Distinct().Concat(CautionWordings.NotYet).Select(text => (text, true)),
            .. ages.SelectMany(age => Enum.GetValues<Caution>().SelectMany(caution => new[] { CautionWordings.Said(caution, age, true), CautionWordings.Said(caution, age, false) }).Append(CautionWordings.Unwell(age)))
                .Concat(CareBlocks.Cautions(material).Paragraphs.Select(paragraph => paragraph.Text)).Concat(CautionWordings.MouldUse.Select(text => text.Replace('\'', '’'))).Distinct().Select(text => (text, false)),
        ];
    }

    // What the teacher wrote there themselves, sentence by sentence; what stands in quotation marks somebody else said.
    private static IEnumerable<string> Own(LetterBlock block) => block.Paragraphs.SelectMany(paragraph => paragraph.Sentences)
        .SelectMany(sentence => Sentence().Split(sentence.Text))
        .Where(sentence => !sentence.Contains('“', StringComparison.Ordinal) && !block.ComposedText!.Contains(sentence, StringComparison.Ordinal));

    private static LetterGap Tell(LetterBlock block, string words, string why) => new(
        "knife-edited-" + block.Key, GapKind.WordsAgainstTheAdvice, $"In {Name(block)} you wrote: {Prose.Quote(words)} {why}")
    {
        Reed = block.Reed,
        Part = block.Key,
        IsToldOnly = true,
    };

    private static string Name(LetterBlock block) => block.Heading is { } heading ? $"“{heading}”" : "this part";

    private const string Work = "(?:scrape|thin|shave|clip|cut|sand|file|trim|take (?:some|a little|a bit|a few strokes|more|cane)|take (?:the|a|your) (?:knife|blade|razor|file)|use (?:the|a|your) (?:knife|blade|razor|file|sandpaper))";

    // What asks somebody to take cane away: “scrape …”, “you can thin …”, “… and cut it yourself”; not what was done here.
    [GeneratedRegex($@"(?i)(?:^\W*|[,;:–]\s*)(?:(?:please|then|now|just|next|first|so|and|or|better|always|at home|by all means|go ahead and|try to|if [^,]+,) )*{Work}\b|\byou (?:can|may|could|should|might|must|will have to|are free to|need to)\b[^.;:]*\b{Work}\b|\b{Work}\b[^.;:]*\b(?:yourself|on your own|by yourself|alone at home)\b")]
    private static partial Regex Asks();

    private const string Worked = "(?:scraped|thinned|shaved|clipped|cut(?![^.;:–]*\\byou)|sanded|filed|took|taken|trimmed)";

    private const string Between = "(?:(?:please|yet|ever|even|just|simply|now|then|first|to|you|should|must|may|can|need|have|reason|try|be tempted|start|go on|go and|want|let|anybody|anyone|at home|at all|yourself|on your own)\\s+)*";

    // Only a denial that governs the work: “don't scrape or thin it”, “take nothing off”, and not “scrape it if it does not speak”; and what was done here.
    [GeneratedRegex($@"(?i)\b(?:\w+n[’']t|not|never|no|nobody|neither|nor|without|rather than)\s+{Between}{Work}\b(?:\s*,\s*{Work}\b)*(?:[^.,;:!?–]*?,?\s*\b(?:or|nor)\s+{Work}\b)*|\b{Work}\s+(?:nothing|none|no (?:cane|more))\b"
        + $@"|\bI (?:(?:had |have |would |will |shall |should |)(?:also |only |just )?(?:{Worked}|scrape|thin|shave|clip|sand|take|trim)\b)(?:[^.;:–]*?(?:,|\band)\s+(?:and )?{Worked}\b)*")]
    private static partial Regex Spares();

    [GeneratedRegex(@"(?i)\b(?:parents?|guardians?|mother|father|mum|dad|grown[- ]?ups?|adults?|teacher|lessons?|together|with me|beside me|beside you)\b")]
    private static partial Regex WithSomebody();

    [GeneratedRegex(@"(?i)\b(?:yourself|on your own|by yourself|alone at home|all alone)\b")]
    private static partial Regex Alone();

    [GeneratedRegex(@"(?i)\b(?:doctors?|dentists?|nurse|don[’']t (?:play|share|touch)|do not (?:play|share|touch)|wash|rinse|clean)\b")]
    private static partial Regex AsksToBeSafe();

    [GeneratedRegex(@"(?i)\b(?:next|new|old|spare|another|practice|other) (?:reed|reeds|one|ones|blank|blanks)\b|\b(?:on|with) (?:a|some) blanks?\b")]
    private static partial Regex AnotherReed();

    [GeneratedRegex(@"(?i)\b(?:heart|spine|rails?)\b")]
    private static partial Regex Kept();

    [GeneratedRegex(@"(?<=[.!?…])\s+|\n")]
    private static partial Regex Sentence();
}
