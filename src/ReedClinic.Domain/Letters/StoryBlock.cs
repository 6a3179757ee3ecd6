using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>One reed: what arrived, what was found, what was done and how it ended.</summary>
internal static class StoryBlock
{
    internal static LetterBlock Of(LetterMaterial material, Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        List<LetterParagraph> paragraphs = [new(Arrived(reed, phrasing, told))];
        var found = Found(reed, log, phrasing, told);
        if (found.Count > 0)
        {
            paragraphs.Add(new(found));
        }

        var done = WorkWords.Done(reed, log, phrasing, material.ReasonFor(LetterWish.KeyOf(reed)));
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

    internal static string? Short(string? words) => words is { Length: > 40 } ? words[..39].TrimEnd() + "…" : words;

    private static List<LetterSentence> Arrived(Reed reed, Phrasing phrasing, LetterSoFar told)
    {
        var sentences = new List<LetterSentence>();
        if (reed.Bothers.Trim().Length > 0)
        {
            sentences.Add(LetterSentence.Plain(phrasing.Pick(
                "bothers", reed.Number,
                $"About this one you wrote: {Prose.Quote(reed.Bothers)}",
                $"What you wrote about this one was this: {Prose.Quote(reed.Bothers)}",
                $"You told me of this reed: {Prose.Quote(reed.Bothers)}")));
        }

        if (reed.Likes is { } likes)
        {
            sentences.Add(LetterSentence.Plain($"You also told me what you like about it: {Prose.Quote(likes)}"));
        }

        if (reed is { Winding: not WindingHand.NotRead, OverlapAgrees: { } agrees })
        {
            sentences.Add(LetterSentence.Plain(Winding(reed.Winding == WindingHand.Left ? "left" : "right", agrees, told)));
        }

        if (sentences.Count == 0)
        {
            sentences.Add(LetterSentence.Plain(phrasing.Pick(
                "plain-arrival", reed.Number, "I took this one as it came.", "Here is how I found this one.")));
        }

        return sentences;
    }

    private static string Winding(string hand, bool agrees, LetterSoFar told) => (agrees, told.Says($"winding {hand} {agrees}")) switch
    {
        (true, true) => $"The thread was wound by a {hand}-handed person, and the blades overlap the way it pushes them, as they should.",
        (true, false) => "Thread and overlap go together here as well.",
        (false, true) =>
            $"The thread was wound by a {hand}-handed person, but the blades overlap the other way. They tend to creep back, and that is settled when a reed is tied, not with the knife.",
        _ => "Here too the blades overlap against the thread.",
    };

    private static List<LetterSentence> Found(Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        var found = log.Findings.OrderBy(finding => finding.Fact.Sequence).ToLookup(finding => finding.Finding.Character);
        var sentences = new List<LetterSentence>();
        if (found[FindingCharacter.Fault].Any(fault => fault.Finding.Arose == Arose.AsItArrived))
        {
            sentences.Add(LetterSentence.Plain(phrasing.Pick(
                "found", reed.Number,
                "This is what I found when it came.",
                "When it arrived I noticed this.",
                "On arrival I wrote this down about it.")));
        }

        sentences.AddRange(Strengths([.. found[FindingCharacter.Strength]], reed, phrasing, told));
        foreach (var finding in found[FindingCharacter.Taste].Concat(found[FindingCharacter.Fault].OrderBy(fault => fault.Finding.Arose)))
        {
            sentences.AddRange(Tell(finding, phrasing, reed.Number + sentences.Count, told));
        }

        return sentences;
    }

    // What was explained once, here or at the beginning of the letter, is only named after that.
    private static IEnumerable<LetterSentence> Strengths(
        List<FindingNow> strengths, Reed reed, Phrasing phrasing, LetterSoFar told)
    {
        var known = strengths.Where(strength => told.Explained(strength.Finding.FindingKind)).ToList();
        foreach (var strength in strengths.Except(known).ToList())
        {
            yield return new(What(strength.Finding, phrasing, reed.Number), [strength.Fact.Root]);
            told.Explain(strength.Finding.FindingKind);
        }

        if (known.Count > 0)
        {
            var clauses = Prose.List([.. known.Select(strength => FindingClauses.Of(strength.Finding.FindingKind)).OfType<string>().Distinct()]);
            yield return new(
                phrasing.Pick("good-here", reed.Number, $"Here {clauses}.", $"In this one {clauses}.", $"It is good that {clauses}."),
                [.. known.Select(strength => strength.Fact.Root)]);
        }

        foreach (var strength in strengths.Where(strength => FindingCatalogue.Find(strength.Finding.FindingKind) is not null))
        {
            if (strength.Finding.Words is { } words)
            {
                yield return new(Prose.Sentence(words), [strength.Fact.Root]);
            }
        }
    }

    private static IEnumerable<LetterSentence> Tell(FindingNow now, Phrasing phrasing, int turn, LetterSoFar told)
    {
        var finding = now.Finding;
        var again = finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork } && told.Explained(finding.FindingKind);
        yield return new(again ? Again(finding, phrasing, turn) : What(finding, phrasing, turn), [now.Fact.Root]);
        told.Explain(finding.FindingKind);

        if (finding.Words is { } words && FindingCatalogue.Find(finding.FindingKind) is not null)
        {
            yield return new(Prose.Sentence(words), [now.Fact.Root]);
        }

        if (finding is { Character: FindingCharacter.Fault, Arose: Arose.CausedByTheWork })
        {
            yield return new("This came about at my bench, not at yours, and I want you to know it.", [now.Fact.Root]);
        }

        if (finding.Character == FindingCharacter.Fault && now.Ended is { } ended)
        {
            yield return new(Ending(ended.Now, phrasing, turn), [now.Fact.Root, ended.Root]);
        }
    }

    private static string Again(Finding finding, Phrasing phrasing, int turn)
    {
        var clause = FindingClauses.Of(finding.FindingKind) ?? NameOf(finding);
        var suspected = finding.Certainty == Certainty.Suspected ? ", I suspect," : "";
        var where = Where(finding.Place);
        return phrasing.Pick("again", turn, $"Here too{suspected} {clause}.", $"In this one as well{suspected} {clause}.", $"Once more{suspected} {clause}.")
            + (where.Length == 0 ? "" : " " + where);
    }

    private static string What(Finding finding, Phrasing phrasing, int turn)
    {
        if (FindingCatalogue.Find(finding.FindingKind) is not { } kind)
        {
            return Prose.Sentence(finding.Words ?? "");
        }

        if (finding.Character == FindingCharacter.Taste)
        {
            var how = kind.Name.StartsWith("tip ", StringComparison.Ordinal) ? "Its tip is " + kind.Name[4..] : "It is " + kind.Name;
            return kind.Usually == FindingCharacter.Taste
                ? how + phrasing.Pick("taste", turn, ", but that is a matter of taste, and yours counts.", "; that is your own choice and no fault.")
                : $"It is a matter of taste, and yours counts, but {FindingClauses.Of(kind.Id) ?? kind.Name}.";
        }

        var sentence = finding.Certainty == Certainty.Suspected
            ? "I suspect, without being certain, that " + Prose.Inside(kind.ForStudent)
            : kind.ForStudent;
        var where = Where(finding.Place);
        return where.Length == 0 ? sentence : $"{sentence} {where}";
    }

    private static string Where(Place place)
    {
        var blade = place.Blades switch
        {
            Blades.Upper => "on the upper blade",
            Blades.Lower => "on the lower blade",
            _ => "",
        };
        var side = place.Sides switch
        {
            Sides.Left => "on the left side",
            Sides.Right => "on the right side",
            _ => "",
        };
        var both = string.Join(", ", new[] { blade, side }.Where(part => part.Length > 0));
        return both.Length == 0 ? "" : $"I saw it {both}.";
    }

    private static string Ending(FindingEnded ended, Phrasing phrasing, int turn)
    {
        var words = ended.Words is { } said ? " " + Prose.Sentence(said) : "";
        return ended.Ending switch
        {
            FindingEnding.Gone => phrasing.Pick("gone", turn, "That is gone now.", "That is no longer so.", "That has been put right."),
            FindingEnding.Better => phrasing.Pick("better", turn, "It is better now, though not quite gone.", "That has improved, and I stopped before it cost anything else."),
            FindingEnding.Unchanged => phrasing.Pick("unchanged", turn, "It is as it was.", "That has not changed."),
            _ => phrasing.Pick("left", turn, "I left it as it is, on purpose.", "I did not touch it, on purpose."),
        } + words;
    }
}
