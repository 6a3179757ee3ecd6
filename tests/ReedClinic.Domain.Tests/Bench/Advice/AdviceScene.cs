using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Advice;

/// <summary>One reed at the bench. Everything in it is invented.</summary>
internal sealed class AdviceScene
{
    public AdviceScene(
        Permission permission = Permission.TakeRisks, Instrument? instrument = Instrument.Oboe, ScrapeStyle? scrape = ScrapeStyle.LongScrape,
        ReedScales? scales = null)
    {
        var number = 0;
        Batch = Batch.Announce(
            new BatchId(Writer.Number(1, 1)), BatchCode.FromNumber(42), new StudentId(Writer.Number(1, 2)), new OperationId(Writer.Number(1, 3)),
            new AnnouncedBatch(instrument, Tuning.Standard, scrape, [new AnnouncedReed("sand-coloured thread", "late low notes", permission) { Scales = scales ?? ReedScales.Nothing }], []),
            () => Writer.Number(2, ++number),
            DateTimeOffset.UnixEpoch);
    }

    public Batch Batch { get; }

    public Reed Reed => Batch.Reeds[0];

    public Writer Writer { get; } = new();

    public static PlannedWork Clip(decimal? mm = null) => Plan("clip", Zone.TipEdge, new Amount(Millimetres: mm));

    public static PlannedWork Hair => Plan("clip-hair", Zone.TipEdge);

    public static PlannedWork TipSides => Plan("thin-tip-sides", Zone.TipSides);

    public static PlannedWork Plan(string kind, Zone zone, Amount amount = default) => new(new AdjustmentKindId(kind), new Place(zone), amount);

    public EntryId Crow(string pitch) => Say(Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Writer.Value(SaidPitch.Read(pitch, Tuning.Standard)))));

    public EntryId Effort(int step) => Say(Writer.Test(TestKind.Effort, step));

    public EntryId Length(decimal mm) => Say(Writer.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: mm)));

    public EntryId Found(string kind) => Say(Writer.Value(Finding.Of(
        new FindingKindId(kind), FindingCharacter.Fault, new Place(FindingCatalogue.Find(new FindingKindId(kind))!.Zone))));

    public EntryId Do(PlannedWork work, string? words = null) =>
        Say(Writer.Value(Adjustment.Of(work.Kind, work.Place, work.Amount, words: words)));

    public EntryId Say(BenchEntry entry) => Writer.Say(entry);

    public IReadOnlyList<AdviceLine> Due(PlannedWork? planned = null, ClipEffect? clip = null) =>
        BenchAdvice.For(Writer.Log, Reed, Batch, planned, clip);

    public AdviceLine? Due(AdviceKind kind, PlannedWork? planned = null) => Due(planned).SingleOrDefault(line => line.Kind == kind);

    public void SetAside(AdviceLine line) => Say(Writer.Value(AdviceSetAside.Of(line.Id)));
}
