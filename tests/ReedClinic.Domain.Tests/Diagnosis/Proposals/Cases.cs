using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Tests.Diagnosis.Proposals;

/// <summary>Reeds made up from the catalogue’s own rows, and reeds with only some things known of them.</summary>
internal static class Cases
{
    internal static readonly Catalogue Shipped = Catalogue.Shipped;

    internal static AdjustmentKindId Kind(string id) => new(id);

    internal static Sighting Present(string sign) => new(new SignId(sign), true);

    internal static Sighting Absent(string sign) => new(new SignId(sign), false);

    /// <summary>A reed on which these signs hold, with everything looked at that comes before a knife.</summary>
    internal static ReedNow With(params string[] signs) => Now([.. signs.Select(Present)]);

    internal static ReedNow Now(params Sighting[] seen) => new(Shipped, LikelyCauses.Of(Shipped, seen)) { Checks = FirstChecks.All };

    internal static NextSteps Next(ReedNow now) => NextAdjustments.For(now);

    internal static NextSteps Next(params string[] signs) => NextAdjustments.For(With(signs));

    internal static IEnumerable<string?> Deeds(this NextSteps next) => next.Proposals.Where(one => one.Adjustment is not null).Select(one => one.Adjustment?.Value);

    internal static IEnumerable<string?> Tests(this NextSteps next) => next.Proposals.Where(one => one.Kind == ProposalKind.Look).Select(one => one.Test?.Value);

    internal static Proposal? Of(this NextSteps next, string id) => next.Proposals.SingleOrDefault(one => one.Adjustment == Kind(id));

    internal static string? WhyNot(this NextSteps next, string id) => next.HeldBack.FirstOrDefault(one => one.Adjustment == Kind(id))?.Reason;

    internal static bool IsCane(this Proposal one) => one.Kind == ProposalKind.Cane;

    /// <summary>All signs of a cause; of two that can’t both hold, the closer one.</summary>
    internal static List<SignId> Own(Cause cause)
    {
        List<SignId> own = [];
        foreach (var link in Shipped.LinksOf(cause.Id).OrderByDescending(link => link.Belonging))
        {
            if (Shipped.Find(link.Sign)!.Opposite is not { } opposite || !own.Contains(opposite))
            {
                own.Add(link.Sign);
            }
        }

        return own;
    }

    /// <summary>The same with two signs not noticed, one that has nothing to do with it, and one of its tests that says otherwise.</summary>
    internal static Sighting[] Spoilt(Cause cause, Random random)
    {
        var signs = Own(cause).OrderBy(_ => random.Next()).Skip(2).ToList();
        var contradicted = signs.Find(sign => !Shipped.Find(sign)!.Test.Value.StartsWith("look-", StringComparison.Ordinal));
        var unrelated = Shipped.Signs.Where(sign => Shipped.LinksOf(cause.Id).All(link => link.Sign != sign.Id)).ElementAt(random.Next(Shipped.Signs.Count - 12));
        return
        [
            .. signs.Where(sign => sign != contradicted).Append(unrelated.Id).Select(sign => new Sighting(sign, true)),
            .. contradicted.Value is null ? [] : new[] { new Sighting(contradicted, false) },
        ];
    }
}
