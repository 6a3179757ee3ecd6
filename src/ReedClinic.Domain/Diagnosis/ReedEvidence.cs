using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Diagnosis.Settling;
using ReedClinic.Domain.Effects;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>
/// Everything that is reasoned of one reed as it stands: read from the student’s marks, the arrival and the bench log, never written back.
/// </summary>
/// <param name="Now">What is known of it, with the likely causes.</param>
/// <param name="Next">What can be done next.</param>
/// <param name="Settling">Whether it needs work or breaking in.</param>
/// <param name="Unlooked">What isn’t checked yet and would tell most.</param>
/// <param name="Said">What a teacher said of causes on this reed.</param>
public sealed record ReedEvidence(
    ReedNow Now, NextSteps Next, SettlingAnswer Settling, IReadOnlyList<WouldTell> Unlooked, IReadOnlyDictionary<CauseId, CauseJudged> Said)
{
    /// <summary>So many causes are shown; more would only be noise.</summary>
    public const int MostCauses = 8;

    /// <summary>So many tests that weren’t made are shown.</summary>
    public const int MostUnlooked = 5;

    private const double LeastChance = 0.05;

    private static readonly HashSet<string> BesideTheReed = ["instrument", "player", "other-climate", "other-pitch-standard", "low-notes-flat"];

    /// <summary>True when nothing was seen, tried or marked yet.</summary>
    public bool IsBare => Now.Causes.Counted.Count == 0;

    /// <summary>The causes that are worth a line: what the evidence lifts, and what a teacher spoke of. None while nothing was seen.</summary>
    public IReadOnlyList<LikelyCause> Likely
    {
        get
        {
            var most = Now.Causes.Causes.Where(one => !IsBesideTheReed(one.Cause) && IsWorthALine(one)).Take(MostCauses).ToHashSet();
            return [.. Now.Causes.Causes.Where(one => most.Contains(one) || (!IsBesideTheReed(one.Cause) && Said.ContainsKey(one.Cause.Id)))];
        }
    }

    /// <summary>
    /// The causes that are themselves what was seen at the bench: they were found, and only what is behind them is weighed. What is only
    /// “a little” so counts where the student says the same; what a teacher said wasn’t it doesn’t.
    /// </summary>
    public IReadOnlyList<LikelyCause> Found { get; private init; } = [];

    /// <summary>What was found, and behind it what is likely: a fault that was itself seen never stands behind one that is only weighed.</summary>
    public IEnumerable<LikelyCause> Foremost => Found.Concat(Likely.Except(Found));

    /// <summary>What isn’t the reed, always beside what is: its instrument, how it is played, air and tuning.</summary>
    public IEnumerable<LikelyCause> BesideReed => Now.Causes.Causes.Where(one => IsBesideTheReed(one.Cause));

    /// <summary>Reads a reed.</summary>
    /// <param name="catalogue">The catalogue, with the studio’s own changes and counts.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="batch">Its batch.</param>
    /// <param name="learned">What passes have taught here; null where nothing is known.</param>
    public static ReedEvidence Of(Catalogue catalogue, BenchLog log, Reed reed, Batch batch, LearnedEffects? learned = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(reed);
        var now = ReedReading.Of(catalogue, log, reed, batch, effects: learned?.ForProposals());
        return new ReedEvidence(
            now,
            NextAdjustments.For(now),
            SettlingAnswers.For(new SettlingFacts { MinutesPlayed = reed.MinutesPlayed, GettingBetter = Rested.GotBetter(log), Seen = now.Causes.Counted }),
            WouldTell.Of(catalogue, now.Causes, MostUnlooked),
            CauseJudged.Last(log))
        {
            Found = [.. FoundOf(catalogue, now.Causes, reed.Scales, CauseJudged.Last(log))],
        };
    }

    private static IEnumerable<LikelyCause> FoundOf(
        Catalogue catalogue, LikelyCauses causes, ReedScales marks, IReadOnlyDictionary<CauseId, CauseJudged> said)
    {
        var complained = Sightings.Of(catalogue, marks).Where(one => one.Present).Select(one => one.Sign).ToHashSet();
        var seen = causes.Counted.Where(one => one is { Present: true, By: Teller.Bench } && (one.Sure || complained.Contains(one.Sign)))
            .SelectMany(one => catalogue.LinksOf(one.Sign)).Where(link => link.Belonging == Belonging.Itself).Select(link => link.Cause).ToHashSet();
        return causes.Causes.Where(one => seen.Contains(one.Cause.Id) && !IsBesideTheReed(one.Cause)
            && !(said.TryGetValue(one.Cause.Id, out var word) && word.Answer == CauseAnswer.Dismissed));
    }

    /// <summary>Whether a cause lies beside the reed: in the instrument, the player, the air or the tuning.</summary>
    /// <param name="cause">The cause.</param>
    public static bool IsBesideTheReed(Cause cause)
    {
        ArgumentNullException.ThrowIfNull(cause);
        return BesideTheReed.Contains(cause.Id.Value);
    }

    private bool IsWorthALine(LikelyCause one) => !IsBare && one.Chance >= LeastChance && one.Chance > one.Cause.Prior.Value;
}
