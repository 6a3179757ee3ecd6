using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>Playing in, care, cautions, and good wishes. All of it is common practice.</summary>
internal static class CareBlocks
{
    internal static LetterBlock? Care(LetterMaterial material, Phrasing phrasing)
    {
        var playable = material.Batch.Reeds.Any(reed => reed.MayBePlayed
            && material.LogOf(reed.Id).Verdict?.Now.VerdictKind != VerdictKind.NotToBeSaved);
        if (!playable)
        {
            return null;
        }

        var days = phrasing.Pick(
            "first-days",
            "For the first three days play each reed for no more than ten minutes, in the middle of the range and not too loud.",
            "Begin gently: ten minutes a day for three days, easy notes, nothing very loud.");
        var dry = phrasing.Pick(
            "dry",
            "Afterwards shake the water out, let it dry in the open for an hour, and only then close the case.",
            "When you have finished, let it dry in moving air before it goes into its case, and keep it away from heaters.");
        List<string> sentences = [days];
        if (material.Batch.Reeds.Any(reed => material.LogOf(reed.Id).Live<Adjustment>().Any()))
        {
            sentences.Add("A reed that has been worked on changes a little in that time, so write down how it feels on the first day and on the fourth.");
        }

        sentences.Add(dry);
        sentences.Add("Take turns with your reeds, so that each can rest for a day.");
        return new LetterBlock("care", BlockKind.Care, [new([.. sentences.Select(LetterSentence.Plain)])])
        {
            Heading = "Playing in and care",
        };
    }

    internal static LetterBlock Cautions(LetterMaterial material)
    {
        List<string> cautions =
        [
            "Rinse a reed that comes back from me and wash your hands before you play it; don't share reeds, and don't play one while you or the other player is ill.",
            "Knives and blades are very sharp: cut and scrape away from your hand, on a block, and store them with a guard. If you are not grown up yet, use one only with a parent or guardian and your teacher beside you.",
            "Scrape where the air moves, and wipe the dust away with a damp cloth.",
            "If your lips, teeth or breathing trouble you, ask a doctor or a dentist; what they say, and your school's own rules, come before anything in this letter.",
        ];
        if (material.Batch.Reeds.Any(reed => reed.Fitness == Fitness.Mould))
        {
            cautions.Insert(0, "A mouldy reed belongs in a closed bag and then in the bin, and the case it lay in should be cleaned.");
        }

        return new LetterBlock("cautions", BlockKind.Cautions, [.. cautions.Select(LetterParagraph.Plain)])
        {
            Heading = "Please mind",
            IsList = true,
        };
    }

    internal static LetterBlock Closing(LetterMaterial material, Phrasing phrasing)
    {
        var one = material.Batch.Reeds.Count(reed => reed.IsHere) == 1;
        var wish = phrasing.Pick(
            "wish",
            one ? "Play it for a while, and then tell me how it is." : "Play them for a while, and then tell me how they are.",
            one
                ? "Let me know how it feels after a week; your ears are part of this."
                : "Let me know how they feel after a week; your ears are part of this.",
            "I look forward to hearing how the next one turns out.");
        var bye = phrasing.Pick("bye", "With warm wishes,", "Kind regards,", "With all good wishes,");
        return new LetterBlock(
            "closing",
            BlockKind.Closing,
            [LetterParagraph.Plain(wish), LetterParagraph.Plain(bye), LetterParagraph.Plain(material.Signature)]);
    }
}
