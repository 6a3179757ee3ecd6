using Microsoft.EntityFrameworkCore.Diagnostics;
using ReedClinic.Data.Audit;

namespace ReedClinic.Data.Jobs;

/// <summary>
/// Rings when work was saved, so that a worker of this process need not wait for its next look. It only wakes: what there is
/// to do is read from the database.
/// </summary>
public sealed class JobBell : SaveChangesInterceptor, IDisposable
{
    private readonly SemaphoreSlim _work = new(0, 1);
    private readonly SemaphoreSlim _notes = new(0, 1);
    private readonly SemaphoreSlim _sounds = new(0, 1);

    /// <summary>Whoever carries news to the studio's other processes hears here that this one saved work.</summary>
    public event Action? Rung;

    /// <summary>Wakes this process's workers: another one saved work.</summary>
    public void Ring() => Ring(_work);

    /// <summary>Waits until a job was saved, at most so long.</summary>
    /// <param name="longest">At most so long.</param>
    /// <param name="ct">Stops the waiting.</param>
    public Task JobAsync(TimeSpan longest, CancellationToken ct) => _work.WaitAsync(longest, ct);

    /// <summary>Waits until something was noted for the audit, at most so long.</summary>
    /// <param name="longest">At most so long.</param>
    /// <param name="ct">Stops the waiting.</param>
    public Task NoteAsync(TimeSpan longest, CancellationToken ct) => _notes.WaitAsync(longest, ct);

    /// <summary>Waits until a sound that is to be read was saved, at most so long.</summary>
    /// <param name="longest">At most so long.</param>
    /// <param name="ct">Stops the waiting.</param>
    public Task SoundAsync(TimeSpan longest, CancellationToken ct) => _sounds.WaitAsync(longest, ct);

    /// <inheritdoc />
    public override ValueTask<int> SavedChangesAsync(SaveChangesCompletedEventData eventData, int result, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(eventData);
        if (eventData.Context?.ChangeTracker.Entries<Job>().Any() == true)
        {
            Ring(_work);
            Rung?.Invoke();
        }

        if (eventData.Context?.ChangeTracker.Entries<Job>().Any(job => job.Entity.Kind == JobKind.Sound) == true)
        {
            Ring(_sounds);
        }

        if (eventData.Context?.ChangeTracker.Entries<AuditNote>().Any() == true)
        {
            Ring(_notes);
        }

        return base.SavedChangesAsync(eventData, result, cancellationToken);
    }

    /// <inheritdoc />
    public void Dispose()
    {
        _work.Dispose();
        _notes.Dispose();
        _sounds.Dispose();
    }

    private static void Ring(SemaphoreSlim bell)
    {
        try
        {
            bell.Release();
        }
        catch (SemaphoreFullException)
        {
            // It has been rung already.
        }
    }
}
