using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench;

/// <summary>Writes a log by hand, one entry after another.</summary>
internal sealed class Writer
{
    public static readonly AccountId Ada = new(new Guid(1, 0, 0, new byte[8]));
    public static readonly AccountId Ben = new(new Guid(2, 0, 0, new byte[8]));
    public static readonly ReedId Reed = new(new Guid(3, 0, 0, new byte[8]));

    private readonly List<BenchEntry> entries = [];

    public IReadOnlyList<BenchEntry> Entries => entries;

    public BenchLog Log => BenchLog.Fold(entries);

    public static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    public static Guid Number(int kind, int number) => new(kind, (short)(number >> 16), (short)number, new byte[8]);

    public EntryId Say(BenchEntry entry, EntryId? supersedes = null, AccountId? by = null, PassId? pass = null)
    {
        var sequence = entries.Count + 1;
        return Add(entry, sequence, supersedes, by, pass);
    }

    public EntryId Add(
        BenchEntry entry,
        int sequence,
        EntryId? supersedes = null,
        AccountId? by = null,
        PassId? pass = null,
        OperationId? operation = null)
    {
        var id = new EntryId(Number(10, entries.Count + 1));
        entries.Add(entry.StampedWith(new EntryStamp(
            id,
            Reed,
            sequence,
            operation ?? new OperationId(Number(20, entries.Count + 1)),
            DateTimeOffset.UnixEpoch.AddMinutes(sequence),
            by ?? Ada,
            supersedes,
            pass)));
        return id;
    }

    public EntryId Undo(EntryId tail, AccountId? by = null) => Say(Domain.Bench.Undo.Entry(), tail, by);

    public static Note Note(string words) => Value(Domain.Bench.Note.Of(words));

    public static Domain.Bench.Test Test(TestKind kind, int step) => Value(Domain.Bench.Test.Of(kind, step));

    public static Adjustment Work(EntryId? forFinding = null) => Value(Adjustment.Of(
        new AdjustmentKindId("thin-corners"), new Place(Zone.TipCorners), new Amount(Strokes: 2), forFinding));

    public static Finding Found(string kind = "tip-corners-thick", Arose arose = Arose.AsItArrived) => Value(Finding.Of(
        new FindingKindId(kind), FindingCharacter.Fault, new Place(Zone.TipCorners), arose: arose));
}
