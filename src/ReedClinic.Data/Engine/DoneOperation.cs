using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Engine;

/// <summary>
/// An operation that was done: what makes a repeated form a no-op where the written rows don't carry the operation id
/// themselves. It is saved with what the operation wrote, so that there is never one without the other.
/// </summary>
public sealed class DoneOperation
{
    /// <summary>Which operation.</summary>
    public OperationId Id { get; init; }

    /// <summary>What it did, such as “record-arrival”.</summary>
    public string Verb { get; init; } = "";

    /// <summary>The row it is about.</summary>
    public Guid Subject { get; init; }

    /// <summary>When.</summary>
    public DateTimeOffset DoneAt { get; init; }
}

internal sealed class DoneOperationConfiguration : IEntityTypeConfiguration<DoneOperation>
{
    public void Configure(EntityTypeBuilder<DoneOperation> builder)
    {
        builder.ToTable("DoneOperations");
        builder.Property(operation => operation.Id).ValueGeneratedNever();
        builder.Property(operation => operation.Verb).HasMaxLength(40);
        builder.HasIndex(operation => operation.Subject);
    }
}

/// <summary>Asks for and notes operations that were done.</summary>
internal static class DoneOperations
{
    /// <summary>How often something is tried that mustn't be lost because somebody saved the same row at the same moment.</summary>
    public const int MostTries = 5;

    /// <summary>What is told when somebody else was quicker each time.</summary>
    public static Problem NotSaved { get; } = new("", "This couldn’t be saved just now: somebody else was saving at the same moment. Please send it again.");

    /// <summary>
    /// True when this very thing was done to this very row under this id. An id that was used for anything else doesn't
    /// count: whoever sends it is told that nothing was saved, not that all is well.
    /// </summary>
    public static async Task<bool> WasDoneAsync(
        this ClinicDb db, OperationId operation, string verb, Guid subject, CancellationToken ct) =>
        await db.Set<DoneOperation>().AsNoTracking()
            .AnyAsync(done => done.Id == operation && done.Verb == verb && done.Subject == subject, ct).ConfigureAwait(false);

    /// <summary>Notes an operation; it is saved with everything else.</summary>
    public static void Note(this ClinicDb db, OperationId operation, string verb, Guid subject, DateTimeOffset at) =>
        db.Add(new DoneOperation { Id = operation.OrFresh(at), Verb = verb, Subject = subject, DoneAt = at });

    /// <summary>
    /// Saves, unless another try with the same operation id was quicker or somebody changed the row first. What was
    /// tracked is forgotten then, so that the next reading sees what stands.
    /// </summary>
    /// <returns>True when this try saved.</returns>
    public static async Task<bool> SaveUnlessDoneAsync(this ClinicDb db, CancellationToken ct)
    {
        try
        {
            await db.SaveChangesAsync(ct).ConfigureAwait(false);
            return true;
        }
        catch (DbUpdateConcurrencyException)
        {
            db.ChangeTracker.Clear();
            return false;
        }
        catch (DbUpdateException clash) when (clash.IsUniqueClash())
        {
            db.ChangeTracker.Clear();
            return false;
        }
    }
}
