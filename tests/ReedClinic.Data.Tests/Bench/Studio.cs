using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Tests.Bench;

/// <summary>A studio in a harbour town: two teachers, a student, and batches to work on.</summary>
internal sealed class Studio(TestDatabase database)
{
    private static int codes = 1000;

    public static Actor Ada { get; } = new(new AccountId(NewGuid()), null, IsTeacher: true, IsOwner: false);

    public static Actor Ben { get; } = new(new AccountId(NewGuid()), null, IsTeacher: true, IsOwner: false);

    public static Actor Stranger { get; } = new(new AccountId(NewGuid()), new StudentId(NewGuid()), false, false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static Guid NewGuid() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());

    public static OperationId Operation() => new(NewGuid());

    public static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    public static Note Note(string words) => Value(Domain.Bench.Note.Of(words));

    public static Finding Found(
        string kind,
        FindingCharacter character = FindingCharacter.Fault,
        Arose arose = Arose.AsItArrived,
        Certainty certainty = Certainty.Certain) =>
        Value(Finding.Of(new FindingKindId(kind), character, new Place(Zone.TipCorners), arose: arose, certainty: certainty));

    public static LookedFor Missing(string kind) => Value(LookedFor.Of(new FindingKindId(kind)));

    public async Task<Student> StudentAsync(string name)
    {
        var student = new Student(new StudentId(NewGuid()), name);
        await SaveAsync(student);
        return student;
    }

    public async Task<Batch> BatchAsync(Student student, int reeds = 1, DateTimeOffset? at = null)
    {
        var batch = Batch.Announce(
            new BatchId(NewGuid()),
            BatchCode.FromNumber(Interlocked.Increment(ref codes)),
            student.Id,
            Operation(),
            new AnnouncedBatch(
                null,
                null,
                null,
                [.. Enumerable.Range(1, reeds).Select(n => new AnnouncedReed($"knot {n}", "It feels tight.", Permission.SafeChangesOnly))],
                ["Does it need playing in?"]),
            NewGuid,
            at ?? TimeProvider.System.GetUtcNow());
        await SaveAsync(batch);
        return batch;
    }

    public async Task<Reed> ReedAsync()
    {
        var batch = await BatchAsync(await StudentAsync("Ines"));
        return batch.Reeds[0];
    }

    private async Task SaveAsync(object row)
    {
        await using var db = database.CreateDbContext();
        db.Add(row);
        await db.SaveChangesAsync(Ct);
    }
}
