using MathNet.Numerics.Distributions;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

/// <summary>How often a student is said to stand out from the studio who doesn’t, and who does: drawn studios, through all that a page is made of. Seeded.</summary>
public sealed class StandsOutTests
{
    private static readonly string[] Kinds = ["tip-thin", "worn", "bumps", "back-thick", "heart-thin", "left-right-uneven", "side-leak", "thread-too-high"];

    /// <summary>Each fault is exactly as frequent with the student as it is in the studio on average, which is where a false alarm is likeliest.</summary>
    [Theory]
    [InlineData(0.0, 1995)]
    [InlineData(0.2, 1996)]
    [InlineData(0.4, 1997)]
    public void Whoever_is_like_the_studio_seldom_stands_out_in_anything(double likeness, int seed)
    {
        var random = new Random(seed);
        var rounds = Drawn.Rounds(40);
        var (alarms, lines) = (0, 0);
        for (var round = 0; round < rounds; round++)
        {
            var shares = Kinds.ToDictionary(kind => kind, _ => 0.1 + (0.7 * random.NextDouble()));
            var standing = Report(random, likeness, shares, shares).All.Count(line => line.StandsOut);
            (alarms, lines) = (alarms + (standing > 0 ? 1 : 0), lines + standing);
        }

        Drawn.Print($"alike {likeness}: of {rounds} students like the studio {alarms} are said to stand out ({alarms / (double)rounds:0.0 %}), in {lines} lines");

        // At most one in twenty, and what chance adds to a count of so few.
        Assert.InRange(alarms, 0, (0.05 * rounds) + (2.6 * Math.Sqrt(0.05 * 0.95 * rounds)));
    }

    [Fact]
    public void Whoever_has_a_fault_on_nearly_every_reed_that_others_seldom_have_mostly_stands_out_in_that()
    {
        var random = new Random(1998);
        var rounds = Drawn.Rounds(20);
        var (found, others) = (0, 0);
        for (var round = 0; round < rounds; round++)
        {
            var shares = Kinds.ToDictionary(kind => kind, _ => 0.15);
            var report = Report(random, 0.2, shares, new Dictionary<string, double>(shares) { ["worn"] = 0.9 });
            found += report.Of("worn")!.StandsOut ? 1 : 0;
            others += report.Faults.Count(line => line.StandsOut && line.Theme.Kinds.All(kind => kind.Value != "worn"));
        }

        Drawn.Print($"0.9 where the studio has 0.15: found with {found} of {rounds}; beside it {others} others");
        Assert.InRange(found, rounds * 0.8, rounds);
        Assert.InRange(others, 0, rounds * 0.1);
    }

    private static RecurrenceReport Report(Random random, double likeness, Dictionary<string, double> studio, Dictionary<string, double> own)
    {
        // The other students differ among themselves as a beta distribution of weight 6 has it.
        var others = Enumerable.Range(0, 12).Select(at => History(random, likeness, 10 * (at + 2), studio.ToDictionary(one => one.Key, one => Beta.Sample(random, one.Value * 6, (1 - one.Value) * 6)))).ToList();
        return Recurrences.Of(History(random, likeness, 1, own), StudioRates.Of(others));
    }

    // Three batches of three or four reeds; each fault was looked for on each.
    private static StudentHistory History(Random random, double likeness, int first, Dictionary<string, double> shares) =>
        Sheets.History([.. Enumerable.Range(first, 3).Select(number =>
        {
            var reeds = random.Next(3, 5);
            var here = Kinds.ToDictionary(kind => kind, kind => Drawn.Batch(random, reeds, shares[kind], likeness).Found);
            return Sheets.Batch(number, [.. Enumerable.Range(0, reeds).Select(reed => string.Join(' ', Kinds.Select(kind => (reed < here[kind] ? '+' : '-') + kind)))]);
        })]);
}
