using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>What bothers a student of a reed, and the log has no answer to: the teacher is told before the letter goes.</summary>
internal static class LetterUnanswered
{
    /// <summary>The gap that asks the teacher for it; null where everything is answered.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? Gap(LetterMaterial material, Reed reed, BenchLog log) =>
        !reed.MayBePlayed || reed.Bothers.Trim().Length == 0 || !log.Told.Any() || What(material, reed, log) is not { } what ? null : new(
            "bothers-" + Prose.Number(reed.Number),
            GapKind.UnansweredComplaint,
            $"Of reed {Prose.Number(reed.Number)}, {material.StudentName} wrote: {Prose.Quote(reed.Bothers)} The log doesn’t answer {what}, and the letter says so. Try it and write it down, answer it in the part about this reed, or say why it stays open.")
        {
            Reed = reed.Id,
            IsToldOnly = true,
        };

    private static string? What(LetterMaterial material, Reed reed, BenchLog log)
    {
        var complaints = Complaint.Of(reed, material.Batch);
        var open = ComplaintAnswer.Open(complaints, log);
        return open.Count > 0 ? Prose.List([.. open.Select(one => one.Name)])
            : complaints.Count > 0 || Complaint.IsNone(reed.Bothers) || log.Findings.Any(found => found.Finding.Character == FindingCharacter.Fault) ? null
            : "that";
    }
}
