using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>One reed: play it first or keep it, how long to soak it, where not to scrape, which side is up.</summary>
/// <remarks>All of it is common practice; the soaking time is in the published text that the adjustment “soak” names.</remarks>
internal static class UseBlock
{
    internal static LetterBlock? Of(LetterMaterial material, Reed reed, BenchLog log, Phrasing phrasing)
    {
        var items = new List<LetterParagraph>();
        if (reed.Fitness == Fitness.Mould)
        {
            items.Add(LetterParagraph.Plain("Please don't play it. Keep the staple if you can clean it well, and let the cane go."));
        }
        else if (log.Verdict is { } verdict)
        {
            items.Add(new([new(When(material, reed, verdict.Now.VerdictKind), [verdict.Root])]));
            if (verdict.Now.VerdictKind is not VerdictKind.NotToBeSaved)
            {
                items.Add(LetterParagraph.Plain(phrasing.Pick(
                    "soak", reed.Number,
                    "Soak it for three to five minutes in fresh water, then take it out.",
                    "Three to five minutes in clean water are enough; longer makes it stuffy.",
                    "Give it three to five minutes in fresh water before you play.")));
            }
        }

        items.AddRange(log.LeftAlone.Select(left => new LetterParagraph(
        [
            new($"Please don't scrape here: {Where(left.Now.Place)}. {Prose.Sentence(left.Now.Words)}", [left.Root]),
        ])));
        if (reed.UpperMark is { } mark && reed.Fitness != Fitness.Mould && log.Verdict?.Now.VerdictKind != VerdictKind.NotToBeSaved)
        {
            items.Add(LetterParagraph.Plain($"Play it with this side up: the blade with the mark ({Prose.Inside(mark.Trim().TrimEnd('.'))})."));
        }

        return items.Count == 0
            ? null
            : new LetterBlock(LetterComposer.Key(reed, "use"), BlockKind.ReedUse, items) { Reed = reed.Id, IsList = true };
    }

    private static string Where(Place place) => "the " + place.Say();

    private static string When(LetterMaterial material, Reed reed, VerdictKind verdict)
    {
        var concert = reed.UsedFor == ReedUse.Concert;
        return verdict switch
        {
            VerdictKind.NotToBeSaved => "Don't play it any more; keep it for its staple, which can be used again.",
            VerdictKind.NeedsPlayingIn => "Play it in: a few minutes a day for a week, easy notes, and don't judge it before then.",
            VerdictKind.StoppedToProtectIt => "Use it for short, quiet practice, and give it a day's rest between.",
            VerdictKind.ReturnedUnplayed => "Wait until you have read what I wrote about it above.",
            VerdictKind.AsGoodAsThisCaneGets => "Use it for everyday playing rather than for a concert.",
            _ when concert => "Keep this one for the concert: play it a little now, then leave it in its case until the week before.",
            _ when First(material) == reed.Id => "Play this one first.",
            _ => "Keep this one and take turns with the others, so that each has a day to dry.",
        };
    }

    // The first by number among those that are ready to play; a reed for a concert is kept instead.
    private static ReedId? First(LetterMaterial material) => material.Batch.Reeds
        .Where(reed => reed.UsedFor != ReedUse.Concert)
        .OrderBy(reed => material.LogOf(reed.Id).Verdict?.Now.VerdictKind switch
        {
            VerdictKind.Improved => 0,
            VerdictKind.GoodOnArrivalRefined => 0,
            VerdictKind.LeftAsItCame => 1,
            _ => 2,
        })
        .ThenBy(reed => reed.Number)
        .FirstOrDefault()?.Id;
}
