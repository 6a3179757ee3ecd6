using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>The answer to what a student marked on a scale of the intake, in one sentence that names the mark.</summary>
internal static class MarkAnswer
{
    /// <summary>The sentence; null where the test that answers it was told already.</summary>
    /// <param name="complaint">The mark, or a further complaint, to which the log has an answer.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="target">What a crow is held against.</param>
    /// <param name="turn">Makes neighbours choose other words.</param>
    /// <param name="words">Is told what was said here, so that it isn’t said again.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static LetterSentence? Of(Complaint complaint, BenchLog log, CrowTarget target, int turn, FoundWords words, Phrasing phrasing)
    {
        // Beside its opposite the test was told, and what was found of it was not.
        var told = Answering(complaint, log, target, turn, phrasing) is { } test && words.HasSaidTest(test.Move.TestKind);
        var found = ComplaintAnswer.Found(complaint.Findings, log);
        if (told && !(complaint.IsContrary && found.Count > 0))
        {
            return null;
        }

        if (((told ? null : ByTests(complaint, log, target, turn, words, phrasing)) ?? (found.Count > 0 ? ByFinding(found[^1], turn, words, phrasing) : null)) is not var (answer, roots))
        {
            return null;
        }

        return new(
            complaint.Marked is { } mark
                ? phrasing.Say("marked", turn, MarkWordings.Marked, ("scale", Prose.Quoted(mark.Scale)), ("mark", Prose.Quoted(mark.Mark)), ("answer", answer))
                : phrasing.Say("complaint-also", turn, MarkWordings.Also, ("what", complaint.Name), ("answer", answer)),
            roots);
    }

    // The nearest test that was made of it.
    private static (TestMove Move, string? Was, string? Now)? Answering(Complaint complaint, BenchLog log, CrowTarget target, int turn, Phrasing phrasing)
    {
        List<(TestMove Move, string? Was, string? Now)> moves =
        [
            .. (complaint.Test is { } own ? complaint.Near.Prepend(own) : complaint.Near)
                .Select(test => log.Moves.FirstOrDefault(move => move.TestKind == test)).OfType<TestMove>()
                .Select(move => (Move: move, Was: ComplaintAnswer.NearClause(move.Arrival, target, turn, phrasing), Now: ComplaintAnswer.NearClause(move.Now, target, turn + 1, phrasing)))
                .Where(one => one.Was is not null || one.Now is not null),
        ];
        return moves.Count == 0 || (moves[0].Move.TestKind != complaint.Test && ComplaintAnswer.Found(complaint.Findings, log).Count > 0) ? null : moves[0];
    }

    private static (string, List<EntryId>)? ByTests(Complaint complaint, BenchLog log, CrowTarget target, int turn, FoundWords words, Phrasing phrasing)
    {
        if (Answering(complaint, log, target, turn, phrasing) is not var (move, was, now))
        {
            return null;
        }

        // Of a further complaint the name has just been said.
        var named = complaint.Marked is null ? complaint.Name + " " : null;
        if (move.TestKind != TestKind.Crow || ComplaintAnswer.IsToldWhole(move, log))
        {
            words.SaysTest(move.TestKind);
        }

        var ways = (was, now) switch
        {
            (null, _) => move.TestKind == complaint.Test ? MarkWordings.Later : MarkWordings.NearLater,
            (_, null) => MarkWordings.Once,
            _ when LetterTried.IsBeforeWork(log, move.Now!) => MarkWordings.BeforeLast,
            _ when ComplaintAnswer.Step(move.Arrival) == ComplaintAnswer.Step(move.Now) && move.TestKind != TestKind.Crow => MarkWordings.Unchanged,
            _ => ComplaintAnswer.IsAfterWork(move, log) && !CrowDoubt.IsIn(move, log, target) ? MarkWordings.AfterWork : MarkWordings.LaterOn,
        };
        List<EntryId> roots = [.. was is null ? Array.Empty<EntryId>() : [move.Arrival!.Root], .. now is null ? Array.Empty<EntryId>() : [move.Now!.Root]];
        var honest = move.TestKind == complaint.Test || ComplaintNamed.IsTouched(complaint, log) ? "" : phrasing.Clause("marked-near", turn, MarkWordings.NotItself, false) + " ";
        var before = ComplaintAnswer.Before(move.Now is { } last ? LetterTried.WorkAfter(log, last) : []);
        return (honest + phrasing.Clause("marked-answer", turn, ways, false, ("before", before), ("was", Again.Of(named, was ?? "")), ("now", Again.Of(was ?? named, now ?? ""))), roots);
    }

    private static (string, List<EntryId>) ByFinding(FindingNow found, int turn, FoundWords words, Phrasing phrasing)
    {
        words.SaysItsEnd(found.Fact.Root);
        if (found.Finding.Character == FindingCharacter.Taste && found.Finding.Words is null)
        {
            return (phrasing.Clause("marked-taste", turn, MarkWordings.TasteShared, false, ("what", words.Told(found))), [found.Fact.Root]);
        }

        var ways = found.Ended?.Now.Ending is { } ending ? MarkWordings.Ended[ending] : found.DoneForIt.Count > 0 ? MarkWordings.WorkedOn
            : found.Finding.Certainty == Certainty.Suspected ? MarkWordings.Suspected : MarkWordings.Found;
        return (phrasing.Clause("marked-found", turn, ways, false), ComplaintAnswer.Roots(found));
    }
}
