using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>Playing in, care, cautions, and good wishes. All of it is common practice.</summary>
internal static class CareBlocks
{
    private const int MostFurtherAdvice = 2;

    internal static LetterBlock? Care(LetterMaterial material, Phrasing phrasing, LetterSoFar told)
    {
        var playable = material.Playable.Count;
        if (playable == 0)
        {
            return null;
        }

        var each = ("each", playable == 1 ? "it" : "each reed");
        List<string> first = [.. AfterWork(material, phrasing)];
        List<string> sentences = [.. Soaking(material, phrasing), .. first];
        sentences.Add(phrasing.Say("dry", 0, CareWordings.Dry));
        sentences.AddRange(phrasing.Some("care", MostFurtherAdvice, Further(material)).Select((topic, index) => phrasing.Say("care-" + topic, index, CareWordings.More[topic], each)));
        // Said beside an answer about the knife, it isn’t said again.
        List<string> noKnife = told.Says("no knife yet") ? [phrasing.Say("no-knife", 0, CautionWordings.NotYet)] : [];
        return new LetterBlock("care", BlockKind.Care, [.. new[] { sentences, noKnife }.Where(some => some.Count > 0)
            .Select(some => new LetterParagraph([.. some.Select(sentence => LetterSentence.Plain(ForInstrument.Said(sentence, material.Batch.Instrument)))]))])
        {
            Heading = first.Count > 0 ? "Playing in and care" : "Care",
        };
    }

    // Where the teacher said how long, nothing else is said of it.
    private static IEnumerable<string> Soaking(LetterMaterial material, Phrasing phrasing)
    {
        var untold = material.Playable.Where(reed => !PlayAdvice.SaysHowToSoak(material, reed)).ToList();
        return untold.Count == 0 ? [] : [phrasing.Say("soak", 0, CareWordings.Soak, ("each", Each(untold, material)))];
    }

    private static IEnumerable<string> Further(LetterMaterial material) => IsTheLesson(material) ? CareWordings.BesideKeeping
        : CareWordings.More.Keys.Where(topic => topic != CareWordings.Turns || (material.Playable.Count > 1 && !material.Playable.Any(reed => PlayAdvice.HasItsOwn(material, reed))));

    // The first days are for reeds that were worked on; where a reed's own part says how it is played, that is not said otherwise here.
    private static IEnumerable<string> AfterWork(LetterMaterial material, Phrasing phrasing)
    {
        var all = material.Playable.Where(reed => material.LogOf(reed.Id).Work.Any() && SaidOfHarm.Of(material, reed).Count == 0).ToList();
        var worked = all.Where(reed => !PlayAdvice.SaysThePace(material, reed)).ToList();
        if (worked.Count > 0)
        {
            yield return phrasing.Say("first-days", 0, CareWordings.FirstDays, ("each", Each(worked, material)));
        }

        if (worked.Any(reed => PlayAdvice.RestsBeforeUse(material, reed)))
        {
            yield return phrasing.Say("days-first", 0, CareWordings.DaysFirst);
        }

        if (all.Count > worked.Count)
        {
            yield return phrasing.Say("settles", 0, material.Playable.Count == 1 ? CareWordings.ItSettlesToo : CareWordings.SettlesToo, ("each", Each(all, material)));
        }
        else if (worked.Count > 0)
        {
            var takesCane = worked.SelectMany(reed => material.LogOf(reed.Id).Work).Any(work => SafeChanges.TakesCane(work.Now.AdjustmentKind) == true);
            var ways = takesCane ? CareWordings.Settles : [.. CareWordings.Settles.Where(way => !way.Contains("scraping", StringComparison.Ordinal))];
            yield return phrasing.Say("settles", 0, ways, ("each", Each(worked, material)));
        }
    }

    private static string Each(List<Reed> reeds, LetterMaterial material) =>
        material.Playable.Count == 1 ? "it"
        : reeds.Count == material.Playable.Count ? "each reed"
        : reeds.Count == 1 ? "reed " + Prose.Number(reeds[0].Number)
        : "reeds " + Prose.List([.. reeds.Select(reed => Prose.Number(reed.Number))]);

    // Where the lesson itself is how reeds are kept, its plan says the rest.
    private static bool IsTheLesson(LetterMaterial material) =>
        material.Thread.HasLesson && TeachingNote.For(material.Thread.LessonKind, material.Batch.Scrape) == WholeReedLessons.Keeping;

    internal static LetterBlock Cautions(LetterMaterial material)
    {
        List<string> cautions =
        [
            "Rinse a reed that comes back from me and wash your hands before you play it; don’t share reeds, and don’t play one while you or the other player is ill.",
            "Knives and blades are very sharp: cut on a block, keep the plaque between the knife and your finger when you scrape, move the edge away from your hand, and put them away with a guard on. " + CautionWordings.Knife(material.Age)[0],
            "Scrape where the air moves, and wipe the dust away with a damp cloth.",
            CautionWordings.Unwell(material.Age),
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
        var playable = material.Playable.Count;
        // Where nothing was worked on, nothing has changed.
        var worked = material.Playable.Any(reed => material.LogOf(reed.Id).Work.Any());
        IReadOnlyList<string> ways = playable == 0 ? ClosingWordings.WishWithoutReeds
            : [.. (material.Playable.Any(reed => PlayAdvice.HasItsOwn(material, reed)) ? ClosingWordings.WishAtAnyTime : ClosingWordings.Wish).Where(way => worked || !way.Contains("has changed", StringComparison.Ordinal))];
        var wish = phrasing.Say("wish", 0, ways, ("them", playable == 1 ? "it" : "them"), ("they", playable == 1 ? "it" : "they"), ("feel", playable == 1 ? "feels" : "feel"), ("play", playable == 1 ? "plays" : "play"));
        return new LetterBlock(
            "closing",
            BlockKind.Closing,
            [new([.. Next(material, phrasing), LetterSentence.Plain(wish)]), LetterParagraph.Plain(phrasing.Say("bye", 0, ClosingWordings.Bye)), LetterParagraph.Plain(material.Signature)]);
    }

    // What to send next time follows from the plan.
    private static IEnumerable<LetterSentence> Next(LetterMaterial material, Phrasing phrasing) =>
        material.Thread.HasLesson ? [LetterSentence.Plain(phrasing.Say("send-next", 0, IsTheLesson(material) ? ClosingWordings.SendNextKept : ClosingWordings.SendNext, These(material)))] : [];

    private static (string, string)[] These(LetterMaterial material) => material.Batch.Reeds.Count(reed => reed.IsHere) == 1
        ? [("this", "this one"), ("these", "this one")] : [("this", "one of these"), ("these", "these")];
}
