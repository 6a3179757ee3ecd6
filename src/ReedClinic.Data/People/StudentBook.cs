using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.People;

/// <summary>The people who send reeds.</summary>
public sealed class StudentBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    private const int MostFound = 30;
    private const string Describe = "describe-student";
    private const string CorrectAge = "correct-age";

    /// <summary>
    /// Makes the account that asks a student. An account that is one already keeps being it, whatever the name.
    /// </summary>
    public async Task<Outcome<Student>> WelcomeAsync(
        Actor actor, string? name, string? email, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (PersonName.ProblemWith(name) is { } wrong)
        {
            return new Outcome<Student>.Refused([new Problem("Name", wrong)]);
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var mine = db.Set<Student>().Where(person => person.Account == actor.Account);
        if (!await mine.AnyAsync(ct).ConfigureAwait(false))
        {
            var now = time.GetUtcNow();
            var student = new Student(new StudentId(Guid.CreateVersion7(now)), PersonName.Read(name)!, actor.Account);
            student.WriteTo(email);
            db.Add(student);
            db.Note(operation, "welcome-student", student.Id.Value, now);
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }

        return new Outcome<Student>.Done(await mine.AsNoTracking().SingleAsync(ct).ConfigureAwait(false));
    }

    /// <summary>The student behind the account that asks; null when it isn't one.</summary>
    public async Task<Student?> MeAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Set<Student>().AsNoTracking()
            .SingleOrDefaultAsync(person => person.Account == actor.Account, ct).ConfigureAwait(false);
    }

    /// <summary>
    /// The student who asks says which side of the studio's set age they are on. Who said they are younger can't take it
    /// back alone: that is answered with a problem.
    /// </summary>
    public async Task<Outcome<Student>> SayAgeAsync(Actor actor, AgeAnswer? age, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.Set<Student>().SingleOrDefaultAsync(person => person.Account == actor.Account, ct).ConfigureAwait(false) is not { } me)
        {
            return new Outcome<Student>.NotFound();
        }

        if (age is not { } said)
        {
            return new Outcome<Student>.Refused([NewAccount.AgeProblem]);
        }

        var (before, now) = (me.Age, time.GetUtcNow());
        if (!me.SayAge(said))
        {
            return new Outcome<Student>.Refused([new Problem(nameof(Student.Age), "You answered this differently before. Please ask your teacher to put it right.")]);
        }

        if (said is AgeAnswer.Younger && before is not AgeAnswer.Younger)
        {
            await db.CloseLinksAsync(me.Id, actor.Account, now, ct).ConfigureAwait(false); // nobody who answers for them has agreed to those
        }

        db.Note(operation, "say-age", me.Id.Value, now);
        await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        return new Outcome<Student>.Done(await db.Set<Student>().AsNoTracking().SingleAsync(person => person.Id == me.Id, ct).ConfigureAwait(false));
    }

    /// <summary>
    /// Those who work here put a student's age right. For one who is old enough no guardian answers any more, nor sees
    /// anything; what they answered is kept, and counts again for one who is younger after all. Guardian and student are told.
    /// Links to the student's letters are closed: they were somebody else's to have. Asks for a fresh sign-in.
    /// </summary>
    public async Task<Outcome<Student>> CorrectAgeAsync(Actor actor, StudentId id, AgeAnswer? age, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var student = actor.WorksHere ? await db.Set<Student>().SingleOrDefaultAsync(person => person.Id == id, ct).ConfigureAwait(false) : null;
        if (student is null)
        {
            return new Outcome<Student>.NotFound();
        }

        if (age is not { } right)
        {
            return new Outcome<Student>.Refused([NewAccount.AgeProblem]);
        }

        if (!await db.WasDoneAsync(operation, CorrectAge, id.Value, ct).ConfigureAwait(false))
        {
            if (!actor.IsFresh)
            {
                return new Outcome<Student>.Refused([FreshSignIn.Problem]);
            }

            if (!await PutRightAsync(db, actor, student, right, operation, ct).ConfigureAwait(false))
            {
                return new Outcome<Student>.Conflict(await db.Set<Student>().AsNoTracking().SingleAsync(person => person.Id == id, ct).ConfigureAwait(false));
            }
        }

        return new Outcome<Student>.Done(await db.Set<Student>().AsNoTracking().SingleAsync(person => person.Id == id, ct).ConfigureAwait(false));
    }

    // False when somebody saved the student at the same moment.
    private async Task<bool> PutRightAsync(ClinicDb db, Actor actor, Student student, AgeAnswer right, OperationId operation, CancellationToken ct)
    {
        var (id, now) = (student.Id, time.GetUtcNow());
        if (student.Age is AgeAnswer.Younger != right is AgeAnswer.Younger)
        {
            await db.CloseLinksAsync(id, actor.Account, now, ct).ConfigureAwait(false);
        }

        var guardianship = await db.Set<Guardianship>().SingleOrDefaultAsync(guardian => guardian.Student == id, ct).ConfigureAwait(false);
        outbox.PutAge(db, student, guardianship, right, now);
        student.CorrectAge(right, guardianship?.Stands);
        guardianship?.Follow(right, now);
        db.Note(operation, CorrectAge, id.Value, now);
        db.Tell(AuditEvent.AgeCorrected, now, actor.Account.Value, id.Value);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
    }

    /// <summary>One student, for those who work here; null when there is none such.</summary>
    public async Task<Student?> ReadAsync(Actor actor, StudentId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Set<Student>().AsNoTracking().SingleOrDefaultAsync(person => actor.WorksHere && person.Id == id, ct).ConfigureAwait(false);
    }

    /// <summary>Students whose name or address holds what was typed; only for those who work here.</summary>
    public async Task<IReadOnlyList<Student>> FindAsync(Actor actor, string? typed, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return [];
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var name = Folding.Of(typed ?? "");
        var address = Folding.OfEmail(typed ?? "");
        return await db.Set<Student>().AsNoTracking()
            .Where(person => person.FoldedName.Contains(name) || (person.FoldedEmail != null && person.FoldedEmail.Contains(address)))
            .OrderBy(person => person.FoldedName)
            .Take(MostFound)
            .ToListAsync(ct).ConfigureAwait(false);
    }

    /// <summary>Answers the questions that are asked once per student; null means “I don't know”.</summary>
    public async Task<Outcome<Student>> DescribeAsync(
        Actor actor, StudentDetails details, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(details);
        var problems = new List<Problem>();
        var country = CountryName.Read(details.Country, nameof(details.Country), problems);
        if (problems.Count > 0)
        {
            return new Outcome<Student>.Refused(problems);
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var mine = db.Set<Student>().Where(person => person.Account == actor.Account);
        var student = await mine.SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (student is not { IsPaused: false })
        {
            return student is null ? new Outcome<Student>.NotFound() : new Outcome<Student>.Refused([ConsentTakenBack.Paused]);
        }

        if (!await db.WasDoneAsync(operation, Describe, student.Id.Value, ct).ConfigureAwait(false))
        {
            student.Describe(details.Instrument, details.TunesTo, details.Scrape, country);
            db.ExpectVersion(student, version);
            db.Note(operation, Describe, student.Id.Value, time.GetUtcNow());
            if (!await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
                && !await db.WasDoneAsync(operation, Describe, student.Id.Value, ct).ConfigureAwait(false))
            {
                return new Outcome<Student>.Conflict(await mine.AsNoTracking().SingleAsync(ct).ConfigureAwait(false));
            }
        }

        return new Outcome<Student>.Done(await mine.AsNoTracking().SingleAsync(ct).ConfigureAwait(false));
    }
}

/// <summary>What is asked once per student; null means “I don't know”.</summary>
/// <param name="Instrument">What they play.</param>
/// <param name="TunesTo">What their ensemble tunes to.</param>
/// <param name="Scrape">How their reeds are scraped.</param>
/// <param name="Country">The country the reeds are posted from.</param>
public sealed record StudentDetails(Instrument? Instrument, Tuning? TunesTo, ScrapeStyle? Scrape, string? Country);
