using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>One reed: what arrived, what was found, what was done and how it ended.</summary>
internal static partial class StoryBlock
{
    private const int WholeHours = 5 * 60;
    private const int MostLetters = 60;
    private const int FewestLetters = 12;

    internal static LetterBlock Of(LetterMaterial material, Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        var words = new FoundWords(reed, log, phrasing, told);
        List<LetterParagraph> paragraphs = [new(Arrived(material, reed, log, words, phrasing, told))];
        var found = words.Rest();
        if (found.Count > 0)
        {
            paragraphs.Add(new(found));
        }

        var done = WorkWords.Done(reed, log, material.Batch.CrowTarget, phrasing, told, material.ReasonFor(LetterWish.KeyOf(reed)), material.ReasonFor(GivenUp.KeyOf(reed)));
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
        PlainNames.Find(finding.FindingKind) ?? Short(finding.Words) ?? "something else";

    /// <summary>A few words: all of them, else the first clause, else as many whole words as there is room for.</summary>
    internal static string? Short(string? words)
    {
        if (words is not { Length: > MostLetters })
        {
            return words;
        }

        // A clause that says what it isn’t, and a number that was cut, would say something else.
        var clause = Denies().IsMatch(words) ? 0 : Enumerable.Range(FewestLetters, MostLetters + 1 - FewestLetters).FirstOrDefault(at => EndsClause(words, at));
        if (clause > 0)
        {
            return words[..clause];
        }

        var space = words.LastIndexOf(' ', MostLetters);
        var end = space >= FewestLetters ? space : char.IsHighSurrogate(words[MostLetters - 2]) ? MostLetters - 2 : MostLetters - 1;
        return Prose.Whole(words[..end]) + "…";
    }

    private static bool EndsClause(string words, int at) =>
        words[at] is '.' or ',' or ';' or ':' && (at + 1 == words.Length || char.IsWhiteSpace(words[at + 1])) && !char.IsDigit(words[at - 1]);

    [GeneratedRegex(@"(?i)^\W*(?:not|no|neither)\b")]
    private static partial Regex Denies();

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

        if (reed is { Winding: not WindingHand.NotRead, OverlapAgrees: { } agrees } && !TellsOfTheOverlap(log))
        {
            sentences.Add(LetterSentence.Plain(Winding(reed, agrees, phrasing, told)));
        }

        if (sentences.Count == 0)
        {
            sentences.Add(LetterSentence.Plain(phrasing.Say("plain-arrival", reed.Number, StoryWordings.Plain)));
        }

        return sentences;
    }

    // What was found of the overlap, or done about it, says more than how it came: once, and not “against the thread” of a reed that was set right.
    private static bool TellsOfTheOverlap(BenchLog log) =>
        log.Findings.Any(one => one.Finding is { Character: FindingCharacter.Fault, FindingKind.Value: "slipped-against-winding" or "slipped-too-far" or "no-slip" })
        || log.Work.Any(work => work.Now.AdjustmentKind.Value is "realign" or "retie");

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
        var hours = reed.MinutesPlayed is { } minutes and >= 60 ? Hours(minutes) : null;
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
            ("hours", hours ?? ""));
    }

    // To the half hour where that tells something, for “an hour and a half” is not two.
    private static string Hours(int minutes) => (minutes >= WholeHours ? 2 * (int)Math.Round(minutes / 60.0) : (int)Math.Round(minutes / 30.0)) switch
    {
        2 => "one hour",
        3 => "an hour and a half",
        var halves when halves % 2 == 1 => Prose.Number(halves / 2) + " and a half hours",
        var halves => Prose.Number(halves / 2) + " hours",
    };

    // They say so, or nobody else is named and it is no blank and no bought reed.
    private static bool IsTiedByThem(Reed reed) => reed.TiedBy is { } by ? Themselves().IsMatch(by) : reed.MadeHow == MadeHow.Tied;

    [GeneratedRegex(@"(?i)^\W*(?:by )?(?:me|I|myself|I did|self|I tied it)(?: myself)?\W*$")]
    private static partial Regex Themselves();

    private static string Winding(Reed reed, bool agrees, Phrasing phrasing, LetterSoFar told)
    {
        var hand = reed.Winding == WindingHand.Left ? "left" : "right";
        var ways = (agrees, told.Says($"winding {hand} {agrees}")) switch
        {
            (true, true) => IsTiedByThem(reed) ? StoryWordings.WindingAgreesYours : StoryWordings.WindingAgrees,
            (true, false) => StoryWordings.WindingAgreesAgain,
            (false, true) => IsTiedByThem(reed) ? StoryWordings.WindingDisagreesYours : StoryWordings.WindingDisagrees,
            _ => StoryWordings.WindingDisagreesAgain,
        };
        return phrasing.Say("winding", reed.Number, ways, ("hand", hand));
    }
}
