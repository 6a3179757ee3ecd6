using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Diagnosis.Settling;

/// <summary>Something that speaks for breaking in, for work, or for a tired reed.</summary>
/// <param name="Words">The clue in plain words.</param>
/// <param name="Settling">How many times as likely it is where a reed is breaking in, against one that needs work.</param>
/// <param name="Work">The same where it needs work.</param>
/// <param name="Tired">The same where it is tired.</param>
/// <param name="Mark">How the statement is known. The three weights are this program’s own defaults.</param>
public sealed record Clue(string Words, double Settling, double Work, double Tired, EvidenceMark Mark)
{
    private const int Hour = 60;

    private static readonly EvidenceMark NewReeds = EvidenceMark.Published(TradeTexts.TeachingHandbook);
    private static readonly EvidenceMark NextDay = EvidenceMark.Published("woodwind.org forum, message 21548");
    private static readonly EvidenceMark Life = EvidenceMark.Published("oboe page on reed life; maker’s newsletters on reed life");
    private static readonly EvidenceMark Cycles = EvidenceMark.Published("Akahoshi & Obataya, on wetting and drying cane again and again (Arundo donax)");
    private static readonly EvidenceMark Worn = EvidenceMark.Published(TradeTexts.WornReeds);

    /// <summary>What each weight is known by.</summary>
    public static EvidenceMark WeightMark => EvidenceMark.OwnDefault;

    /// <summary>The weight for one of the three.</summary>
    /// <param name="state">Which.</param>
    public double Weight(SettlingState state) => state switch
    {
        SettlingState.StillSettling => Settling,
        SettlingState.NeedsWork => Work,
        _ => Tired,
    };

    internal static IEnumerable<Clue> Of(SettlingFacts facts) =>
        new[] { Played(facts.MinutesPlayed), Wetted(facts.WetDryCycles), Better(facts.GettingBetter) }.Concat(Signs(facts)).OfType<Clue>();

    private static Clue? Played(int? minutes) => minutes switch
    {
        null or < 0 => null,
        < SettlingAnswers.NewUntilMinutes => new("It has hardly been played: a new reed’s opening narrows with playing, and it gets easier.", 4, 1, 0.1, NewReeds),
        < 10 * Hour => new("It has been played for some hours: what breaking in does is mostly done.", 0.5, 1, 0.3, NewReeds),
        <= 20 * Hour => new("It has been played for about as long as many reeds last: ten to fifteen hours by one account, twenty and more by another.", 0.15, 1, 1.5, Life),
        _ => new("It has been played for longer than most reeds last: ten to twenty-five hours are told.", 0.05, 1, 4, Life),
    };

    private static Clue? Wetted(int? cycles) => cycles switch
    {
        null or < 0 => null,
        < 5 => new("It was wetted and dried a few times only: cane changes for good with the first of them.", 2.5, 1, 0.3, Cycles),
        < 15 => new("It was wetted and dried often enough to have changed most of what it will.", 0.6, 1, 0.7, Cycles),
        _ => new("It was wetted and dried many times: what holds dry cane stiff has been washed out.", 0.2, 1, 2, Cycles),
    };

    private static Clue? Better(bool? better) => better switch
    {
        true => new("It played better after a rest, with no work between.", 4, 0.5, 0.2, EvidenceMark.CommonPractice),
        false => new("It played no better after a rest.", 0.4, 1.5, 1.2, EvidenceMark.CommonPractice),
        _ => null,
    };

    private static IEnumerable<Clue?> Signs(SettlingFacts facts)
    {
        bool Has(params string[] signs) => facts.Seen.Any(one => one.Present && signs.Contains(one.Sign.Value));
        yield return SettlingAnswers.IsMerelyHard(facts.Seen) ? new("It is hard and nothing else.", 3, 1, 0.5, NewReeds) : null;
        yield return Has("hard-next-day") ? new("It was right one day and hard the next: pressed fibres swell back overnight.", 3, 1, 0.5, NextDay) : null;
        yield return Has("opening-wide") ? new("Its opening is wide, as a new reed’s often is.", 1.5, 1, 0.3, NewReeds) : null;
        yield return InTheCane(facts) ? new("A fault was seen in the cane itself, and time doesn’t mend that.", 0.2, 3, 0.8, EvidenceMark.CommonPractice) : null;
        yield return Has("feels-easy") ? new("It is easy already, and playing in makes no reed harder.", 0.3, 1.2, 1.5, EvidenceMark.CommonPractice) : null;
        yield return Has("worn", "sounds-dead", "collapses-loud") ? new("It sounds or looks worn.", 0.2, 1, 4, Worn) : null;
        yield return Has("closes-in-play") ? new("It closes while it is played, which new and old reeds do.", 0.8, 1, 1.8, EvidenceMark.Published(TradeTexts.ClosingInPlay)) : null;
    }

    /// <summary>A finding of the bench log that is there for sure and no matter of opening, dirt or wear.</summary>
    private static bool InTheCane(SettlingFacts facts) => facts.Seen.Any(one => one is { Present: true, Sure: true, By: Teller.Bench }
        && FindingCatalogue.Find(new FindingKindId(one.Sign.Value)) is { Zone: not (Reeds.Zone.Opening or Reeds.Zone.Inside or Reeds.Zone.Cork) }
        && one.Sign.Value is not "worn");
}
