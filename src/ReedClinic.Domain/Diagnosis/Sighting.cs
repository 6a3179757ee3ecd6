using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>Who told of a sign. What is told at the bench outweighs what the student said.</summary>
public enum Teller
{
    /// <summary>The student, at the intake.</summary>
    Student,

    /// <summary>Whoever had the reed in hand.</summary>
    Bench,
}

/// <summary>A sign that was noticed, or looked for and not there. A sign without a sighting was not looked for.</summary>
/// <param name="Sign">The sign.</param>
/// <param name="Present">True when it is there, false when it was looked for and isn’t.</param>
/// <param name="Sure">False for what is only suspected, only “a little” so, or denied by the student alone.</param>
/// <param name="By">Who told of it.</param>
/// <param name="Order">The later of two, for the same teller, counts.</param>
/// <param name="WasThere">True for what isn’t there any more: it was found, and has gone.</param>
/// <param name="Slight">True for what is unsure because it is only “a little” so: it was seen all the same, and weighs more than what is only suspected.</param>
public readonly record struct Sighting(
    SignId Sign, bool Present, bool Sure = true, Teller By = Teller.Bench, int Order = 0, bool WasThere = false, bool Slight = false);

/// <summary>Reads sightings from what is on record. Those of signs that were retired are read too, so that it is told that they are left out.</summary>
public static class Sightings
{
    /// <summary>What the student’s marks tell. What isn’t marked tells nothing.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="marks">The marks.</param>
    /// <returns>The sightings.</returns>
    public static IEnumerable<Sighting> Of(Catalogue catalogue, ReedScales marks)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(marks);
        return from sign in catalogue.Parts.Signs
               from route in sign.KnownBy.OfType<SignRoute.ByComplaint>()
               let mark = marks[route.Aspect]?.Value
               where mark is not null
               let along = route.Above ? mark.Value : -mark.Value
               select new Sighting(sign.Id, along > 0, along >= 2, Teller.Student, Slight: along == 1);
    }

    /// <summary>What the entries of a bench log tell. What wasn’t looked for tells nothing.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="standing">The entries that stand, none of them taken back.</param>
    /// <param name="crow">What a crow is aimed at.</param>
    /// <param name="place">Which of two counts as the later; their sequence unless said. What is put right keeps the place of what it puts right.</param>
    /// <returns>The sightings.</returns>
    public static IEnumerable<Sighting> Of(Catalogue catalogue, IEnumerable<BenchEntry> standing, CrowTarget crow, Func<BenchEntry, int>? place = null)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(standing);
        return from entry in standing
               from sign in catalogue.Parts.Signs
               from route in sign.KnownBy
               let seen = Read(entry, route, crow)
               where seen is not null
               select new Sighting(
                   sign.Id, seen.Value.Present, seen.Value.Sure, Teller.Bench, place?.Invoke(entry) ?? entry.Sequence,
                   Slight: entry is Test && seen.Value is { Present: true, Sure: false });
    }

    private static (bool Present, bool Sure)? Read(BenchEntry entry, SignRoute route, CrowTarget crow) => (entry, route) switch
    {
        (Test { Step: { } step } test, SignRoute.ByTest by) when by.Test == test.TestKind => (by.Steps.Contains(step), Plainly(test.TestKind, step)),
        (Test { TestKind: TestKind.Crow, Pitch: { } pitch }, SignRoute.ByPitch { Test: TestKind.Crow } by) => Side(pitch.Against(crow), by.Above),
        (Finding found, SignRoute.ByFinding by) when by.Finding == found.FindingKind && found.Character == FindingCharacter.Fault =>
            (true, found.Certainty == Certainty.Certain),
        (LookedFor looked, SignRoute.ByFinding by) when by.Finding == looked.FindingKind => (false, true),
        (Finding found, SignRoute.ByStrength by) when by.Finding == found.FindingKind && found.Character == FindingCharacter.Strength =>
            (false, found.Certainty == Certainty.Certain),
        _ => null,
    };

    /// <summary>“A little” of something on a scale with two ends is no sure sign; any other word is.</summary>
    private static bool Plainly(TestKind test, int step) => TestScale.Of(test) is var scale && (scale.Shape != ScaleShape.TwoSided || scale.FromGood(step) != 1);

    /// <summary>A pitch that was told as a range across the border says nothing.</summary>
    private static (bool Present, bool Sure)? Side(CentsRange range, bool above)
    {
        var (low, high) = above ? (range.Low.Value, range.High.Value) : (-range.High.Value, -range.Low.Value);
        return low > CrowTarget.ToleranceCents ? (true, true) : high <= CrowTarget.ToleranceCents ? (false, true) : null;
    }
}
