using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>Advice about places: what is thin already, what is never hurried, what doesn’t last.</summary>
internal static class PlaceRules
{
    private static readonly (string Kind, Zone[] Zones, string Line, string Reason, EvidenceMark Mark)[] Thin =
    [
        ("tip-centre-thin", [Zone.TipCentre], "The centre of the tip is thin already.",
            "Sides and corners may still be worked; the centre carries the high notes.", EvidenceMark.CommonPractice),
        ("tip-even-across", [Zone.TipCentre], "The tip is thin right across already.",
            "Only its sides and corners may still be worked, so that it falls away from the centre.", EvidenceMark.CommonPractice),
        ("tip-thin", [Zone.TipCentre], "The tip is thin already.",
            "Its centre has nothing left to give; the sides may still be worked.", EvidenceMark.CommonPractice),
        ("heart-thin", [Zone.HeartCentre], "The heart is thin already.",
            "Never the heart itself: thinning the sides of the tip and just behind the heart makes it thick by comparison, within limits.",
            EvidenceMark.Published(TradeTexts.ReedDefinitions)),
        ("spine-scraped", [Zone.Spine], "The spine has gone already.",
            "Opening and high notes stand on what is left of it.", EvidenceMark.Published(TradeTexts.PartsOfTheReed)),
        ("rails-cut", [Zone.Rails], "The rails are cut already.",
            "They help the reed to seal and to keep its shape.", EvidenceMark.Published(TradeTexts.PartsOfTheReed)),
    ];

    internal static AdviceLine? AgainstWinding(AdviceMatter matter)
    {
        if (!matter.Plans(kind => kind.Value == "realign")
            || (matter.Reed.OverlapAgrees is not false && !matter.Found("slipped-against-winding"))
            || matter.DoneSince(0, done => done.AdjustmentKind.Value == "realign"))
        {
            return null;
        }

        return new AdviceLine(
            new AdviceId("against-winding/start"), AdviceKind.AgainstWinding, "It leans against the winding, so it will creep back.",
            "Write it down, work round it, and teach it at tying; setting the overlap isn’t the first thing to try here.",
            EvidenceMark.CommonPractice);
    }

    internal static AdviceLine? ThinAlready(AdviceMatter matter)
    {
        foreach (var thin in Thin)
        {
            if (matter.Standing(thin.Kind) is { } found && Works(matter, thin.Zones)
                && !matter.DoneSince(found.Fact.Sequence, done => Works(new PlannedWork(done.AdjustmentKind, done.Place), thin.Zones)))
            {
                return new AdviceLine(
                    AdviceMatter.IdOf("thin-already", found.Fact.Root), AdviceKind.ThinAlready, thin.Line, thin.Reason, thin.Mark);
            }
        }

        return null;
    }

    internal static AdviceLine? NeverHurry(AdviceMatter matter)
    {
        if (matter.Planned is not { } plan || !WorkKinds.TakesCane(plan.Kind) || ThinAlready(matter) is not null)
        {
            return null;
        }

        var (name, line, reason, mark) = Careful(plan);
        var zone = name switch { "heart" => Zone.HeartCentre, "spine" => Zone.Spine, _ => Zone.Rails };
        return name is null
            || matter.Log.Risks.Any(risk => risk.Fact.Now.Zone == zone)
            || matter.DoneSince(0, done => Works(new PlannedWork(done.AdjustmentKind, done.Place), [zone]))
            ? null
            : new AdviceLine(new AdviceId("never-hurry/" + name), AdviceKind.NeverHurry, line, reason + " Name the risk first.", mark);
    }

    private static (string? Name, string Line, string Reason, EvidenceMark Mark) Careful(PlannedWork plan) => plan switch
    {
        _ when Works(plan, [Zone.HeartCentre]) => (
            "heart", "The centre of the heart is the last place to take cane from.",
            "Pitch, resistance and steadiness fall a long way with a stroke or two here, and can’t be put back.",
            EvidenceMark.Published(TradeTexts.ReedDefinitions)),
        _ when Works(plan, [Zone.Spine]) => (
            "spine", "The spine holds the opening and the high notes.",
            "A stroke or two at most: the opening can collapse.", EvidenceMark.CommonPractice),
        _ when Works(plan, [Zone.Rails]) => (
            "rails", "The rails are almost never worked.", "Leaks and a collapsed opening follow.", EvidenceMark.CommonPractice),
        _ => (null, "", "", EvidenceMark.CommonPractice),
    };

    private static bool Works(AdviceMatter matter, Zone[] zones) => matter.Planned is { } plan && Works(plan, zones);

    private static bool Works(PlannedWork plan, Zone[] zones) =>
        WorkKinds.TakesCane(plan.Kind) && WorkKinds.ZonesOf(plan).Intersect(zones).Any();
}
