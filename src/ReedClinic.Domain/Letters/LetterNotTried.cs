using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>What was complained of and not tried, and what was not right when a reed came and not tried again: the letter says so, and the teacher is told before it goes.</summary>
internal static class LetterNotTried
{
    /// <summary>The gap that tells of both; null where all was tried, or the reed is given up.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? Gap(LetterMaterial material, Reed reed, BenchLog log)
    {
        List<Complaint> untried = [.. Complaint.Of(reed, material.Batch).Where(one => ComplaintAnswer.IsUntried(one, log))];
        List<string> off = [.. log.Moves.Where(move => LetterTried.IsOffThen(move, log)).Select(move => "the " + TableWordings.Name(move.TestKind))];
        return ComplaintAnswer.IsGivenUp(log) || !reed.MayBePlayed || untried.Count + off.Count == 0 ? null : new(
            "not-tried-" + Prose.Number(reed.Number),
            GapKind.NotTriedSinceTheWork,
            $"Of reed {Prose.Number(reed.Number)} "
                + string.Join(", and ", new[]
                {
                    untried.Count == 0 ? null : $"{material.StudentName.Split(' ')[0]} complained about {ComplaintAnswer.Names(untried)}, and no test of that was made",
                    off.Count == 0 ? null : $"{Prose.List(off)} {(off.Count == 1 ? "was" : "were")} not right when it came, and not tried again after the work",
                }.OfType<string>())
                + ". The letter says so.")
        {
            Reed = reed.Id,
            IsToldOnly = true,
        };
    }
}
