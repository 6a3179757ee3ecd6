using System.Globalization;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Recordings;

/// <summary>The work of reading a sound: saved with what asks for it, and gone with its student.</summary>
internal static class SoundJobs
{
    /// <summary>What a sound mustn’t be asked for twice by, when it is new.</summary>
    public static string First(RecordingId recording) => $"sound:{recording.Value:N}";

    /// <summary>Asks for a sound to be read, in what is about to be saved.</summary>
    public static void AskToRead(this ClinicDb db, RecordingId recording, StudentId student, string once, DateTimeOffset now) => db.Add(new Job
    {
        Id = Guid.CreateVersion7(now),
        Kind = JobKind.Sound,
        Payload = recording.Value.ToString("N", CultureInfo.InvariantCulture),
        About = student.Value,
        Once = once,
        MadeAt = now,
        DueAt = now,
    });

    /// <summary>Which sound a job is about; null where the job knows none any more.</summary>
    public static RecordingId? SoundOf(this Job job) => Guid.TryParseExact(job.Payload, "N", out var id) ? new RecordingId(id) : null;
}
