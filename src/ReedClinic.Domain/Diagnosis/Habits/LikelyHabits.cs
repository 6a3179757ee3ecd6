using System.Globalization;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Diagnosis.Habits;

/// <summary>On how many of a student’s reeds something was there.</summary>
/// <param name="Kind">The kind of finding, a fault or a strength.</param>
/// <param name="Found">On so many it was there.</param>
/// <param name="Looked">On so many it was looked for; not looked is not absent.</param>
public readonly record struct Recurs(FindingKindId Kind, int Found, int Looked)
{
    /// <summary>The same on the reeds that are taught from now; null where they aren’t told from the others. What none of them has points to nothing.</summary>
    public (int Found, int Looked)? Here { get; init; }
}

/// <summary>A guess at what the student does at the desk, from what recurs in their reeds.</summary>
/// <param name="Id">Its lasting name.</param>
/// <param name="Sentence">The guess: always a perhaps, since nobody saw how the reeds were made.</param>
/// <param name="Evidence">What it rests on, in counts.</param>
/// <param name="CheckYourself">How the student can tell for themselves, and what would tell otherwise.</param>
/// <param name="Tests">The tests for that.</param>
/// <param name="Weight">How well it is borne out, from 0 to 1. It orders guesses and is no chance.</param>
/// <param name="Mark">How it is known that the one leads to the other.</param>
public sealed record LikelyHabit(
    string Id, string Sentence, string Evidence, string CheckYourself, IReadOnlyList<TestCard> Tests, double Weight, EvidenceMark Mark);

/// <summary>What was guessed.</summary>
/// <param name="Habits">The guesses, first what explains most, then the best borne out; often none.</param>
/// <param name="Sentence">A plain sentence about them.</param>
public sealed record HabitGuess(IReadOnlyList<LikelyHabit> Habits, string Sentence);

/// <summary>Guesses, from what recurs, at the habit of the knife or the thread behind it. Every such link is common practice, without a source.</summary>
public static class LikelyHabits
{
    /// <summary>Something recurs from so many reeds on; this program’s own default.</summary>
    public const int LeastReeds = 2;

    /// <summary>And from this share of the reeds on which it was looked for; this program’s own default.</summary>
    public const double LeastShare = 0.4;

    private const int Most = 3;

    /// <summary>The guesses.</summary>
    /// <param name="catalogue">The catalogue, for the tests.</param>
    /// <param name="tallies">What was found how often; in any order, one for each kind.</param>
    public static HabitGuess Of(Catalogue catalogue, IEnumerable<Recurs> tallies)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(tallies);
        var known = tallies.Where(IsSound).GroupBy(one => one.Kind).ToDictionary(group => group.Key, group => group.MaxBy(one => one.Looked));
        if (known.Count == 0)
        {
            return new HabitGuess([], "Nothing has been looked at yet, so there is nothing to guess from.");
        }

        // What explains two things that recur says more than what explains one.
        var guesses = HabitTable.All.Select(way => (Marks: way.Needs.Length, Habit: Guess(catalogue, way, known))).Where(one => one.Habit is not null)
            .OrderByDescending(one => one.Marks).ThenByDescending(one => one.Habit!.Weight).ThenBy(one => one.Habit!.Id, StringComparer.Ordinal)
            .Select(one => one.Habit!).Take(Most).ToList();
        return new HabitGuess(guesses, guesses.Count == 0
            ? "Nothing recurs that points to one habit."
            : "Perhaps only: nobody at the bench saw how these reeds were made. The tests beside each guess tell more than the guess.");
    }

    private static bool IsSound(Recurs one) => one is { Kind.Value: not null, Found: >= 0, Looked: > 0 } && one.Found <= one.Looked;

    private static bool DoesRecur(Recurs one) => one.Found >= LeastReeds && one.Found >= LeastShare * one.Looked && one.Here is not { Found: 0 };

    private static LikelyHabit? Guess(Catalogue catalogue, HabitWay way, Dictionary<FindingKindId, Recurs> known)
    {
        // Each of its marks must recur, one of several where there is a choice; whatever speaks against it must not.
        List<Recurs> found = [];
        foreach (var choice in way.Needs)
        {
            var best = Of(known, choice).Where(DoesRecur).OrderByDescending(Least).FirstOrDefault();
            if (best.Kind.Value is null)
            {
                return null;
            }

            found.Add(best);
        }

        var against = Of(known, way.Against).Select(Least).DefaultIfEmpty().Max();
        var weight = Math.Pow(found.Aggregate(1.0, (product, one) => product * Least(one)), 1.0 / found.Count) - against;
        var tests = way.Tests.Select(test => catalogue.Find(new TestCardId(test))).OfType<TestCard>().Where(card => !card.Retired).ToList();
        return weight <= 0 ? null : new LikelyHabit(
            way.Id, $"Perhaps {way.Perhaps}", string.Join("; ", found.Select(Say)) + ".", way.Check, tests, weight, EvidenceMark.CommonPractice);
    }

    private static IEnumerable<Recurs> Of(Dictionary<FindingKindId, Recurs> known, string[] kinds) =>
        kinds.Select(kind => new FindingKindId(kind)).Where(known.ContainsKey).Select(kind => known[kind]);

    /// <summary>
    /// The share that is borne out at the least: Wilson’s lower limit at 95 % (Wilson 1927), so that eight of twelve weigh more than two of three.
    /// </summary>
    internal static double Least(Recurs one)
    {
        const double z = 1.959963984540054;
        var (n, share) = ((double)one.Looked, one.Found / (double)one.Looked);
        var spread = z * Math.Sqrt((share * (1 - share) / n) + (z * z / (4 * n * n)));
        return Math.Max(0, (share + (z * z / (2 * n)) - spread) / (1 + (z * z / n)));
    }

    private static string Say(Recurs one) => one.Here is not var (found, looked)
        ? string.Create(CultureInfo.InvariantCulture, $"{FindingCatalogue.NameOf(one.Kind)}: on {one.Found} of the {one.Looked} reeds that were looked at for it")
        : string.Create(CultureInfo.InvariantCulture, $"{FindingCatalogue.NameOf(one.Kind)}: on {OfThisBatch(found, looked)}{Before(one.Found - found, one.Looked - looked)}");

    private static string OfThisBatch(int found, int looked) => looked == 1
        ? "the one reed of this batch that was looked at for it"
        : string.Create(CultureInfo.InvariantCulture, $"{found} of the {looked} reeds of this batch that were looked at for it");

    private static string Before(int found, int looked) => looked == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", and on {found} of the {looked} before");
}
