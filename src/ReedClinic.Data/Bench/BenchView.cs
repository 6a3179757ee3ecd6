using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Picks;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>Everything that the bench shows of one reed.</summary>
/// <param name="Student">Whose reed it is.</param>
/// <param name="Batch">The batch, with its reeds and questions.</param>
/// <param name="Reed">The reed.</param>
/// <param name="Log">Its log today.</param>
/// <param name="Names">The names of those who wrote in the log.</param>
/// <param name="LastTime">What was said about the student's batch before this one.</param>
public sealed record BenchView(
    Student Student,
    Batch Batch,
    Reed Reed,
    BenchLog Log,
    IReadOnlyDictionary<AccountId, string> Names,
    CommonThread? LastTime)
{
    /// <summary>What can be found, done and tried here: the shipped catalogue with the studio’s own entries.</summary>
    public Catalogue Catalogue { get; init; } = Catalogue.Shipped;

    /// <summary>The questions about this reed, then those about all of them.</summary>
    public IEnumerable<Question> Questions => Batch.Questions
        .Where(question => question.Reed is null || question.Reed == Reed.Id)
        .OrderBy(question => question.Reed is null);

    /// <summary>The name of who wrote an entry; empty when the account is gone.</summary>
    /// <param name="account">The account.</param>
    public string NameOf(AccountId account) => Names.GetValueOrDefault(account, "");
}

/// <summary>A reed with its log.</summary>
/// <param name="Reed">The reed.</param>
/// <param name="Log">Its log today.</param>
public sealed record ReedAtBench(Reed Reed, BenchLog Log);

/// <summary>All the reeds of a batch with their logs: for the first look, the common thread and the letter.</summary>
/// <param name="Student">Whose reeds they are.</param>
/// <param name="Batch">The batch, with its reeds and questions.</param>
/// <param name="Reeds">The reeds by number.</param>
/// <param name="Thread">What was said about the batch as a whole, if anything yet.</param>
public sealed record BatchAtBenchView(
    Student Student, Batch Batch, IReadOnlyList<ReedAtBench> Reeds, CommonThread? Thread)
{
    /// <summary>The log of one reed; empty when it isn't in this batch.</summary>
    /// <param name="reed">The reed.</param>
    public BenchLog LogOf(ReedId reed) => Reeds.FirstOrDefault(row => row.Reed.Id == reed)?.Log ?? BenchLog.Empty;
}

/// <summary>What a teacher is in the habit of doing.</summary>
/// <param name="Habits">Their own tests and adjustments, newest first.</param>
public sealed record HabitsView(IReadOnlyList<Habit> Habits)
{
    /// <summary>How many entries are read at most.</summary>
    public const int Most = 500;
}

/// <summary>The reeds of a batch at a glance, to move from one to the next.</summary>
/// <param name="Reeds">The reeds by number.</param>
public sealed record StripView(IReadOnlyList<ReedOnStrip> Reeds);

/// <summary>A reed at a glance.</summary>
/// <param name="Id">The reed.</param>
/// <param name="Number">Its number in the batch.</param>
/// <param name="HowToRecognise">How to tell it from the others.</param>
/// <param name="Presence">Whether it is here: one that isn’t has no bench.</param>
/// <param name="State">Where it stands.</param>
public sealed record ReedOnStrip(ReedId Id, int Number, string HowToRecognise, Presence Presence, ReedState State);
