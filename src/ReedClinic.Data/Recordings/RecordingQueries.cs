using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Recordings;

/// <summary>The reed that something is of, with what decides who may do what.</summary>
internal sealed record ReedPlace(BatchId Batch, StudentId Student, Stage Stage, bool IsSent, bool IsPaused)
{
    /// <summary>The sign-ins of who answers, or answered, for the student.</summary>
    public IReadOnlyList<AccountId> Guardians { get; init; } = [];

    /// <summary>
    /// Why this actor may not add or take away a kind here; null when they may. Those who work here may everything. A student,
    /// and who answers for them, gives how the reed comes, until the parcel is opened.
    /// </summary>
    public Problem? Hindrance(Actor actor, RecordingKind kind) =>
        IsPaused ? actor.WorksHere ? ConsentTakenBack.Unworked : ConsentTakenBack.Unagreed
        : !actor.WorksHere && Stage != Stage.OnItsWay ? RecordingRefusal.ParcelOpened.Problem(kind)
        : null;
}

/// <summary>Who sees which sounds and photographs.</summary>
internal static class RecordingQueries
{
    /// <summary>
    /// Those that this actor sees: all for those who work here. Of their own a student, and who answers for them, sees how the
    /// reed came; once the letter is sent also how it goes home, and the memos that were put into the letter. What was played to
    /// measure the work stays the studio's: somebody may have talked meanwhile.
    /// </summary>
    public static IQueryable<Recording> RecordingsSeenBy(this ClinicDb db, Actor actor)
    {
        var batches = db.Set<Batch>().SeenBy(actor);
        return actor.WorksHere ? db.Set<Recording>() : db.RecordingsOf(batches);
    }

    /// <summary>Those of some batches that their student sees.</summary>
    public static IQueryable<Recording> RecordingsOf(this ClinicDb db, IQueryable<Batch> batches) =>
        from recording in db.Set<Recording>()
        join reed in db.Set<Reed>() on recording.Reed equals reed.Id
        join batch in batches on reed.Batch equals batch.Id
        where recording.Kind == RecordingKind.ArrivalSound || recording.Kind == RecordingKind.ArrivalPhoto
            || (batch.LetterSentAt != null && recording.Kind != RecordingKind.TestSound && (recording.Kind != RecordingKind.VoiceMemo || recording.InLetter))
        select recording;

    /// <summary>Where a reed that this actor sees stands; null when there is none such.</summary>
    public static Task<ReedPlace?> PlaceOfAsync(this ClinicDb db, Actor actor, ReedId id, CancellationToken ct) =>
        (from reed in db.Set<Reed>()
         join batch in db.Set<Batch>().SeenBy(actor) on reed.Batch equals batch.Id
         where reed.Id == id
         select new ReedPlace(
             batch.Id, batch.Student, batch.Stage, batch.LetterSentAt != null,
             !db.Set<Student>().Where(BatchQueries.MayBeWorkedFor).Any(student => student.Id == batch.Student))
         {
             Guardians = db.Set<Guardianship>().Where(row => row.Student == batch.Student && row.Account != null).Select(row => row.Account!.Value).ToList(),
         })
        .SingleOrDefaultAsync(ct);

    /// <summary>The batch that a reed came in, to be held while something of it is written.</summary>
    public static IQueryable<Batch> BatchOf(this ClinicDb db, ReedId reed) => db.Set<Batch>().Where(batch => batch.Reeds.Any(row => row.Id == reed));

    /// <summary>The batch of the reed that a recording is of.</summary>
    public static IQueryable<Batch> BatchOf(this ClinicDb db, RecordingId recording) =>
        db.Set<Batch>().Where(batch => batch.Reeds.Any(reed => db.Set<Recording>().Any(row => row.Id == recording && row.Reed == reed.Id)));

    public static RecordingView ViewFor(this Recording recording, Actor actor, ReedPlace place) => new(
        recording.Id, recording.Reed, recording.Kind, recording.Type, recording.Bytes, recording.Milliseconds, recording.Words, recording.PassId,
        recording.AtSequence, recording.InLetter, recording.FromStudio, recording.RecordedAt)
    {
        MayRemove = recording.MayGoBy(actor, place),
        By = recording.FromStudio ? RecordingHand.Studio
            : place.Guardians.Contains(recording.RecordedBy) ? recording.RecordedBy == actor.Account ? RecordingHand.You : RecordingHand.Guardian
            : actor.Student == place.Student ? RecordingHand.You
            : RecordingHand.Student,
    };

    /// <summary>Whether this actor may remove it: the studio everything, a student what didn't come from the studio.</summary>
    public static bool MayGoBy(this Recording recording, Actor actor, ReedPlace place) =>
        actor.WorksHere || (!recording.FromStudio && recording.Kind.IsOfArrival() && place is { Stage: Stage.OnItsWay, IsPaused: false });

    /// <summary>Notes files whose rows are about to go, in what is about to be saved.</summary>
    public static void AskToRemove(this ClinicDb db, IEnumerable<string> files, DateTimeOffset now) =>
        db.AddRange(files.Distinct().Select(file => new FileToRemove { File = file, AskedAt = now }));

    /// <summary>The same of what was begun to be sent of a reed that is about to go, and never kept; the rows go with the reed.</summary>
    public static async Task GiveUpUploadsAsync(this ClinicDb db, ReedId reed, DateTimeOffset now, CancellationToken ct) =>
        db.AskToRemove(await db.Set<Upload>().Where(upload => upload.Reed == reed).Select(upload => upload.File).ToListAsync(ct).ConfigureAwait(false), now);

    /// <summary>Removes the files that were noted. What can't be removed now is removed by the next round.</summary>
    public static async Task<int> RemoveAskedAsync(this ClinicDb db, MediaFolder folder, CancellationToken ct)
    {
        var removed = 0;
        foreach (var name in await db.Set<FileToRemove>().AsNoTracking().Select(row => row.File).ToListAsync(ct).ConfigureAwait(false))
        {
            try
            {
                folder.Remove(name);
            }
            catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
            {
                continue;
            }

            removed += await db.Set<FileToRemove>().Where(row => row.File == name).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        }

        return removed;
    }
}
