using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Proposals;

namespace ReedClinic.Domain.Tests.Diagnosis.Proposals;

/// <summary>What each cause warns of beginning with is never what is begun with. The cases are made from the catalogue’s own rows, seeded.</summary>
public sealed class NeverFirstTests
{
    [Fact]
    public void On_the_catalogues_own_cases_nothing_is_begun_with_that_is_never_first()
    {
        var runs = Cases.Shipped.Causes.Select(cause => (cause, Next: Cases.Next(Cases.Now([.. Cases.Own(cause).Select(sign => Cases.Present(sign.Value))])))).ToList();
        Print("own", runs);

        Assert.Empty(Broken(runs));
    }

    /// <summary>What was looked at before is taken as right, but for the one look that would have shown the cause; and once more with nothing looked at.</summary>
    [Fact]
    public void On_two_thousand_and_more_spoilt_cases_nothing_is_begun_with_that_is_never_first()
    {
        var random = new Random(1927);
        var reeds = Enumerable.Range(0, 28).SelectMany(_ => Cases.Shipped.Causes).Select(cause => (cause, Now: Cases.Now(Cases.Spoilt(cause, random)) with { Checks = Before(cause) })).ToList();
        var runs = reeds.Select(reed => (reed.cause, Next: Cases.Next(reed.Now))).ToList();
        var unlooked = reeds.Select(reed => (reed.cause, Next: Cases.Next(reed.Now with { Checks = default }))).ToList();
        Print("spoilt", runs);
        Print("spoilt, nothing looked at", unlooked);

        Assert.InRange(runs.Count, 2000, 3000);
        Assert.Empty(Broken(runs));
        Assert.Empty(Broken(unlooked));
    }

    private static FirstChecks Before(Cause cause) => cause.Id.Value switch
    {
        "under-soaked" or "closed-by-drying" => FirstChecks.All with { Wet = false },
        "instrument" => FirstChecks.All with { Instrument = false },
        "player" => FirstChecks.All with { Player = false },
        _ => FirstChecks.All,
    };

    private static List<string> Broken(IEnumerable<(Cause Cause, NextSteps Next)> runs) =>
    [
        .. from run in runs
           where new[] { run.Next.First, run.Next.FirstDeed }.Any(first => first?.Adjustment is { } kind && run.Cause.NeverFirst.Contains(kind))
           select $"{run.Cause.Id.Value}: {run.Next.FirstDeed!.Adjustment!.Value.Value}",
    ];

    private static void Print(string what, List<(Cause Cause, NextSteps Next)> runs)
    {
        double Share(Func<(Cause Cause, NextSteps Next), bool> of) => runs.Count(run => of(run)) / (double)runs.Count;
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{what}: {runs.Count} cases; begun with what is never first: {Broken(runs).Count}; first is a look {Share(run => run.Next.First.Kind == ProposalKind.Look):0.0 %}, "
            + $"to stop {Share(run => run.Next.First.Kind == ProposalKind.Stop):0.0 %}; first deed among the cause’s steps {Share(run => run.Next.FirstDeed?.Adjustment is { } kind && run.Cause.Steps.Contains(kind)):0.0 %}, "
            + $"among all deeds a step {Share(run => run.Next.Proposals.Any(one => one.Adjustment is { } kind && run.Cause.Steps.Contains(kind))):0.0 %}, no deed {Share(run => run.Next.FirstDeed is null):0.0 %}; "
            + string.Join(", ", Broken(runs).GroupBy(one => one).OrderByDescending(group => group.Count()).Select(group => $"{group.Key} {group.Count()}")));
    }
}
