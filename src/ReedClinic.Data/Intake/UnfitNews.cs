using System.Globalization;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Intake;

/// <summary>
/// The mail about reeds that can't be played as they came. Of each reed it tells mould once, and damp once. What is put
/// right before the mail went isn't told; where mould was told that was noted by mistake, a mail says so.
/// </summary>
internal static class UnfitNews
{
    private const int Longest = 64; // numbers that a mark holds; a batch has twenty reeds at most

    /// <summary>Tells of what is noted now and wasn't before, and takes back what no longer stands. It is saved, or not, with what it tells of.</summary>
    /// <param name="outbox">Where mail waits.</param>
    /// <param name="db">The context that will be saved, in a transaction.</param>
    /// <param name="batch">The batch as it will be saved.</param>
    /// <param name="before">What was known before.</param>
    /// <param name="ct">Cancels.</param>
    public static async Task PutUnfitAsync(this Outbox outbox, ClinicDb db, Batch batch, UnfitReeds before, CancellationToken ct)
    {
        var unfit = UnfitReeds.Of(batch.Reeds);
        if (unfit.Mouldy.SequenceEqual(before.Mouldy) && unfit.Damp.SequenceEqual(before.Damp))
        {
            return;
        }

        var once = $"unfit:{batch.Id.Value}:";
        var now = new Mark(unfit);
        var (news, count) = await NewsAsync(db, once, now, ct).ConfigureAwait(false);
        if (!news.Any || await db.AddressForAsync(batch.Student, ct).ConfigureAwait(false) is not var (email, name))
        {
            return;
        }

        var student = await db.Set<Student>().AsNoTracking().SingleAsync(person => person.Id == batch.Student, ct).ConfigureAwait(false);
        outbox.Put(
            db,
            new Mail(MailKind.Unfit, email, name)
            {
                Path = $"/batches/{batch.Code}",
                Mouldy = Mark.Numbers(news.Mouldy),
                Damp = Mark.Numbers(news.Damp),
                NoMould = Mark.Numbers(news.NoMould),
                Ward = student.Age is AgeAnswer.Younger ? student.FirstName : null,
                About = batch.Student.Value,
            },
            once + news.Written(count));
    }

    // What was told, in its order; what waits and is wrong by now is removed. One that was tried may have been read, for all that is known.
    private static async Task<(Mark News, int Count)> NewsAsync(ClinicDb db, string once, Mark now, CancellationToken ct)
    {
        var mails = db.Set<Job>().Where(job => job.Kind == JobKind.Mail && job.Once != null && job.Once.StartsWith(once));

        // Held until the end, so that nobody begins to send one that is about to be removed.
        await mails.Where(job => job.DoneAt == null && job.GaveUpAt == null).ExecuteUpdateAsync(set => set.SetProperty(job => job.DueAt, job => job.DueAt), ct).ConfigureAwait(false);
        var jobs = (await mails.ToListAsync(ct).ConfigureAwait(false)).ConvertAll(job => (Job: job, Mark: Mark.Read(job.Once![once.Length..])));
        var (told, maybe) = (default(Mark), default(Mark));
        foreach (var (job, mark) in jobs.OrderBy(row => row.Mark.Turn))
        {
            if (job.DoneAt is not null || job.GaveUpAt is not null || mark.HoldsIn(now))
            {
                told = told.Then(mark);
                continue;
            }

            db.Remove(job);
            maybe = job.Attempts > 0 ? maybe.With(mark) : maybe;
        }

        var sure = told.Mouldy & ~maybe.NoMould;
        var news = new Mark(now.Mouldy & ~sure, now.Damp & ~told.Damp, (told.Mouldy | maybe.Mouldy) & ~now.Mouldy);
        return (news, jobs.Select(row => row.Mark.Turn).DefaultIfEmpty(0).Max() + 1);
    }

    /// <summary>What a mail tells, a bit for each number on a tag.</summary>
    private readonly record struct Mark(ulong Mouldy, ulong Damp, ulong NoMould, int Turn = 0)
    {
        public Mark(UnfitReeds unfit)
            : this(Bits(unfit.Mouldy), Bits(unfit.Damp), 0)
        {
        }

        public bool Any => (Mouldy | Damp | NoMould) != 0;

        public static Mark Read(string written)
        {
            var parts = written.Split('.');
            return new(Part(parts, 0), Part(parts, 1), Part(parts, 2), (int)Part(parts, 3));
        }

        public static List<int> Numbers(ulong bits) => [.. Enumerable.Range(0, Longest).Where(number => (bits & (1UL << number)) != 0)];

        public string Written(int turn) => string.Create(CultureInfo.InvariantCulture, $"{Mouldy:x}.{Damp:x}.{NoMould:x}.{turn:x}");

        public bool HoldsIn(Mark now) => (Mouldy & ~now.Mouldy) == 0 && (Damp & ~now.Damp) == 0 && (NoMould & now.Mouldy) == 0;

        public Mark Then(Mark later) => new((Mouldy & ~later.NoMould) | later.Mouldy, Damp | later.Damp, 0);

        public Mark With(Mark other) => new(Mouldy | other.Mouldy, Damp | other.Damp, NoMould | other.NoMould);

        private static ulong Bits(IEnumerable<int> numbers) => numbers.Where(number => number < Longest).Aggregate(0UL, (bits, number) => bits | (1UL << number));

        private static ulong Part(string[] parts, int which) =>
            which < parts.Length && ulong.TryParse(parts[which], NumberStyles.HexNumber, CultureInfo.InvariantCulture, out var bits) ? bits : 0;
    }
}
