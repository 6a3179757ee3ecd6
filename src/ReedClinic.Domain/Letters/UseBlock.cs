using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>One reed: play it first or keep it, where not to scrape, which side is up.</summary>
/// <remarks>All of it is common practice.</remarks>
internal static class UseBlock
{
    internal static LetterBlock? Of(LetterMaterial material, Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        var harm = SaidOfHarm.Of(material, reed);
        List<LetterParagraph> items = [.. SaidOfHarm.Said(harm, material, ofAll: false)];
        if (reed.Fitness == Fitness.Mould)
        {
            items.Add(LetterParagraph.Plain(phrasing.Say("mould-use", reed.Number, CautionWordings.MouldUse)));
        }
        else if (log.Verdict is { } verdict && (harm.Count == 0 || verdict.Now.VerdictKind == VerdictKind.NotToBeSaved) && !PlayAdvice.IsTheTeachers(material, reed) && When(material, reed, verdict.Now.VerdictKind, told) is { } ways)
        {
            // Where more than two came, “the other” alone might be any of them.
            var other = ("other", material.Batch.Reeds.Count == 2 ? "the other" : "the other one that is for playing");
            items.Add(new([new(phrasing.Say("when", reed.Number, ways, other), [verdict.Root])]));
        }

        if (PutAside.Use(reed, log, PlayAdvice.IsTheTeachers(material, reed), harm.Count > 0, phrasing).ToList() is { Count: > 0 } aside)
        {
            items.Add(new(aside));
        }

        // Of a reed whose cane is to go nothing is left to be left alone.
        var goes = log.Verdict?.Now.VerdictKind == VerdictKind.NotToBeSaved;
        items.AddRange(log.LeftAlone.Where(_ => !goes).Select((left, index) => new LetterParagraph(
        [
            new(phrasing.Say("dont-scrape", reed.Number + index, UseWordings.DontScrape, ("place", LetterPlaces.Name(left.Now.Place))), [left.Root]),
            .. left.Now.Words == LetterLog.NoReason || AloneSaid.IsOnlyThat(left.Now.Words) ? Array.Empty<LetterSentence>() : [new(BenchSaid.Sentence(left.Now.Words, reed.Number + index, phrasing), [left.Root])],
        ])));
        if (reed.UpperMark is { } mark && reed.Fitness != Fitness.Mould && !goes)
        {
            items.Add(LetterParagraph.Plain(phrasing.Say(
                "this-side-up", reed.Number, UseWordings.ThisSideUp, ("mark", Prose.Inside(mark.Trim().TrimEnd('.'))))));
        }

        return items.Count == 0
            ? null
            : new LetterBlock(LetterComposer.Key(reed, "use"), BlockKind.ReedUse, items) { Reed = reed.Id, IsList = true };
    }

    // Null where nothing need be said: of one reed alone, or when the same was said of another already.
    private static IReadOnlyList<string>? When(LetterMaterial material, Reed reed, VerdictKind verdict, LetterSoFar told)
    {
        var playable = material.Playable;
        return UseWordings.Says(verdict, reed) ? UseWordings.ByVerdict[verdict]
            : !LetterTried.IsGood(material.LogOf(reed.Id), material.Batch.CrowTarget) ? null
            : reed.UsedFor == ReedUse.Concert ? (material.LogOf(reed.Id).Work.Any() ? UseWordings.Concert : UseWordings.ConcertAsItCame)
            : playable.Count < 2 || !playable.Contains(reed) || PlayAdvice.SaysWhichFirst(material) ? null
            : playable.Any(other => PlayAdvice.HasItsOwn(material, other)) ? (First(material) == reed.Id ? UseWordings.FirstAlone : null)
            : First(material) == reed.Id ? (playable.Count == 2 ? UseWordings.FirstOfTwo : UseWordings.First)
            : !told.Says("in turn") ? null
            : playable.Count == 2 ? UseWordings.InTurnOfTwo : UseWordings.InTurn;
    }

    // The first by number among those that were tried last and came out well, and of which nothing else is said.
    private static ReedId? First(LetterMaterial material) => material.Playable
        .Where(reed => !PlayAdvice.HasItsOwn(material, reed) && LetterTried.IsGood(material.LogOf(reed.Id), material.Batch.CrowTarget))
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
