using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Recurrence;

/// <summary>A student’s reeds over time.</summary>
/// <param name="Name">What the student is called.</param>
/// <param name="Batches">The batches, the oldest first.</param>
/// <param name="Themes">What was found on them, what is done well first.</param>
public sealed record OverTimeView(string Name, IReadOnlyList<SheetOfBatch> Batches, IReadOnlyList<ThemeOverTime> Themes);

/// <summary>What a student’s reeds show over time. For a student a batch counts once its letter was sent; who works here sees every batch that was looked at.</summary>
public sealed class OverTimeBook(IDbContextFactory<ClinicDb> databases)
{
    /// <summary>One’s own reeds; null for whoever isn’t a student.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="ct">Cancels the reading.</param>
    public Task<OverTimeView?> MineAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.Student is { } me ? ReadAsync(actor with { IsTeacher = false, IsOwner = false }, me, ct) : Task.FromResult<OverTimeView?>(null);
    }

    /// <summary>A student’s reeds, for those who work here and for whoever answers for that student.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="student">The student.</param>
    /// <param name="ct">Cancels the reading.</param>
    public Task<OverTimeView?> OfAsync(Actor actor, StudentId student, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return ReadAsync(actor, student, ct);
    }

    private async Task<OverTimeView?> ReadAsync(Actor actor, StudentId student, CancellationToken ct)
    {
        if (!actor.WorksHere && actor.Student != student && !actor.Wards.Contains(student))
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var name = await db.Set<Student>().Where(row => row.Id == student).Select(row => row.Name).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (name is null)
        {
            return null;
        }

        var theirs = db.Set<Batch>().SeenBy(actor).Where(batch => batch.Student == student && (actor.WorksHere || batch.LetterSentAt != null));
        var read = await StudentSheetReader.ReadAsync(db, student, theirs, ct).ConfigureAwait(false);

        // A batch that nobody has looked at yet is no latest one.
        var sheets = read with { Batches = [.. read.Batches.Where(batch => batch.LetterSentAt is not null || batch.Sheet.Kinds.Count > 0)] };
        var history = new StudentHistory([.. sheets.Batches.Select(batch => batch.Sheet)]);
        var own = (await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false)).Own;
        return new OverTimeView(name, sheets.Batches, ThemeOverTime.Of(history, Recurrences.Of(history, sheets.Studio, own)));
    }
}
