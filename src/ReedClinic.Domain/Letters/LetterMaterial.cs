using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What the teacher chose to say about all the reeds together.</summary>
/// <param name="LessonKind">The finding that the common lesson is about.</param>
/// <param name="LessonWords">The lesson in the teacher's words.</param>
/// <param name="LessonEvidence">Its evidence in one plain sentence, such as “In all three reeds.”.</param>
/// <param name="StrengthKind">The strength that is named.</param>
/// <param name="StrengthWords">What is done well, in the teacher's words.</param>
/// <param name="StrengthEvidence">Its evidence in one plain sentence.</param>
/// <param name="HabitSentence">The likely habit, as “Perhaps …”.</param>
public sealed record LetterThread(
    FindingKindId? LessonKind = null,
    string? LessonWords = null,
    string? LessonEvidence = null,
    FindingKindId? StrengthKind = null,
    string? StrengthWords = null,
    string? StrengthEvidence = null,
    string? HabitSentence = null)
{
    /// <summary>Nothing chosen.</summary>
    public static LetterThread Nothing { get; } = new();

    /// <summary>Whether a lesson was chosen.</summary>
    public bool HasLesson => LessonKind is not null || LessonWords is not null;
}

/// <summary>Everything that a letter is composed from.</summary>
/// <param name="Batch">The batch with its reeds, questions and arrival.</param>
/// <param name="StudentName">To whom it is written.</param>
/// <param name="Signature">Who signs it.</param>
/// <param name="Logs">The bench log of each reed that has one.</param>
/// <param name="Thread">What was said about all of them.</param>
public sealed record LetterMaterial(
    Batch Batch,
    string StudentName,
    string Signature,
    IReadOnlyDictionary<ReedId, BenchLog> Logs,
    LetterThread Thread)
{
    /// <summary>The studio that it comes from; null when that isn't known.</summary>
    public string? Studio { get; init; }

    /// <summary>Whether the student is below the studio’s age of consent; null when nobody said. Nothing more of an age is told to a letter.</summary>
    public AgeAnswer? Age { get; init; }

    /// <summary>The studio’s own kinds of finding and adjustment, with the sentences that explain them.</summary>
    public OwnKinds Own { get; init; } = OwnKinds.None;

    /// <summary>Why gaps were left open, by their keys.</summary>
    public IReadOnlyDictionary<string, string> Waived { get; init; } = new Dictionary<string, string>();

    /// <summary>How often other words were asked for, by the keys of the parts; the others are said as they come first.</summary>
    public IReadOnlyDictionary<string, int> Turns { get; init; } = new Dictionary<string, int>();

    /// <summary>What the student’s last letter taught; null where none was sent before these reeds were, or it taught nothing that was found.</summary>
    public EarlierLesson? Earlier { get; init; }

    /// <summary>Why a gap was left open; null when it wasn't.</summary>
    /// <param name="gap">The gap's key.</param>
    public string? ReasonFor(string gap) => Waived.GetValueOrDefault(gap);

    /// <summary>The reeds that the student can play when they are home again: fit, and not given up.</summary>
    internal IReadOnlyList<Reed> Playable =>
        [.. Batch.Reeds.Where(reed => reed.MayBePlayed && LogOf(reed.Id).Verdict?.Now.VerdictKind != VerdictKind.NotToBeSaved)];

    /// <summary>The log of one reed, without findings that were taken back; an empty one when nothing was written.</summary>
    /// <param name="reed">Which reed.</param>
    public BenchLog LogOf(ReedId reed) => LetterLog.Standing(Logs.GetValueOrDefault(reed, BenchLog.Empty));

    /// <summary>The same with logs that are said to the student: what speaks of them as of somebody else isn’t in them.</summary>
    internal LetterMaterial ToTheStudent() => this with
    {
        Logs = Logs.ToDictionary(pair => pair.Key, pair => LetterLog.ToTheStudent(LetterLog.Standing(pair.Value), StudentName)),
    };
}
