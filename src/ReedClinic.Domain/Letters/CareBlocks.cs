using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>Playing in, care, cautions, and good wishes. All of it is common practice.</summary>
internal static class CareBlocks
{
    private const int MostFurtherAdvice = 2;

    internal static LetterBlock? Care(LetterMaterial material, Phrasing phrasing)
    {
        var playable = material.Playable.Count;
        if (playable == 0)
        {
            return null;
        }

        var each = ("each", playable == 1 ? "it" : "each reed");
        List<string> sentences = [phrasing.Say("soak", 0, CareWordings.Soak, each), .. AfterWork(material, phrasing)];
        sentences.Add(phrasing.Say("dry", 0, CareWordings.Dry));
        var more = IsTheLesson(material) ? CareWordings.MoreBesideKeeping : CareWordings.More.Skip(material.Playable.Count(reed => !UseBlock.HasItsOwn(material, reed)) < 2 ? 1 : 0);
        sentences.AddRange(phrasing.Some("care", MostFurtherAdvice, more).Select((ways, index) => phrasing.Say("more-care", index, ways, each)));
        return new LetterBlock("care", BlockKind.Care, [new([.. sentences.Select(LetterSentence.Plain)])])
        {
            Heading = "Playing in and care",
        };
    }

    // Rest after work is for reeds that were worked on; where a reed's own part says how to begin, that is not said otherwise here.
    private static IEnumerable<string> AfterWork(LetterMaterial material, Phrasing phrasing)
    {
        var worked = material.Playable.Where(reed => material.LogOf(reed.Id).Live<Adjustment>().Any()).ToList();
        var gentle = worked.Where(reed => !UseBlock.HasItsOwn(material, reed)).ToList();
        if (gentle.Count > 0)
        {
            yield return phrasing.Say("first-days", 0, CareWordings.FirstDays, ("each", Each(gentle, material)));
        }

        if (worked.Count > 0)
        {
            var takesCane = worked.SelectMany(reed => material.LogOf(reed.Id).Live<Adjustment>()).Any(work => SafeChanges.TakesCane(work.Now.AdjustmentKind) == true);
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
            "Knives and blades are very sharp: cut and scrape away from your hand, on a block, and store them with a guard. " + CautionWordings.Knife(material.Age)[0],
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
        var ways = playable == 0 ? ClosingWordings.WishWithoutReeds : ClosingWordings.Wish;
        var wish = phrasing.Say("wish", 0, ways, ("them", playable == 1 ? "it" : "them"), ("they", playable == 1 ? "it" : "they"), ("feel", playable == 1 ? "feels" : "feel"), ("play", playable == 1 ? "plays" : "play"));
        return new LetterBlock(
            "closing",
            BlockKind.Closing,
            [LetterParagraph.Plain(wish), LetterParagraph.Plain(phrasing.Say("bye", 0, ClosingWordings.Bye)), LetterParagraph.Plain(material.Signature)]);
    }
}
