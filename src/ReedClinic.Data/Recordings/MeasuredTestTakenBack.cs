using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Recordings;

/// <summary>
/// Takes back the test that a recording gave: when it turns out to be neither crow nor peep, and when the recording goes. What a teacher said in its
/// place is theirs, and stays.
/// </summary>
internal static class MeasuredTestTakenBack
{
    /// <summary>Takes it back in what is about to be saved: every wording of it, so that none comes up from below.</summary>
    /// <param name="db">The records; the batch’s consent is held.</param>
    /// <param name="actor">Who takes it back.</param>
    /// <param name="recording">The recording; one that gave no test changes nothing.</param>
    /// <param name="now">When.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>What keeps that out of the log; null when nothing does.</returns>
    public static async Task<Problem?> TakeTestBackAsync(this ClinicDb db, Actor actor, Recording recording, DateTimeOffset now, CancellationToken ct)
    {
        if (recording.Kind != RecordingKind.TestSound
            || await OpenLog.Read(db, actor, recording.Reed, ct).ConfigureAwait(false) is not { } page
            || page.Log.Facts.FirstOrDefault(fact => fact.Now is Test { MeasuredFrom: { } from } && from == recording.Id) is not { } fact)
        {
            return null;
        }

        if ((await page.TakeAsync([Undo.Entry()], ct).ConfigureAwait(false)).Problem is { } problem)
        {
            return problem;
        }

        List<BenchEntry> undos = [];
        var tail = fact.Tail;
        for (var standing = fact.Chain.Sum(entry => entry is Undo ? -1 : 1); standing > 0; standing--)
        {
            var id = new EntryId(Guid.CreateVersion7(now));
            undos.Add(Undo.Entry().StampedWith(new EntryStamp(
                id, recording.Reed, page.Log.LastSequence + 1 + undos.Count, new OperationId(Guid.CreateVersion7(now)), now, actor.Account, tail, null)));
            tail = id;
        }

        await page.Add(undos, ct).ConfigureAwait(false);
        return null;
    }
}
