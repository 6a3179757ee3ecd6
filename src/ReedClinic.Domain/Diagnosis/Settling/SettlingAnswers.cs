using System.Globalization;

namespace ReedClinic.Domain.Diagnosis.Settling;

/// <summary>What may be the case with a reed that isn’t right.</summary>
public enum SettlingState
{
    /// <summary>It is still breaking in: time and short sessions.</summary>
    StillSettling,

    /// <summary>It needs work.</summary>
    NeedsWork,

    /// <summary>It is tired.</summary>
    Tired,
}

/// <summary>What is known of how a reed was played and tried. Everything may be left unsaid.</summary>
public sealed record SettlingFacts
{
    /// <summary>How long it has been played, in minutes.</summary>
    public int? MinutesPlayed { get; init; }

    /// <summary>How often it was wetted and dried again.</summary>
    public int? WetDryCycles { get; init; }

    /// <summary>Whether it got better over a rest by itself.</summary>
    public bool? GettingBetter { get; init; }

    /// <summary>What was seen, and what was looked for and not there.</summary>
    public IReadOnlyList<Sighting> Seen { get; init; } = [];
}

/// <summary>How likely one of the three is.</summary>
/// <param name="State">Which.</param>
/// <param name="Chance">How likely, from 0 to 1; the three add up to 1.</param>
/// <param name="Low">The least it is when the clues count half or half as much again, or any one of them is left out.</param>
/// <param name="High">The most it is then.</param>
public sealed record StateChance(SettlingState State, double Chance, double Low, double High);

/// <summary>An answer to “does it need work, or breaking in?”</summary>
/// <param name="Chances">The three, the likeliest first.</param>
/// <param name="Sentence">The answer, always as a perhaps.</param>
/// <param name="Clues">What it rests on.</param>
/// <param name="WouldTell">What isn’t known and would tell.</param>
public sealed record SettlingAnswer(IReadOnlyList<StateChance> Chances, string Sentence, IReadOnlyList<Clue> Clues, IReadOnlyList<string> WouldTell)
{
    /// <summary>False where it can’t be told yet.</summary>
    public bool IsTold => Chances[0].Low > 0.5;

    /// <summary>How far the numbers can be relied on.</summary>
    public const string Footing = "What each clue weighs is this program’s own default, not a measurement.";
}

/// <summary>
/// Does a reed need work, or breaking in? Clues are weighed against each other as odds. Their weights are this program’s own, so each chance
/// is given with how far it moves when they are wrong.
/// </summary>
public static class SettlingAnswers
{
    /// <summary>Some five short sessions: until then a reed is new. This program’s own default.</summary>
    public const int NewUntilMinutes = 90;

    private static readonly HashSet<string> HardnessOfNewReeds =
        ["feels-hard", "needs-biting", "tires-lip", "soft-fails", "starts-late", "low-late", "tongue-thuds", "opening-wide", "sounds-dull", "hard-next-day"];

    // Before anything is known; this program’s own default.
    private static readonly double[] Before = [0.3, 0.5, 0.2];

    /// <summary>Whether a reed is new by the minutes it was played; false where they aren’t known.</summary>
    /// <param name="minutes">The minutes.</param>
    public static bool IsNew(int? minutes) => minutes < NewUntilMinutes;

    /// <summary>Whether it is hard and nothing else was found that hardness doesn’t bring with it.</summary>
    /// <param name="seen">What was seen.</param>
    public static bool IsMerelyHard(IEnumerable<Sighting> seen)
    {
        ArgumentNullException.ThrowIfNull(seen);
        var present = seen.Where(one => one.Present).Select(one => one.Sign.Value).ToList();
        return present.Contains("feels-hard") && present.TrueForAll(HardnessOfNewReeds.Contains);
    }

    /// <summary>The answer.</summary>
    /// <param name="facts">What is known.</param>
    public static SettlingAnswer For(SettlingFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var clues = Clue.Of(facts).ToList();
        var (low, high) = Bounds(clues);
        var middle = Weigh(clues, 1);
        var chances = Enum.GetValues<SettlingState>().Select((state, at) => new StateChance(state, middle[at], low[at], high[at]))
            .OrderByDescending(one => one.Chance).ToList();
        var told = clues.Count > 0 && chances[0].Low > 0.5;
        return new SettlingAnswer(chances, Say(told, clues.Count > 0, chances[0], facts), clues, [.. WouldTell(facts)]);
    }

    private static double[] Weigh(IEnumerable<Clue> clues, double power)
    {
        // In logarithms, so that many clues don’t run under.
        var log = Before.Select(one => Math.Log(one)).ToArray();
        foreach (var clue in clues)
        {
            for (var at = 0; at < log.Length; at++)
            {
                log[at] += power * Math.Log(clue.Weight((SettlingState)at));
            }
        }

        var top = log.Max();
        var weights = log.Select(one => Math.Exp(one - top)).ToArray();
        return [.. weights.Select(one => one / weights.Sum())];
    }

    private static (double[] Low, double[] High) Bounds(List<Clue> clues)
    {
        List<double[]> all = [Weigh(clues, 1), Weigh(clues, 0.5), Weigh(clues, 1.5), .. clues.Select(left => Weigh(clues.Where(clue => clue != left), 1))];
        return ([.. Before.Select((_, at) => all.Min(one => one[at]))], [.. Before.Select((_, at) => all.Max(one => one[at]))]);
    }

    private static string Say(bool told, bool any, StateChance top, SettlingFacts facts)
    {
        if (facts.Seen.Any(one => one is { Present: true, Sign.Value: "dry" or "crow-silent" }))
        {
            return "Perhaps it is only dry: wet it for a few minutes and try it again before anything else is said of it.";
        }

        if (!any)
        {
            return "Nothing is known of it yet, so this can’t be told: waiting and trying it again costs nothing.";
        }

        var chance = string.Create(CultureInfo.InvariantCulture, $"{Math.Round(top.Chance * 10):0} in 10, between {Math.Floor(top.Low * 10):0} and {Math.Ceiling(top.High * 10):0}");
        return (told, top.State) switch
        {
            (false, _) => $"This can’t be told yet ({Name(top.State)}: {chance}): play it in for a few short sessions first, since that can be undone and cane can’t.",
            (_, SettlingState.StillSettling) => $"Perhaps it is still breaking in ({chance}): play it for ten minutes a day for a few days, and try it again before any cane goes.",
            (_, SettlingState.NeedsWork) => $"Perhaps it needs work ({chance}): waiting alone will hardly mend it.",
            _ => $"Perhaps it is tired ({chance}): clean it once, and have another one ready.",
        };
    }

    private static string Name(SettlingState state) => state switch
    {
        SettlingState.StillSettling => "perhaps it is breaking in",
        SettlingState.NeedsWork => "perhaps it needs work",
        _ => "perhaps it is tired",
    };

    private static IEnumerable<string> WouldTell(SettlingFacts facts)
    {
        if (facts.MinutesPlayed is null)
        {
            yield return "how long it has been played";
        }

        if (facts.WetDryCycles is null)
        {
            yield return "how often it was wetted and dried";
        }

        if (facts.GettingBetter is null)
        {
            yield return "whether it plays better after a rest";
        }

        if (facts.Seen.Count == 0)
        {
            yield return "how it plays, and what is seen on it against a lamp";
        }
    }
}
