using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Intake;

/// <summary>An intake that is still being written: saved while typing, so that a closed tab loses nothing.</summary>
public sealed class IntakeDraft
{
    /// <summary>The longest draft that is kept, in characters.</summary>
    public const int LongestPayload = 120_000;

    /// <summary>A new, empty draft.</summary>
    /// <param name="id">Made by the app.</param>
    /// <param name="student">Who writes it.</param>
    /// <param name="startedBy">What started it: repeating that gives this draft again.</param>
    /// <param name="payload">What was typed so far, as JSON; never queried.</param>
    /// <param name="startedAt">When.</param>
    public IntakeDraft(DraftId id, StudentId student, OperationId startedBy, string payload, DateTimeOffset startedAt)
    {
        Id = id;
        Student = student;
        StartedBy = startedBy;
        Payload = payload;
        StartedAt = startedAt;
        SavedAt = startedAt;
    }

    /// <summary>Which draft.</summary>
    public DraftId Id { get; private set; }

    /// <summary>Who writes it.</summary>
    public StudentId Student { get; private set; }

    /// <summary>What started it.</summary>
    public OperationId StartedBy { get; private set; }

    /// <summary>What was typed so far, as JSON; never queried.</summary>
    public string Payload { get; private set; }

    /// <summary>When it was started.</summary>
    public DateTimeOffset StartedAt { get; private set; }

    /// <summary>When it was last saved.</summary>
    public DateTimeOffset SavedAt { get; private set; }

    /// <summary>The batch that came of it; null while it is being written.</summary>
    public BatchId? BecameBatch { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Version { get; private set; }

    /// <summary>Keeps what has been typed.</summary>
    /// <param name="payload">As JSON.</param>
    /// <param name="at">When.</param>
    public void Keep(string payload, DateTimeOffset at)
    {
        Payload = payload;
        SavedAt = at;
    }

    /// <summary>The draft has become a batch; what was typed stays in the batch and is dropped here.</summary>
    /// <param name="batch">The batch.</param>
    public void Become(BatchId batch)
    {
        BecameBatch = batch;
        Payload = "";
    }
}
