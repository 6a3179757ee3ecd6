using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>What bothers a student of a reed, and the log has no answer to: the teacher is told before the letter goes.</summary>
internal static class LetterUnanswered
{
    private const int MostQuotes = 3;

    /// <summary>The gap that asks the teacher for it; null where everything is answered.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? Gap(LetterMaterial material, Reed reed, BenchLog log) =>
        !reed.MayBePlayed || ComplaintAnswer.IsGivenUp(log) || reed.Bothers.Trim().Length == 0 || !log.Told.Any() || What(material, reed, log) is not { } what ? null : new(
            "bothers-" + Prose.Number(reed.Number),
            GapKind.UnansweredComplaint,
            $"Of reed {Prose.Number(reed.Number)}, {material.StudentName} wrote: {Prose.Quote(reed.Bothers)} {what} Try it and write it down, answer it in the part about this reed, or say why it stays open.")
        {
            Reed = reed.Id,
            IsToldOnly = true,
        };

    private static string? What(LetterMaterial material, Reed reed, BenchLog log)
    {
        var all = Complaint.Of(reed, material.Batch);
        var open = ComplaintAnswer.Open(all, log);
        List<Complaint> named = [.. open.Where(one => ComplaintNamed.In(one, log).Count > 0)];
        open = [.. open.Except(named)];
        List<string> said = [];
        if (Complaint.IsUnknown(reed, material.Batch))
        {
            said.Add("Which test or finding answers that is not plain, so the letter leaves it open.");
        }

        if (open.Count > 0)
        {
            List<string> marks = [.. open.Where(one => one.Marked is not null).Select(one => $"{Prose.Quoted(one.Marked!.Value.Mark)} under {Prose.Quoted(one.Marked.Value.Scale)}")];
            said.Add((marks.Count > 0 ? $"On the scales of the intake stands {Prose.List(marks)}. " : "")
                + $"The log doesn’t answer {ComplaintAnswer.Names(open)}, and the letter says so.");
        }

        if (named.Count > 0)
        {
            said.Add($"No test or finding answers {ComplaintAnswer.Names(named)}, but words at the bench name it: {Quotes(named.SelectMany(one => ComplaintNamed.In(one, log)))} The letter doesn’t say that it wasn’t tried.");
        }

        if (all.SelectMany(one => ComplaintAnswer.RemarkedSince(one, log)).ToList() is { Count: > 0 } later)
        {
            said.Add($"What the letter says of it is older than what was remarked later, and the letter doesn’t tell remarks: {Quotes(later)}");
        }

        return said.Count == 0 ? null : string.Join(' ', said);
    }

    private static string Quotes(IEnumerable<string> words) => string.Join(' ', words.Distinct().Take(MostQuotes).Select(Prose.Quote));
}
