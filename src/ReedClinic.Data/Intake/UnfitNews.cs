using System.Globalization;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Intake;

/// <summary>The mail about reeds that can't be played as they came. Of each reed it tells mould once, and damp once.</summary>
internal static class UnfitNews
{
    private const int Longest = 64; // numbers that a mark holds; a batch has twenty reeds at most

    /// <summary>Tells of what is noted now and wasn't before. It is saved, or not, with what it tells of.</summary>
    /// <param name="outbox">Where mail waits.</param>
    /// <param name="db">The context that will be saved.</param>
    /// <param name="batch">The batch as it will be saved.</param>
    /// <param name="before">What was known before.</param>
    /// <param name="ct">Cancels.</param>
    public static async Task PutUnfitAsync(this Outbox outbox, ClinicDb db, Batch batch, UnfitReeds before, CancellationToken ct)
    {
        var unfit = UnfitReeds.Of(batch.Reeds).Beyond(before);
        if (!unfit.Any)
        {
            return;
        }

        var once = $"unfit:{batch.Id.Value}:";
        var told = await db.Set<Job>().AsNoTracking().Where(job => job.Kind == JobKind.Mail && job.Once != null && job.Once.StartsWith(once))
            .Select(job => job.Once!).ToListAsync(ct).ConfigureAwait(false);
        unfit = told.Select(mark => Read(mark[once.Length..])).Aggregate(unfit, (left, known) => left.Beyond(known));
        if (!unfit.Any || await db.AddressForAsync(batch.Student, ct).ConfigureAwait(false) is not var (email, name))
        {
            return;
        }

        var student = await db.Set<Student>().AsNoTracking().SingleAsync(person => person.Id == batch.Student, ct).ConfigureAwait(false);
        outbox.Put(
            db,
            new Mail(MailKind.Unfit, email, name)
            {
                Path = $"/batches/{batch.Code}",
                Mouldy = unfit.Mouldy,
                Damp = unfit.Damp,
                Ward = student.Age is AgeAnswer.Younger ? student.FirstName : null,
                About = batch.Student.Value,
            },
            once + string.Create(CultureInfo.InvariantCulture, $"{Mark(unfit.Mouldy):x}.{Mark(unfit.Damp):x}"));
    }

    private static ulong Mark(IEnumerable<int> numbers) => numbers.Where(number => number < Longest).Aggregate(0UL, (mark, number) => mark | (1UL << number));

    private static UnfitReeds Read(string mark) => mark.Split('.') is [var mouldy, var damp] ? new(Numbers(mouldy), Numbers(damp)) : UnfitReeds.None;

    private static List<int> Numbers(string mark) =>
        ulong.TryParse(mark, NumberStyles.HexNumber, CultureInfo.InvariantCulture, out var set) ? [.. Enumerable.Range(0, Longest).Where(number => (set & (1UL << number)) != 0)] : [];
}
