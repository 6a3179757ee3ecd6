using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>What those who work here note of a student for themselves. It reaches nobody else in any form.</summary>
public sealed class StaffNoteBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private const string Verb = "write-staff-note";

    /// <summary>The note of a student; null when there is no such student for this actor. A note that nobody wrote is empty.</summary>
    public async Task<StaffNoteView?> ReadAsync(Actor actor, StudentId student, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await ReadAsync(db, actor, student, ct).ConfigureAwait(false);
    }

    /// <summary>Writes it anew; empty words clear it. A conflict gives what somebody else wrote meanwhile.</summary>
    public async Task<Outcome<StaffNoteView>> WriteAsync(
        Actor actor, StudentId student, string? words, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await ReadAsync(db, actor, student, ct).ConfigureAwait(false) is null)
        {
            return new Outcome<StaffNoteView>.NotFound();
        }

        var problems = new List<Problem>();
        var text = PlainText.Read(words, "Words", StaffNote.Longest, problems, severalLines: true) ?? "";
        if (problems.Count > 0)
        {
            return new Outcome<StaffNoteView>.Refused(problems);
        }

        var done = await db.WasDoneAsync(operation, Verb, student.Value, ct).ConfigureAwait(false)
            || await SaveAsync(db, actor, student, text, version, operation, ct).ConfigureAwait(false)
            || await db.WasDoneAsync(operation, Verb, student.Value, ct).ConfigureAwait(false);
        var stands = (await ReadAsync(db, actor, student, ct).ConfigureAwait(false))!;
        return done ? new Outcome<StaffNoteView>.Done(stands) : new Outcome<StaffNoteView>.Conflict(stands);
    }

    private async Task<bool> SaveAsync(
        ClinicDb db, Actor actor, StudentId student, string text, Guid version, OperationId operation, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var note = await db.Set<StaffNote>().SingleOrDefaultAsync(row => row.Student == student, ct).ConfigureAwait(false);
        if ((note?.Version ?? Guid.Empty) != version)
        {
            return false;
        }

        if (note is null)
        {
            note = new StaffNote(student);
            db.Add(note);
        }
        else
        {
            db.ExpectVersion(note, version);
        }

        note.Write(text, actor.Account, now);
        db.Note(operation, Verb, student.Value, now);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
    }

    private static async Task<StaffNoteView?> ReadAsync(ClinicDb db, Actor actor, StudentId student, CancellationToken ct)
    {
        if (!await db.Set<Student>().AnyAsync(person => actor.WorksHere && person.Id == student, ct).ConfigureAwait(false))
        {
            return null;
        }

        var note = await db.Set<StaffNote>().AsNoTracking().SingleOrDefaultAsync(row => row.Student == student, ct).ConfigureAwait(false);
        var by = note?.WrittenBy.Value;
        var name = by is null ? null : await db.Users.Where(user => user.Id == by).Select(user => user.DisplayName).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        return note is null
            ? new StaffNoteView("", null, null, Guid.Empty)
            : new StaffNoteView(note.Words, name, note.WrittenAt, note.Version);
    }
}

/// <summary>A note of those who work here.</summary>
/// <param name="Words">The words; empty while there are none.</param>
/// <param name="By">Who wrote them last; null when nobody did, or when that account is gone.</param>
/// <param name="WrittenAt">When; null when nobody did.</param>
/// <param name="Version">The version to save against; empty while there is none.</param>
public sealed record StaffNoteView(string Words, string? By, DateTimeOffset? WrittenAt, Guid Version)
{
    /// <summary>Keeps the words out of logs and error messages.</summary>
    public override string ToString() => nameof(StaffNoteView);
}
