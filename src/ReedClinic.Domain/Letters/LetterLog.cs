using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Letters;

/// <summary>A reed’s log as a letter reads it: without what was taken back, and without what isn’t said to its reader.</summary>
internal static partial class LetterLog
{
    /// <summary>Why a place is left alone, where the teacher’s reason isn’t said to the student.</summary>
    internal const string NoReason = "leave it alone";

    /// <summary>What stands for a risk that can’t be named in the teacher’s words: what became of it is told all the same.</summary>
    internal const string SomeRisk = "it may come to harm";

    /// <summary>What stands for a test that can’t be told in the teacher’s words.</summary>
    internal const string Tried = "it was tried";

    /// <summary>The log without findings of which it was said that they were none.</summary>
    /// <param name="log">The log.</param>
    internal static BenchLog Standing(BenchLog log)
    {
        HashSet<EntryId> gone =
        [
            .. log.Findings.Where(IsTakenBack).SelectMany(finding => new[] { finding.Fact.Root, finding.Ended!.Root }),
        ];
        return gone.Count == 0 ? log : BenchLog.Fold(log.History.Where(line => line.Fact is not { } fact || !gone.Contains(fact)).Select(line => line.Entry));
    }

    /// <summary>Whether what was said at the end of a finding says that there was none: it is about the log and not about the reed.</summary>
    /// <param name="words">What was said.</param>
    internal static bool TakesBack(string words) => Mistake().IsMatch(words) && !LetterUntold.TellsOfWork(words);

    // What was worked on was there, and what isn’t there can’t be better, or be left on purpose.
    private static bool IsTakenBack(FindingNow finding) => finding.Ended?.Now is { Words: { } said, Ending: var ending } && TakesBack(said)
        && !(Absent().IsMatch(said) && (finding.DoneForIt.Count > 0 || ending is FindingEnding.Better or FindingEnding.LeftOnPurpose));

    /// <summary>The gap that tells the teacher what the letter is silent about, since the log says that it was none; null where there is nothing.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log, with what was taken back so.</param>
    internal static LetterGap? OfTakenBack(Reed reed, BenchLog log)
    {
        List<FindingNow> gone = [.. log.Findings.Where(IsTakenBack)];
        return gone.Count == 0 ? null : new(
            "taken-back-" + Prose.Number(reed.Number),
            GapKind.FindingTakenBack,
            $"The log of reed {Prose.Number(reed.Number)} takes back {Prose.List([.. gone.Select(one => $"“{StoryBlock.NameOf(one.Finding)}”")])}: {string.Join(' ', gone.Select(one => Prose.Quote(one.Ended!.Now.Words!)))} The letter says nothing of it. If it was there after all, change at the bench what was said at its end.")
        {
            Reed = reed.Id,
            IsToldOnly = true,
        };
    }

    /// <summary>The log without sentences that speak of the student as of a third person, or are blunt.</summary>
    /// <param name="log">The log.</param>
    /// <param name="student">The student’s name.</param>
    internal static BenchLog ToTheStudent(BenchLog log, string student)
    {
        List<BenchFact> otherwise = [.. log.Facts.Where(fact => IsSaidOtherwise(fact.Now, student))];
        if (otherwise.Count == 0)
        {
            return log;
        }

        // Only what stands is told. What can’t be said at all goes with its earlier wordings: one of these would stand again.
        var said = otherwise.ToDictionary(fact => fact.Now!.Id, fact => Said(fact.Now!, student));
        HashSet<OperationId> gone = [.. otherwise.Where(fact => said[fact.Now!.Id] is null).SelectMany(fact => fact.Chain).Select(entry => entry.OperationId)];
        return BenchLog.Fold(log.History.Select(line => line.Entry).Where(entry => !gone.Contains(entry.OperationId)).Select(entry => said.GetValueOrDefault(entry.Id) ?? entry));
    }

    /// <summary>Whether of a test nothing can be told but that it was made.</summary>
    /// <param name="test">The test.</param>
    internal static bool IsBare(Test test) => test is { Words: Tried, Step: null, Pitch: null, Millimetres: null };

    private static bool IsSaidOtherwise(BenchEntry? entry, string student) => Words(entry) is { } words && Fit(words, student) != words;

    private static string? Fit(string? words, string student) => BenchTalk.Without(Shorthand.Without(SpokenOf.Without(CommandSaid.Without(words), student)));

    /// <summary>The gap that tells the teacher of them; null where there are none.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="student">The student’s name.</param>
    internal static LetterGap? Gap(Reed reed, BenchLog log, string student)
    {
        List<string> said = [.. log.Facts.SelectMany(fact => SpokenOf.In(CommandSaid.Without(Words(fact.Now)), student)).Distinct()];
        return said.Count == 0 ? null : ToldOnly(
            reed,
            "spoken-of-",
            GapKind.SpokenOfTheStudent,
            $"Of reed {Prose.Number(reed.Number)} the log says: {string.Join(' ', said.Select(Prose.Quote))} That speaks of {student.Split(' ')[0]} and not to them, so it stands neither in the letter nor beside the drawing. If it should be told, say it in your own words in the part about this reed.");
    }

    /// <summary>The gap that tells the teacher what was said bluntly, to be put in other words; null where nothing was.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? OfBluntWords(Reed reed, BenchLog log) => OfLeftOut(
        reed, log, BenchTalk.In, "blunt-", GapKind.BluntAtTheBench, "said",
        "Put it in words for them? As it stands the letter leaves it out, and the drawing too; what they should know of it, say in the part about this reed.");

    /// <summary>The gap that tells the teacher what only they can read; null where there is nothing.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? OfShorthand(Reed reed, BenchLog log) => OfLeftOut(
        reed, log, Shorthand.In, "shorthand-", GapKind.ShorthandAtTheBench, "noted",
        "That is short for you and hard to read for them, so the letter leaves it out, and the drawing too. What they should know of it, say in the part about this reed.");

    // Each thing that a letter leaves out of the words of the bench, once, whatever its capitals.
    private static LetterGap? OfLeftOut(Reed reed, BenchLog log, Func<string?, IEnumerable<string>> find, string key, GapKind kind, string was, string why)
    {
        List<string> said = [.. log.Facts.SelectMany(fact => find(CommandSaid.Without(Words(fact.Now)))).Select(Prose.Whole).Distinct(StringComparer.OrdinalIgnoreCase)];
        return said.Count == 0 ? null : ToldOnly(reed, key, kind, $"Of reed {Prose.Number(reed.Number)} it was {was} at the bench: {string.Join(' ', said.Select(Prose.Quote))} {why}");
    }

    private static LetterGap ToldOnly(Reed reed, string key, GapKind kind, string words) => new(key + Prose.Number(reed.Number), kind, words) { Reed = reed.Id, IsToldOnly = true };

    /// <summary>The gap that tells the teacher the same of their note on the parcel; null where it isn’t told or speaks of nobody else.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="student">The student’s name.</param>
    internal static LetterGap? OfTheParcel(Batch batch, string student)
    {
        List<string> said = batch.ArrivalNoteInLetter ? [.. SpokenOf.In(batch.ArrivalNote, student)] : [];
        return said.Count == 0 ? null : new(
            "spoken-of-parcel",
            GapKind.SpokenOfTheStudent,
            $"Your note on the parcel says: {string.Join(' ', said.Select(Prose.Quote))} That speaks of {student.Split(' ')[0]} and not to them, so the letter leaves it out. If it should be told, say it there as you would say it to them.")
        {
            IsToldOnly = true,
        };
    }

    // What a letter or the drawing in it may print of an entry.
    private static string? Words(BenchEntry? entry) => entry switch
    {
        Finding finding => OwnId.Remark(finding.FindingKind.Value, finding.Words),
        FindingEnded ended => ended.Words,
        LeaveAlone left => left.Words,
        Adjustment work => OwnId.Remark(work.AdjustmentKind.Value, work.Words),
        Risk risk => risk.Words,
        RiskClosed closed => closed.Words,
        Stopped stop => stop.Words,
        Verdict verdict => verdict.Words,
        Parked parked => parked.Words,
        Test test => test.Words,
        _ => null,
    };

    // What can’t be without its words is left out with them.
    private static BenchEntry? Said(BenchEntry entry, string student)
    {
        var words = Fit(Words(entry), student);
        return entry switch
        {
            Finding one => Stamped(entry, Finding.Of(
                one.FindingKind, one.Character, one.Place, one.Shape, one.Relation, one.OtherPlace, one.KnownBy, one.Certainty, one.Arose, Named(one.FindingKind.Value, one.Words, words))),
            FindingEnded one => Stamped(entry, FindingEnded.Of(one.FindingId, one.Ending, words)),
            LeaveAlone one => Stamped(entry, LeaveAlone.Of(one.Place, words ?? NoReason)),
            Adjustment one => Stamped(entry, Adjustment.Of(
                one.AdjustmentKind, one.Place, one.Amount, one.ForFindingId, one.ForTheSakeOf, Named(one.AdjustmentKind.Value, one.Words, words))),
            Risk one => Stamped(entry, Risk.Of(words, one.Zone)),
            RiskClosed one => Stamped(entry, RiskClosed.Of(one.RiskId, one.Outcome, words)),
            Stopped => Stamped(entry, Stopped.Of(words)),
            Verdict one => Stamped(entry, Verdict.Of(one.VerdictKind, words)),
            Parked => Stamped(entry, Parked.Of(words)),
            Test one => Stamped(entry, Test.Of(one.TestKind, one.Step, one.Pitch, words, one.Millimetres, one.MeasuredFrom)),
            _ => entry,
        };
    }

    private static string? Named(string kind, string? before, string? words) => OwnId.Is(kind) ? OwnId.Words(OwnId.Called(before), words) : words;

    // A deed stays told, whatever its words said; and so do a risk, for the sake of what became of it, and that something was tried.
    private static BenchEntry? Stamped<T>(BenchEntry entry, Outcome<T> said)
        where T : BenchEntry => (said, entry) switch
        {
            (Outcome<T>.Done done, _) => Stamp(entry, done.Value),
            (_, Risk risk) when Risk.Of(SomeRisk, risk.Zone) is Outcome<Risk>.Done plain => Stamp(entry, plain.Value),
            (_, Test test) when Test.Of(test.TestKind, words: Tried, measuredFrom: test.MeasuredFrom) is Outcome<Test>.Done plain => Stamp(entry, plain.Value),
            (_, Adjustment work) when Adjustment.Of(work.AdjustmentKind, work.Place, work.Amount, work.ForFindingId, work.ForTheSakeOf, "It was worked on.") is Outcome<Adjustment>.Done plain => Stamp(entry, plain.Value),
            _ => null,
        };

    private static BenchEntry Stamp(BenchEntry from, BenchEntry to) => to.StampedWith(new EntryStamp(
        from.Id, from.ReedId, from.Sequence, from.OperationId, from.RecordedAt, from.RecordedBy, from.Supersedes, from.PassId));

    [GeneratedRegex(
        @"(?i)^(?!.*\b(?:now|any ?more|no longer|right|fixed|better|less|gone|left)\b)\W*(?:(?:sorry|no|oops)\W+)*(?:(?:(?:the|this|that|it)\b[^.,;:!?]{0,40}?\s?)?\b(?:was|is) (?:all |just |simply |plainly |quite |my )*(?:wrong|a mistake|mistake|mistaken|an error|a slip|a misreading|misheard|misread|mistyped|a typo|a false alarm)"
        + @"|(?:my|a|by) mistake|wrong (?:reed|entry|finding|word)|(?:I )?(?:misheard|misread|mistyped|misspoke)|there (?:never was|was never|was no|were no|never were) [^.,;:]{1,30}"
        + @"|(?:no|not an?) [^.,;:]{1,30} after all|never (?:there|was(?: one)?)|(?:I )?take (?:it|that|this) back|forget (?:it|that|the [^.,;:]{1,20}))\s*(?:$|[.,;:!?–-]+\s*$|[.,;:!–-]+\s*(?:(?:it|that|this)(?: is| was|[’']s| belongs| goes (?:to|with))\b(?! (?:\w+ly )?(?:even|level|tight|closed|sealed|thinner|thicker|shorter|longer|smoother|in tune|again)\b)|sorry\b|(?:only|just)\b(?!.*\bstrokes?\b)|I\b(?! (?:\w+ly |then |have |just )?" + Deeds + @"\b)).*$)")]
    private static partial Regex Mistake();

    private const string Deeds = "(?:evened|wound|rewound|tied|retied|squeezed|opened|closed|sealed|waxed|filed|sanded|polished|pushed|straightened|turned|glued|mended|repaired|refitted|reseated|lifted|soaked|adjusted|corrected|worked|reworked|scored|tapered|smoothed|levelled|shortened|removed)";

    // Says of the reed that there was nothing, and not of oneself that it was a mistake.
    [GeneratedRegex(@"(?i)^\W*(?:there (?:never was|was never|was no|were no|never were)|(?:no|not an?) [^.,;:]{1,30} after all|never there)\b")]
    private static partial Regex Absent();
}
