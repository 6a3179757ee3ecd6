using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Demo;

/// <summary>A teacher at the bench with one reed: short words for what goes into the log.</summary>
internal sealed class DemoBench(BenchBook book, DemoClock clock, Actor teacher, Tuning tuning, ReedId reed, CancellationToken ct)
{
    private static readonly TimeSpan BetweenEntries = TimeSpan.FromSeconds(95);

    public Task<EntryId> TestAsync(TestKind test, int? step, string? pitch = null, string? words = null) =>
        PutAsync(Test.Of(test, step, pitch is null ? null : DemoAnswer.Of(SaidPitch.Read(pitch, tuning)), words));

    public Task<EntryId> FaultAsync(string kind, Place place, FindingShape shape, KnownBy knownBy, string? words = null) =>
        PutAsync(Finding.Of(new FindingKindId(kind), FindingCharacter.Fault, place, shape, knownBy: knownBy, words: words));

    public Task<EntryId> UnevenAsync(string kind, Place place, Relation relation, Place other, KnownBy knownBy) => PutAsync(
        Finding.Of(new FindingKindId(kind), FindingCharacter.Fault, place, FindingShape.Comparison, relation, other, knownBy));

    public Task<EntryId> StrengthAsync(string kind, Zone zone, FindingShape shape, KnownBy knownBy) =>
        PutAsync(Finding.Of(new FindingKindId(kind), FindingCharacter.Strength, new Place(zone), shape, knownBy: knownBy));

    public Task<EntryId> TasteAsync(string kind, Zone zone, string words) => PutAsync(
        Finding.Of(new FindingKindId(kind), FindingCharacter.Taste, new Place(zone), FindingShape.ShapeAcross, words: words));

    public Task<EntryId> NotThereAsync(string kind, KnownBy knownBy) => PutAsync(LookedFor.Of(new FindingKindId(kind), knownBy));

    public Task<EntryId> AdjustAsync(string kind, Place place, Amount amount, EntryId? forFinding, Zone? sake = null) =>
        PutAsync(Adjustment.Of(new AdjustmentKindId(kind), place, amount, forFinding, sake));

    public Task<EntryId> EndAsync(EntryId finding, FindingEnding ending, string? words = null) =>
        PutAsync(FindingEnded.Of(finding, ending, words));

    public Task<EntryId> LeaveAloneAsync(Zone zone, string why) => PutAsync(LeaveAlone.Of(new Place(zone), why));

    public Task<EntryId> RiskAsync(string words, Zone zone) => PutAsync(Risk.Of(words, zone));

    public Task<EntryId> CloseRiskAsync(EntryId risk, RiskOutcome outcome) => PutAsync(RiskClosed.Of(risk, outcome));

    public async Task EndsAsync(VerdictKind verdict, string why, string words)
    {
        await PutAsync(Stopped.Of(why)).ConfigureAwait(false);
        await PutAsync(Verdict.Of(verdict, words)).ConfigureAwait(false);
    }

    private async Task<EntryId> PutAsync<T>(Outcome<T> entry)
        where T : BenchEntry
    {
        var fact = DemoAnswer.Of(
            await book.RecordAsync(teacher, reed, DemoAnswer.Of(entry), clock.Operation(), ct).ConfigureAwait(false));
        clock.Pass(BetweenEntries);
        return fact.Root;
    }
}

/// <summary>The demo is written so that every answer is yes; anything else is a mistake in it.</summary>
internal static class DemoAnswer
{
    public static T Of<T>(Outcome<T> outcome) => outcome switch
    {
        Outcome<T>.Done(var value) => value,
        Outcome<T>.Refused(var problems) => throw new InvalidOperationException("The demo was refused: " + string.Join("; ", problems)),
        _ => throw new InvalidOperationException("The demo got the answer " + outcome.GetType().Name),
    };
}
