using System.Globalization;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Intake;

/// <summary>One parcel of reeds, from the day it was announced until the reeds are home again.</summary>
public sealed class Batch
{
    /// <summary>The most reeds that can be announced in one batch.</summary>
    public const int MostReeds = 12;

    /// <summary>The most reeds of a batch when unannounced ones are counted.</summary>
    public const int MostReedsWithExtras = 20;

    private readonly List<Reed> _reeds = [];
    private readonly List<Question> _questions = [];

    private Batch()
    {
    }

    /// <summary>Which batch.</summary>
    public BatchId Id { get; private set; }

    /// <summary>The short code on the slip.</summary>
    public BatchCode Code { get; private set; }

    /// <summary>Whose reeds they are.</summary>
    public StudentId Student { get; private set; }

    /// <summary>What announced it: a repeated submission gives this batch again.</summary>
    public OperationId SubmittedBy { get; private set; }

    /// <summary>Where it is.</summary>
    public Stage Stage { get; private set; }

    /// <summary>The instrument these reeds are for; null when not said.</summary>
    public Instrument? Instrument { get; private set; }

    /// <summary>What the student tuned to at that time; null when not sure.</summary>
    public Tuning? TunesTo { get; private set; }

    /// <summary>How these reeds are scraped; null when not known.</summary>
    public ScrapeStyle? Scrape { get; private set; }

    /// <summary>When it was announced.</summary>
    public DateTimeOffset SubmittedAt { get; private set; }

    /// <summary>When the parcel was opened.</summary>
    public DateTimeOffset? ArrivedAt { get; private set; }

    /// <summary>When the first reed was tested.</summary>
    public DateTimeOffset? BenchStartedAt { get; private set; }

    /// <summary>When the letter went out.</summary>
    public DateTimeOffset? LetterSentAt { get; private set; }

    /// <summary>When the reeds were posted back.</summary>
    public DateTimeOffset? PostedBackAt { get; private set; }

    /// <summary>When the reeds were known to be home.</summary>
    public DateTimeOffset? HomeAt { get; private set; }

    /// <summary>What was noted of the parcel as a whole when it was opened.</summary>
    public string? ArrivalNote { get; private set; }

    /// <summary>Whether the letter tells that note; without this it stays with the studio.</summary>
    public bool ArrivalNoteInLetter { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Version { get; private set; }

    /// <summary>The reeds, by number.</summary>
    public IReadOnlyList<Reed> Reeds => [.. _reeds.OrderBy(reed => reed.Number)];

    /// <summary>The questions, in the order in which they were asked.</summary>
    public IReadOnlyList<Question> Questions => [.. _questions.OrderBy(question => question.Number)];

    /// <summary>What pitches are compared with: the student's A, or A = 440 when they weren't sure.</summary>
    public CrowTarget CrowTarget => CrowTarget.OnC(TunesTo ?? Tuning.Standard);

    /// <summary>The first day of each stage that has been reached, in order.</summary>
    public IReadOnlyList<(Stage Stage, DateTimeOffset Since)> Journey =>
    [
        .. new (Stage Stage, DateTimeOffset? Since)[]
            {
                (Stage.OnItsWay, SubmittedAt),
                (Stage.Here, ArrivedAt),
                (Stage.AtTheBench, BenchStartedAt),
                (Stage.LetterSent, LetterSentAt),
                (Stage.OnItsWayHome, PostedBackAt),
                (Stage.Home, HomeAt),
            }
            .Where(step => step.Since is not null)
            .Select(step => (step.Stage, step.Since!.Value)),
    ];

    /// <summary>What differs between what was announced and what lay in the parcel; the letter tells it.</summary>
    public IReadOnlyList<Mismatch> Mismatches =>
    [
        .. Reeds.SelectMany(reed => Mismatch.Of(reed)),
    ];

    /// <summary>Makes a batch of what a student announced.</summary>
    /// <param name="id">Made by the app.</param>
    /// <param name="code">A code that no other batch has.</param>
    /// <param name="student">Whose reeds they are.</param>
    /// <param name="operation">What announced it.</param>
    /// <param name="said">What was announced; checked by <see cref="IntakeReader"/>.</param>
    /// <param name="newId">Makes ids for the reeds and questions.</param>
    /// <param name="at">When.</param>
    public static Batch Announce(
        BatchId id, BatchCode code, StudentId student, OperationId operation, AnnouncedBatch said, Func<Guid> newId, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(newId);
        ArgumentOutOfRangeException.ThrowIfZero(said.Reeds.Count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(said.Reeds.Count, MostReeds);
        var batch = new Batch
        {
            Id = id,
            Code = code,
            Student = student,
            SubmittedBy = operation,
            Instrument = said.Instrument,
            TunesTo = said.TunesTo,
            Scrape = said.Scrape,
            SubmittedAt = at,
        };
        foreach (var reed in said.Reeds)
        {
            var announced = Reed.Announced(new ReedId(newId()), id, batch._reeds.Count + 1, reed);
            batch._reeds.Add(announced);
            batch.Ask([.. reed.Questions, .. reed.AskedInPassing], announced.Id, newId);
        }

        batch.Ask(said.Questions, null, newId);
        return batch;
    }

    /// <summary>Notes what was seen of one reed when the parcel was opened. The batch is here from then on.</summary>
    /// <param name="reed">Which reed.</param>
    /// <param name="seen">What was seen.</param>
    /// <param name="at">When.</param>
    /// <param name="prefix">What stands before the names of the fields in a problem.</param>
    /// <returns>What can't be taken as it is; empty when it was noted.</returns>
    public IReadOnlyList<Problem> RecordArrival(ReedId reed, ReedArrival seen, DateTimeOffset at, string prefix = "")
    {
        ArgumentNullException.ThrowIfNull(seen);
        var which = _reeds.Single(candidate => candidate.Id == reed);
        var problems = seen.Check(prefix).ToList();
        if (which.Presence == Presence.Extra != (seen.Presence == Presence.Extra))
        {
            problems.Add(new Problem(prefix + nameof(ReedArrival.Presence), "A reed that wasn’t announced stays an extra one."));
        }

        if (problems.Count == 0)
        {
            which.Record(seen);
            Reach(Stage.Here, at);
        }

        return [.. problems.Select(problem => problem with { Message = OfReed(which.Number, problem.Message) })];
    }

    // Several reeds stand under each other in one form: the same words of two of them wouldn't say which.
    private static string OfReed(int number, string message) =>
        string.Create(CultureInfo.InvariantCulture, $"Reed {number}: {char.ToLowerInvariant(message[0])}{message[1..]}");

    /// <summary>Adds a reed that was in the parcel without having been announced. It may only be advised on.</summary>
    /// <param name="id">Made by the app.</param>
    /// <param name="howToRecognise">How to tell it from the others.</param>
    /// <param name="at">When.</param>
    /// <returns>The reed, or a problem.</returns>
    public Outcome<Reed> AddExtra(ReedId id, string? howToRecognise, DateTimeOffset at)
    {
        var problems = new List<Problem>();
        var words = PlainText.Read(howToRecognise, nameof(Reed.HowToRecognise), IntakeLimits.HowToRecognise, problems);
        if (words is null && problems.Count == 0)
        {
            problems.Add(new Problem(nameof(Reed.HowToRecognise), "Say how to tell it from the others."));
        }

        if (_reeds.Count >= MostReedsWithExtras)
        {
            problems.Add(new Problem("", "This batch can’t take another reed."));
        }

        if (problems.Count > 0)
        {
            return new Outcome<Reed>.Refused(problems);
        }

        var reed = Reed.Unannounced(id, Id, _reeds.Max(other => other.Number) + 1, words!);
        _reeds.Add(reed);
        Reach(Stage.Here, at);
        return new Outcome<Reed>.Done(reed);
    }

    /// <summary>Removes a reed that was added as an unannounced one by mistake. Whether anything was done on it is for whoever asks to know.</summary>
    /// <param name="id">Which reed.</param>
    /// <returns>Why it stays; empty when it was removed.</returns>
    public IReadOnlyList<Problem> RemoveExtra(ReedId id)
    {
        if (_reeds.Find(candidate => candidate.Id == id) is not { } reed)
        {
            return [new Problem("Remove", "This reed isn’t in the batch any more.")];
        }

        if (reed.Presence != Presence.Extra)
        {
            return [new Problem("Remove", "A reed that was announced stays in the batch.")];
        }

        if (Stage >= Stage.LetterSent || _questions.Exists(question => question.Reed == id))
        {
            return [new Problem("Remove", Stage >= Stage.LetterSent ? "The letter went out already, so this reed stays." : "This reed was asked about, so it stays.")];
        }

        _reeds.Remove(reed);
        return [];
    }

    /// <summary>Keeps a note on the parcel as a whole.</summary>
    /// <param name="note">The note, or null.</param>
    /// <param name="inLetter">Whether the letter tells it.</param>
    public void NoteOnArrival(string? note, bool inLetter = false) =>
        (ArrivalNote, ArrivalNoteInLetter) = string.IsNullOrWhiteSpace(note) ? (null, false) : (note.Trim(), inLetter);

    /// <summary>Moves the batch on. It moves back by <see cref="TakePostingBack"/> alone, and a stage that was reached keeps its first day.</summary>
    /// <param name="stage">The stage that begins.</param>
    /// <param name="at">When.</param>
    /// <returns>False when the batch had got that far already.</returns>
    public bool Reach(Stage stage, DateTimeOffset at)
    {
        if (stage <= Stage)
        {
            return false;
        }

        Stage = stage;
        switch (stage)
        {
            case Stage.Here:
                ArrivedAt = at;
                break;
            case Stage.AtTheBench:
                BenchStartedAt = at;
                break;
            case Stage.LetterSent:
                LetterSentAt = at;
                break;
            case Stage.OnItsWayHome:
                PostedBackAt = at;
                break;
            default:
                HomeAt = at;
                break;
        }

        return true;
    }

    /// <summary>Takes back that the reeds were posted back, which was noted by mistake: the batch is where it was before.</summary>
    /// <returns>False where they aren’t on their way home, or are home already.</returns>
    public bool TakePostingBack()
    {
        if (Stage != Stage.OnItsWayHome)
        {
            return false;
        }

        PostedBackAt = null;
        Stage = Journey[^1].Stage;
        return true;
    }

    private void Ask(IReadOnlyList<string> questions, ReedId? reed, Func<Guid> newId)
    {
        foreach (var text in questions)
        {
            _questions.Add(new Question(new QuestionId(newId()), Id, reed, _questions.Count + 1, text));
        }
    }
}

/// <summary>What a student announces: 1 to 12 reeds and what they ask about all of them.</summary>
/// <param name="Instrument">What the reeds are for.</param>
/// <param name="TunesTo">What the student tunes to; null when not sure.</param>
/// <param name="Scrape">How the reeds are scraped; null when not known.</param>
/// <param name="Reeds">The reeds, in the order of their tags.</param>
/// <param name="Questions">Questions about all of them.</param>
public sealed record AnnouncedBatch(
    Instrument? Instrument,
    Tuning? TunesTo,
    ScrapeStyle? Scrape,
    IReadOnlyList<AnnouncedReed> Reeds,
    IReadOnlyList<string> Questions);
