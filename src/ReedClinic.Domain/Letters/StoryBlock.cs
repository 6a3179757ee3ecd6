using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>One reed: what arrived, what was found, what was done and how it ended.</summary>
internal static class StoryBlock
{
    internal static LetterBlock Of(LetterMaterial material, Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        var words = new FoundWords(reed, material.Batch.Reeds.Count(other => other.IsHere) == 1, log, phrasing, told);
        List<LetterParagraph> paragraphs = [new(Arrived(material, reed, log, words, phrasing, told))];
        var found = words.Rest();
        if (found.Count > 0)
        {
            paragraphs.Add(new(found));
        }

        var done = WorkWords.Done(reed, log, material.Batch.CrowTarget, phrasing, told, material.ReasonFor(LetterWish.KeyOf(reed)));
        if (done.Count > 0)
        {
            paragraphs.Add(new(done));
        }

        return new LetterBlock(LetterComposer.Key(reed, "story"), BlockKind.ReedStory, paragraphs)
        {
            Heading = $"Reed {Prose.Number(reed.Number)}",
            Reed = reed.Id,
        };
    }

    /// <summary>What a finding is called on the drawing and in lists.</summary>
    internal static string NameOf(Finding finding) =>
        FindingCatalogue.Find(finding.FindingKind)?.Name ?? Short(finding.Words) ?? "something else";

    /// <summary>A few words, cut short between two letters.</summary>
    internal static string? Short(string? words) => words is not { Length: > 40 } ? words
        : words[..(char.IsHighSurrogate(words[38]) ? 38 : 39)].TrimEnd() + "…";

    private static List<LetterSentence> Arrived(LetterMaterial material, Reed reed, BenchLog log, FoundWords words, Phrasing phrasing, LetterSoFar told)
    {
        var sentences = new List<LetterSentence>();
        if (reed.Bothers.Trim().Length > 0)
        {
            sentences.Add(LetterSentence.Plain(Bothers(reed, phrasing)));
            sentences.AddRange(ComplaintAnswer.Of(material, reed, log, words, phrasing));
        }

        if (reed.Likes is { } likes)
        {
            sentences.Add(LetterSentence.Plain(phrasing.Say("likes", reed.Number, StoryWordings.Likes, ("quote", Prose.Quote(likes)))));
        }

        if (reed is { Winding: not WindingHand.NotRead, OverlapAgrees: { } agrees })
        {
            sentences.Add(LetterSentence.Plain(Winding(reed, agrees, phrasing, told)));
        }

        if (sentences.Count == 0)
        {
            sentences.Add(LetterSentence.Plain(phrasing.Say("plain-arrival", reed.Number, StoryWordings.Plain)));
        }

        return sentences;
    }

    private static string Bothers(Reed reed, Phrasing phrasing)
    {
        var use = reed.UsedFor switch
        {
            ReedUse.Practice => "for practice",
            ReedUse.Lessons => "for lessons",
            ReedUse.Concert => "for concerts",
            ReedUse.Spare => "as a spare",
            _ => null,
        };
        var hours = reed.MinutesPlayed is { } minutes and >= 60 ? (int)Math.Round(minutes / 60.0) : (int?)null;
        IReadOnlyList<string> ways =
        [
            .. StoryWordings.Bothers,
            .. use is null ? [] : StoryWordings.BothersInUse,
            .. hours is null ? [] : StoryWordings.BothersAfter,
        ];
        return phrasing.Say(
            "bothers",
            reed.Number * 3,
            ways,
            ("quote", Prose.Quote(reed.Bothers)),
            ("use", use ?? ""),
            ("hours", hours == 1 ? "one hour" : Prose.Number(hours ?? 0) + " hours"));
    }

    private static string Winding(Reed reed, bool agrees, Phrasing phrasing, LetterSoFar told)
    {
        var hand = reed.Winding == WindingHand.Left ? "left" : "right";
        var ways = (agrees, told.Says($"winding {hand} {agrees}")) switch
        {
            (true, true) => StoryWordings.WindingAgrees,
            (true, false) => StoryWordings.WindingAgreesAgain,
            (false, true) => StoryWordings.WindingDisagrees,
            _ => StoryWordings.WindingDisagreesAgain,
        };
        return phrasing.Say("winding", reed.Number, ways, ("hand", hand));
    }
}
