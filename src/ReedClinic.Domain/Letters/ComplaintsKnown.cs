using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>The words by which students complain, and what each is about.</summary>
/// <remarks>The words are common ones of students, from memory; what brings a thing about is common practice. What isn’t recognised is asked back.</remarks>
internal static partial class ComplaintsKnown
{
    /// <summary>Each with the words that say it.</summary>
    public static IReadOnlyList<(Regex Words, Complaint Means)> All { get; } =
    [
        (Wide(), new(TestKind.Opening, 1, ["opening-wide", "more-open-than-liked"]) { Contrary = "how open it is", Name = "the opening" }),
        (Narrow(), new(TestKind.Opening, -1, ["opening-narrow", "closes-in-play"]) { Contrary = "how it closes", Name = "the opening", Causes = ["spine-scraped"] }),
        (Low(), new(TestKind.LowResponse, 0, []) { Name = "the low notes", IsPlural = true, Causes = ["back-thick"] }),
        (High(), new(TestKind.HighSteadiness, 0, []) { Name = "the high notes", IsPlural = true, Causes = ["tip-centre-thin", "tip-long", "spine-scraped"] }),
        (Air(), new(TestKind.Seal, 0, ["side-leak", "thread-leak"]) { Name = "air at the sides" }),
        (Tongued(), new(TestKind.TonguedStarts, 0, []) { Name = "tongued notes", IsPlural = true, Near = [TestKind.SoftestStart], Causes = ["tip-not-separate", "step-abrupt", "tip-long", "bumps"] }),
        (Starts(), new(TestKind.TonguedStarts, 0, []) { Name = "the beginnings of notes", IsPlural = true, Near = [TestKind.SoftestStart, TestKind.Peep], Causes = ["tip-not-separate", "step-abrupt", "tip-short", "tip-thick", "tip-corners-thick"] }),
        (Soft(), new(TestKind.SoftestStart, 0, []) { Name = "soft starts", IsPlural = true, Near = [TestKind.TonguedStarts], Causes = ["tip-corners-thick", "tip-thick"] }),
        (Hard(), new(TestKind.Effort, 1, []) { Contrary = "what is hard to blow", Name = "how hard it is to blow", Causes = ["heart-sides-thick", "heart-thick", "opening-wide", "back-thick"] }),
        (Easy(), new(TestKind.Effort, -1, []) { Contrary = "what is easy to blow", Name = "how easy it is to blow" }),
        (Tiring(), new(TestKind.Effort, 0, []) { Name = "how tiring it is", Near = [TestKind.Opening], Causes = ["opening-wide", "heart-sides-thick", "heart-thick", "back-thick", "side-leak"] }),
        (Bite(), new(null, 0, []) { Name = "the biting", Near = [TestKind.TuningNote, TestKind.Opening, TestKind.Effort], Causes = ["opening-wide", "heart-thin", "tip-long", "side-leak"] }),
        (Flat(), new(TestKind.TuningNote, -1, []) { Contrary = "what is flat", Name = "its pitch", Near = [TestKind.Crow], Causes = ["heart-thin", "tip-long"] }),
        (Sharp(), new(TestKind.TuningNote, 1, []) { Contrary = "what is sharp", Name = "its pitch", Near = [TestKind.Crow], Causes = ["opening-narrow", "tip-short"] }),
        (Pitch(), new(TestKind.TuningNote, 0, []) { Name = "its pitch", Near = [TestKind.Crow] }),
        (Bright(), new(TestKind.Edge, 1, ["brighter-than-liked"]) { Contrary = "what is bright", Name = "the edge of the sound", Causes = ["tip-even-across", "tip-thin", "heart-thin"] }),
        (Dull(), new(TestKind.Edge, -1, []) { Contrary = "what is dull", Name = "the edge of the sound", Near = [TestKind.Depth], Causes = ["dirty-inside", "worn"] }),
        (Thin(), new(TestKind.Depth, 0, []) { Name = "the depth of the sound", Causes = ["back-thick"] }),
        (Pinched(), new(TestKind.Depth, 0, []) { Name = "how freely it sounds", Near = [TestKind.Opening, TestKind.Effort], Causes = ["opening-narrow", "thread-too-high", "tip-short", "back-thick"] }),
        (LongNotes(), new(TestKind.Swell, 0, []) { Name = "how a note holds", Causes = ["heart-thin", "back-thin", "spine-scraped", "side-leak", "closes-in-play"] }),
        (Lasting(), new(null, 0, ["closes-in-play"]) { Name = "how long it lasts", Near = [TestKind.Swell], Causes = ["worn", "back-thin", "spine-scraped"] }),
        (Aged(), new(null, 0, []) { Name = "how it has aged", IsOnlyAlone = true, Near = [TestKind.Depth], Causes = ["worn", "dirty-inside"] }),
        (Changing(), new(null, 0, []) { Name = "how it changes", Causes = ["slipped-against-winding", "slipped-too-far", "side-leak", "thread-leak"] }),
        (Squeaks(), new(null, 0, []) { Name = "the squeaks", IsPlural = true, Near = [TestKind.HighSteadiness], Causes = ["tip-long", "tip-centre-thin", "tip-corner-broken", "tip-thin"] }),
        (Noise(), new(null, 0, []) { Name = "the noise in it", Near = [TestKind.Seal], Causes = ["tip-edge-ragged", "tip-corner-broken", "tip-cracked", "side-leak"] }),
        (Slurs(), new(null, 0, []) { Name = "the slurs", IsPlural = true, Near = [TestKind.TonguedStarts], Causes = ["step-abrupt", "bumps"] }),
        (Uneven(), new(null, 0, ["left-right-uneven", "blades-uneven", "heart-lopsided", "windows-uneven", "opening-lopsided", "crooked-on-staple"]) { Name = "how even it is" }),
        (Fits(), new(null, 0, ["cork-loose"]) { Name = "how it sits in the instrument" }),
        (Looks(), new(null, 0, ["tip-wavy", "tip-edge-ragged", "tip-corner-broken", "tip-cracked", "body-cracked"]) { Name = "how it looks" }),
    ];

    /// <summary>Whether words say that nothing is the matter.</summary>
    /// <param name="words">The student’s words.</param>
    public static bool IsNone(string words) => Nothing().IsMatch(words) && !TakesBack().IsMatch(words);

    /// <summary>Where in some words a complaint is told; null where it isn’t, or is a good word beside “nothing”.</summary>
    /// <param name="complaint">The words that tell it.</param>
    /// <param name="words">The student’s words.</param>
    public static int? Where(Regex complaint, string words)
    {
        if (Nothing().Match(words) is not { Success: true, Length: > 0 })
        {
            return complaint.Match(words) is { Success: true } first ? first.Index : null;
        }

        return TakesBack().Match(words) is { Success: true } back
            ? complaint.Match(words, back.Index) is { Success: true } behind ? behind.Index : null
            : complaint.Matches(words).FirstOrDefault(match => !GoodToo().IsMatch(match.Value) && !DeniedBefore().IsMatch(words[..match.Index]))?.Index;
    }

    [GeneratedRegex(@"(?i)\b(too|so|very|rather|a (bit|little)) (open|wide)\b|\b(gap|gapes|gaping|wide open)\b|\b(wide|big|large|huge) opening\b|\bopening (?:(?:is|was|looks|seems|feels|has got|gets) )?(?:(?:too|very|rather|so|quite|really|a bit|a little|much too|far too) )?(?:wide|big|large|huge)\b|\bopens? (?:up )?(?:too (?:far|much|wide)|so (?:far|much|wide))\b|\btoo much opening\b")]
    private static partial Regex Wide();

    [GeneratedRegex(@"(?i)\b(too|so|very|rather|a (bit|little)) (closed|narrow)\b|\bcloses? (up|down)\b|\b(small|narrow|tiny) opening\b|\bopening (?:(?:is|was|looks|seems|feels|has got|gets) )?(?:(?:too|very|rather|so|quite|really|a bit|a little|much too|far too) )?(?:small|narrow|tiny|closed)\b|\btoo little opening\b")]
    private static partial Regex Narrow();

    // A whole clause that says so, and nothing that takes it back: not “nothing comes out”, nor “fine for five minutes”.
    [GeneratedRegex(@"(?i)^\W*((nothing|none|no (complaints?|trouble))( (at all|really|much|special|in particular|particular|new|so far|yet|to (complain|say|report)|(is )?wrong|is the matter|bothers( me)?"
        + @"|(about|of|with|on|from) (it|this( (one|reed))?|that( one)?|the reed|me)))*|((it( is|['’]s)|all( is)?|everything is) )?fine|(it( is|['’]s)|all( is)?|everything is) well)\s*([.,;!–-]|$)(?!\s*(but|except|only|apart|save|though|although|until|then)\b)|^\W*$")]
    private static partial Regex Nothing();

    // What takes a “nothing” back, anywhere behind it: from there on it is read as a complaint.
    [GeneratedRegex(@"(?i)\b(but|except|apart from|although|though|however|sometimes|at times|now and then)\b(?! (thank|thanks)\b)|[.,;–-]\s*only\b")]
    private static partial Regex TakesBack();

    // Names of what a reed does, no faults by themselves: beside “nothing” they praise.
    [GeneratedRegex(@"(?i)^(response|(low|lowest|bottom|deep|high|highest|top|upper) .*|tongu.*|staccato|repeated notes?|pitch|tuning|intonation|slur.*|legato|long (notes?|tones?)|soft|softly|quiet|quietly|whisper|pianissimo|resist.*|(every|the) start|beginnings? .*|bright|.*\b(new|better|lovely|good|fine|great|nice|easy|light)\b.*)$")]
    private static partial Regex GoodToo();

    [GeneratedRegex(@"(?i)\b(no|not|never|neither|nor|hardly|without|\w+n['’]t)\b[^.,;!?]*$")]
    private static partial Regex DeniedBefore();

    [GeneratedRegex(@"(?i)\b(low|lowest|bottom|deep) (notes?|register|[a-g]\b)")]
    private static partial Regex Low();

    [GeneratedRegex(@"(?i)\b(high|highest|top|upper) (notes?|register|[a-g]\b)")]
    private static partial Regex High();

    [GeneratedRegex(@"(?i)\b(leaks?|leaking|leaky|hear air|loses air|air (beside|comes out))\b")]
    private static partial Regex Air();

    [GeneratedRegex(@"(?i)\b(tongued?|tonguing|staccato|repeated notes?)\b")]
    private static partial Regex Tongued();

    [GeneratedRegex(@"(?i)\b(fuzzy|fuzz|furry|vague|response|unresponsive|responds? (late|badly|slowly)|(late|slow|hesitant) (starts?|response)|starts? (late|badly|like)|(every|the) start\b|hesitates?|beginnings? of (a |the )?notes?)\b")]
    private static partial Regex Starts();

    [GeneratedRegex(@"(?i)\b((?<!\b(go|goes|going|get|gets|turns|becomes?) )soft|softly|quiet|quietly|whisper|pianissimo|slow to (start|speak)|come in with a (thump|bump|push)|starts? with a (thump|bump)|(won['’]t|doesn['’]t|hard to) (start|speak))\b")]
    private static partial Regex Soft();

    [GeneratedRegex(@"(?i)\b(hard (to blow|work)|too hard|heavy|stiff|stuffy|plank|(?<!\b(no|little|without|lacks|enough) )resist(s|ance)?)\b")]
    private static partial Regex Hard();

    [GeneratedRegex(@"(?i)\b(too easy|too light|(no|little|without|lacks) resistance|nothing to blow against)\b")]
    private static partial Regex Easy();

    [GeneratedRegex(@"(?i)\b(tiring|tires|tire (out )?(my|me|the)|tired (lips?|mouth|after)|wears? (out )?(my|the|our) lips?|(lips?|mouth|embouchure) (gives?|gave|wears?|goes|hurts?|aches?)|exhaust(s|ing)"
        + @"|(lips?|mouth|embouchure|jaw|cheeks?)( (?!(?:not|never|hardly|no)\b|\w+n['’]t\b)[\w’']+){0,4} tired|(makes?|get|gets|feel) (me )?(so |very |really |quite )?tired)\b")]
    private static partial Regex Tiring();

    [GeneratedRegex(@"(?i)\b(bite|bites|biting)\b")]
    private static partial Regex Bite();

    [GeneratedRegex(@"(?i)\b(out of tune|pitch|tuning|intonation)\b"
        + @"|(\b(not|cannot|hardly|barely|never|without|hard|difficult|impossible|struggle|less|more)|n['’]t)( (?!(and|but|only)\b)[\w’']+){0,5} in tune\b")]
    private static partial Regex Pitch();

    [GeneratedRegex(@"(?i)\b(flat|flattens?)\b")]
    private static partial Regex Flat();

    [GeneratedRegex(@"(?i)\bsharp\b")]
    private static partial Regex Sharp();

    [GeneratedRegex(@"(?i)\b(bright|edgy|harsh|shrill|brassy|piercing|tinny)\b")]
    private static partial Regex Bright();

    [GeneratedRegex(@"(?i)\b(covered|dull|muffled|dead)\b")]
    private static partial Regex Dull();

    [GeneratedRegex(@"(?i)\b(thin|hollow|small) (sound|tone)\b|\b(sounds?|tone is) (so |too |a little |a bit )?(thin|hollow)\b")]
    private static partial Regex Thin();

    [GeneratedRegex(@"(?i)\b(pinched|choked|chokes|strangled|squeezed|nasal)\b")]
    private static partial Regex Pinched();

    [GeneratedRegex(@"(?i)\b(long (notes?|tones?)|dies|dying|fades?|cuts? out|collapses?|gives? way|sags?|unsteady|unstable|wobbl(e|es|y|ing)(?! in (the|my)))\b")]
    private static partial Regex LongNotes();

    [GeneratedRegex(@"(?i)\b(goes|gets|turns|becomes?|going) (soft|mushy|limp|floppy)\b|\bdoes ?n['’]t last\b")]
    private static partial Regex Lasting();

    [GeneratedRegex(@"(?i)\b((was|were|used to be) (so )?(lovely|good|better|fine|great|nice|easy)|gone off|worn( out)?|getting old|got (worse|old)|past its best)\b")]
    private static partial Regex Aged();

    [GeneratedRegex(@"(?i)\b(chang\w+|differ\w*|other|another|new|better|worse)\b[^.!?;,]*\b(every|each) day\b|\b(every|each) day\b,?[^.!?;,]*\b(chang\w+|differ\w*|other|another|new|better|worse)\b"
        + @"|\b(day (to|by) day|some days|from one day|with the weather|never the same|unreliable)\b")]
    private static partial Regex Changing();

    [GeneratedRegex(@"(?i)\b(squeaks?|squeaky|squeaking|squeals?|chirps?|flutters?)\b")]
    private static partial Regex Squeaks();

    [GeneratedRegex(@"(?i)\b(hiss(es|ing)?|spits?|buzz(es|y|ing)?|rattl(es?|ing)|nois[ey]|gurgl(es?|ing))\b")]
    private static partial Regex Noise();

    [GeneratedRegex(@"(?i)\b(slurs?|slurring|slurred|legato)\b")]
    private static partial Regex Slurs();

    [GeneratedRegex(@"(?i)\b(lopsided|crooked|asymmetric(al)?|one (side|half|blade)|(?<!come out |comes out |notes are )uneven)\b")]
    private static partial Regex Uneven();

    [GeneratedRegex(@"(?i)\b(wobbl\w+ in (the|my)|loose in (the|my)|cork is|loose cork|(does ?n['’]t|won['’]t) (fit|go in|stay in)|falls out)\b")]
    private static partial Regex Fits();

    [GeneratedRegex(@"(?i)\b(frilly|frayed|wavy|ragged|crack(ed)?|split|chipped|broken(?! in))\b")]
    private static partial Regex Looks();
}
