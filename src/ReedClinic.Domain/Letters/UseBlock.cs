using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>One reed: play it first or keep it, where not to scrape, which side is up.</summary>
/// <remarks>All of it is common practice.</remarks>
internal static partial class UseBlock
{
    internal static LetterBlock? Of(LetterMaterial material, Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        var items = new List<LetterParagraph>();
        if (reed.Fitness == Fitness.Mould)
        {
            items.Add(LetterParagraph.Plain(phrasing.Say("mould-use", reed.Number, CautionWordings.MouldUse)));
        }
        else if (log.Verdict is { } verdict && When(material, reed, verdict.Now.VerdictKind, told) is { } ways)
        {
            // Where more than two came, “the other” alone might be any of them.
            var other = ("other", material.Batch.Reeds.Count == 2 ? "the other" : "the other one that is for playing");
            items.Add(new([new(phrasing.Say("when", reed.Number, ways, other), [verdict.Root])]));
        }

        // Of a reed whose cane is to go nothing is left to be left alone.
        var goes = log.Verdict?.Now.VerdictKind == VerdictKind.NotToBeSaved;
        items.AddRange(log.LeftAlone.Where(_ => !goes).Select((left, index) => new LetterParagraph(
        [
            new(phrasing.Say("dont-scrape", reed.Number + index, UseWordings.DontScrape, ("place", LetterPlaces.Name(left.Now.Place))), [left.Root]),
            new(Prose.Sentence(left.Now.Words), [left.Root]),
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
        return UseWordings.ByVerdict.TryGetValue(verdict, out var ways) ? ways
            : !LetterTried.IsGood(material.LogOf(reed.Id), material.Batch.CrowTarget) ? null
            : reed.UsedFor == ReedUse.Concert ? UseWordings.Concert
            : playable.Count < 2 || !playable.Contains(reed) || IsAnswered(material) ? null
            : First(material) == reed.Id ? (playable.Count == 2 ? UseWordings.FirstOfTwo : UseWordings.First)
            : !told.Says("in turn") ? null
            : playable.Count == 2 ? UseWordings.InTurnOfTwo : UseWordings.InTurn;
    }

    // Where the teacher has said which to play first, nothing else is said of it.
    private static bool IsAnswered(LetterMaterial material) => material.Batch.Questions.Any(question => question.Answer is not null && First().IsMatch(question.Text));

    /// <summary>Whether a reed’s own part says how it is to be played at first.</summary>
    /// <param name="material">What the letter is made of.</param>
    /// <param name="reed">The reed.</param>
    internal static bool HasItsOwn(LetterMaterial material, Reed reed) =>
        material.LogOf(reed.Id) is { Verdict: { } verdict } log
        && (UseWordings.ByVerdict.ContainsKey(verdict.Now.VerdictKind) || (reed.UsedFor == ReedUse.Concert && LetterTried.IsGood(log, material.Batch.CrowTarget)));

    [GeneratedRegex(@"(?i)\bwhich\b.*\bfirst\b")]
    private static partial Regex First();

    // The first by number among those that were tried last and came out well; a reed for a concert is kept instead.
    private static ReedId? First(LetterMaterial material) => material.Playable
        .Where(reed => reed.UsedFor != ReedUse.Concert && LetterTried.IsGood(material.LogOf(reed.Id), material.Batch.CrowTarget))
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
