using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A batch with bench logs to write a letter about. Everything in it is invented.</summary>
internal sealed class LetterScene
{
    private static readonly DateTimeOffset Day = new(2026, 3, 9, 10, 0, 0, TimeSpan.Zero);
    private static readonly AccountId Bench = new(Id());

    private readonly Dictionary<ReedId, List<BenchEntry>> _entries = [];

    public LetterScene(int reeds = 3, Guid? batch = null, Action<IntakeForm>? change = null)
    {
        var form = new IntakeForm
        {
            Questions = "Which one should I play first?",
            Reeds =
            [
                .. Enumerable.Range(1, reeds).Select(number => new ReedForm
                {
                    HowToRecognise = FormattableString.Invariant($"tag {number}, sand-coloured thread"),
                    Bothers = "The low notes come late",
                    Permission = "TakeRisks",
                    Questions = number == 2 ? "Does it need breaking in?" : null,
                }),
            ],
        };
        change?.Invoke(form);
        var said = Done(IntakeReader.Read(form));
        Batch = Batch.Announce(
            new BatchId(batch ?? Id()), BatchCode.FromNumber(42), new StudentId(Id()), new OperationId(Id()), said, Id, Day);
    }

    public Batch Batch { get; }

    public LetterThread Thread { get; set; } = new(
        new FindingKindId("tip-corners-thick"), null, "In all three reeds.", HabitSentence: "Perhaps your knife turns back before the corner.");

    public string Student { get; init; } = "Ines Kestrel";

    public LetterMaterial Material => new(
        Batch, Student, "Mara, at the harbour bench",
        _entries.ToDictionary(pair => pair.Key, pair => BenchLog.Fold(pair.Value)), Thread)
    {
        Studio = "The Harbour Bench",
        Earlier = Earlier,
        Waived = Waived,
    };

    public EarlierLesson? Earlier { get; set; }

    public IReadOnlyDictionary<string, string> Waived { get; set; } = new Dictionary<string, string>();

    public IReadOnlySet<EntryId> EntryIds => _entries.Values.SelectMany(entries => entries).Select(entry => entry.Id).ToHashSet();

    public static Guid Id() => Guid.CreateVersion7(Day);

    public static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    public Reed Reed(int number) => Batch.Reeds.Single(reed => reed.Number == number);

    public void Arrive(int number, ReedArrival? seen = null) =>
        Assert.Empty(Batch.RecordArrival(Reed(number).Id, seen ?? new ReedArrival(Presence.Here, Fitness: Fitness.Fit), Day));

    public EntryId Log<T>(int number, Outcome<T> entry, int minute = 0, EntryId? insteadOf = null)
        where T : BenchEntry
    {
        var reed = Reed(number).Id;
        var log = _entries.TryGetValue(reed, out var known) ? known : _entries[reed] = [];
        var id = new EntryId(Id());
        log.Add(Done(entry).StampedWith(new EntryStamp(id, reed, log.Count + 1, new OperationId(Id()), Day.AddMinutes(minute), Bench, Supersedes: insteadOf)));
        return id;
    }

    /// <summary>Three reeds with the same fault, worked on in passes, one of them stopped to protect it.</summary>
    public static LetterScene Usual(Guid? batch = null)
    {
        var scene = new LetterScene(3, batch);
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number, new ReedArrival(Presence.Here, "pencil dot near the thread", WindingHand.Left, Overlap.UpperToTheLeft, number != 3, null, Fitness.Fit));
            scene.Work(number);
        }

        scene.Batch.Questions[1].AnswerWith("Begin with number one. It is the easiest of the three", Day);
        scene.Batch.Questions[0].AnswerWith("A few days of easy playing will do", Day);
        return scene;
    }

    private void Work(int number)
    {
        Log(number, Finding.Of(new("spine-intact"), FindingCharacter.Strength, new Place(Zone.Spine)));
        var corners = Log(number, Finding.Of(
            new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners, Blades.Upper), knownBy: KnownBy.Plaque));
        Log(number, Finding.Of(new("more-open-than-liked"), FindingCharacter.Taste, new Place(Zone.Opening)));
        Log(number, Test.Of(TestKind.SoftestStart, 1));
        Log(number, Test.Of(TestKind.Crow, 3, Pitch("C +20")));
        Log(number, Risk.Of("the corners may tear"));
        Log(number, Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners), new Amount(2), corners));
        Log(number, Test.Of(TestKind.Crow, 0, Pitch("between B and C")));
        Log(number, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(null, 0.1m)));
        Log(number, Test.Of(TestKind.SoftestStart, 3));
        Log(number, Test.Of(TestKind.Crow, 0, Pitch("C")));
        Log(number, FindingEnded.Of(corners, number == 1 ? FindingEnding.Gone : FindingEnding.Better));
        Log(number, LeaveAlone.Of(new Place(Zone.HeartCentre), "it is just right and holds the pitch"));
        Log(number, Stopped.Of("every stroke was giving less"));
        Log(number, Verdict.Of(number == 3 ? VerdictKind.StoppedToProtectIt : VerdictKind.Improved));
    }

    private static SaidPitch Pitch(string text) => Done(SaidPitch.Read(text, Tuning.Standard));
}
