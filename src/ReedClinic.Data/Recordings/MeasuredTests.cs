using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Data.Recordings;

/// <summary>
/// Puts what was measured at the bench into the reed’s log, for whoever recorded it. The operation’s id is the recording’s own, so
/// that a repeated try writes nothing twice. What turns out to be neither crow nor peep is taken back. Where work was noted after it was played, before
/// it was read, nothing is written: it says how the reed was before that work, and the page of the recording shows it.
/// </summary>
public sealed class MeasuredTests(IDbContextFactory<ClinicDb> databases, TimeProvider time, BenchNews? news = null)
{
    /// <summary>Writes the test that a recording gives, or puts the one it gave better where somebody said since what is played.</summary>
    /// <param name="id">Which recording; one that gives no test writes none.</param>
    /// <param name="ct">Stops it.</param>
    public async Task RecordAsync(RecordingId id, CancellationToken ct)
    {
        if (await ReadAsync(id, ct).ConfigureAwait(false) is not var (recording, test, isSaid, log))
        {
            return;
        }

        var bench = new BenchBook(databases, time, news);
        var teacher = new Actor(recording.RecordedBy, null, IsTeacher: true, IsOwner: false);
        var operation = new OperationId(id.Value);
        var before = log.Facts.FirstOrDefault(fact => fact.Chain.OfType<Test>().Any(entry => entry.MeasuredFrom == id));
        if (test is null)
        {
            await databases.PatientlyAsync((attempt, stop) => TakeBackAsync(attempt, teacher, recording, stop), ct).ConfigureAwait(false);
        }
        else if (before is null)
        {
            // Work that was done after it was played must not look tried by it, nor the sound as if it came of that work. When it was done
            // is its place in the log, not that of a wording it was given later.
            if (log.Facts.Any(fact => fact.Now is Adjustment { Prepares: false } && fact.Sequence > recording.AtSequence))
            {
                return;
            }

            AgainUnlessSettled(await bench.RecordAsync(teacher, recording.Reed, test, operation, recording.PassId, ct).ConfigureAwait(false));
        }
        else if (IsToBePutRight(before, test, isSaid) && before.Chain.Count < OperationId.MostParts)
        {
            AgainUnlessSettled(await bench.CorrectAsync(teacher, recording.Reed, before.Tail, test, operation.Part(before.Chain.Count), ct).ConfigureAwait(false));
        }
    }

    // What was taken back comes again only for somebody who says since that it is a crow or a peep after all.
    private static bool IsToBePutRight(BenchFact before, Test test, bool isSaid) =>
        before.Now is Test { MeasuredFrom: not null } stands ? stands.TestKind != test.TestKind : before.Now is null && isSaid;

    private async Task<bool> TakeBackAsync(Attempt attempt, Actor teacher, Recording recording, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldConsentAsync(attempt, db.BatchOf(recording.Reed), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        await db.TakeTestBackAsync(teacher, recording, time.GetUtcNow(), ct).ConfigureAwait(false);
        if (!await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            throw new InvalidOperationException("The log was changed at the same moment.");
        }

        await transaction.CommitAsync(ct).ConfigureAwait(false);
        news?.Tell(recording.Reed);
        return true;
    }

    // Somebody wrote at the same moment: the job is tried again, and looks anew.
    private static void AgainUnlessSettled(Outcome<BenchFact> outcome)
    {
        if (outcome is Outcome<BenchFact>.Conflict)
        {
            throw new InvalidOperationException("The log was changed at the same moment.");
        }
    }

    private async Task<(Recording Recording, Test? Test, bool IsSaid, BenchLog Log)?> ReadAsync(RecordingId id, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var row = await (
            from recording in db.Set<Recording>().AsNoTracking()
            join reading in db.Set<SoundReading>().AsNoTracking() on recording.Id equals reading.Recording
            where recording.Id == id && recording.Kind == RecordingKind.TestSound && recording.FromStudio && reading.State == ReadingState.Read
            select new { Recording = recording, Reading = reading }).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (row is not { Reading: { Kind: { } kind, Figures: { } figures } })
        {
            return null;
        }

        var batch = await db.BatchOf(id).AsNoTracking().SingleAsync(ct).ConfigureAwait(false);
        var test = MeasuredTest.Of(id, kind, figures, batch.CrowTarget.Tuning);
        var entries = await db.Set<BenchEntry>().AsNoTracking().Where(entry => entry.ReedId == row.Recording.Reed).OrderBy(entry => entry.Sequence).ToListAsync(ct).ConfigureAwait(false);
        return (row.Recording, test, row.Reading.SaidKind is not null, BenchLog.Fold(entries));
    }
}
