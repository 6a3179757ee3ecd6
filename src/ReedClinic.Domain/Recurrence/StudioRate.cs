using MathNet.Numerics.Distributions;

namespace ReedClinic.Domain.Recurrence;

/// <summary>Students with the same count.</summary>
/// <param name="Count">What their reeds are worth, and on how many it was found.</param>
/// <param name="Students">How many students have this count.</param>
public readonly record struct StudentsWith(WorthCount Count, int Students = 1);

/// <summary>
/// How often something turns up with a studio’s students, and how much they differ: a beta distribution of their own shares, fitted
/// to their counts (empirical Bayes).
/// </summary>
/// <remarks>
/// The beta-binomial likelihood is largest at (a, b) together with a weak prior of our own, which keeps it proper for a handful of
/// students: logit of the mean around 0 with spread 2, logarithm of a + b around log 4 with spread 1.
/// </remarks>
/// <param name="A">The first parameter; above 0.</param>
/// <param name="B">The second parameter; above 0.</param>
/// <param name="Students">On how many students’ reeds it was looked for.</param>
public sealed record StudioRate(double A, double B, int Students)
{
    /// <summary>With fewer other students than this nothing is compared. Our own default.</summary>
    public const int FewestStudents = 3;

    /// <summary>The studio’s own share: the mean over its students.</summary>
    public double Mean => A / (A + B);

    /// <summary>Fits the distribution.</summary>
    /// <param name="students">The counts of the other students; those with nothing looked at tell nothing.</param>
    /// <returns>The rate; null with fewer than <see cref="FewestStudents"/>.</returns>
    public static StudioRate? Fit(IEnumerable<StudentsWith> students)
    {
        ArgumentNullException.ThrowIfNull(students);
        List<StudentsWith> known = [.. students.Where(group => group.Count.Looked > 0 && group.Students > 0)];
        var count = known.Sum(group => group.Students);
        if (count < FewestStudents)
        {
            return null;
        }

        // A grid that closes in on the best point: no derivative, no start to guess, and always the same answer.
        var (logit, size, step) = (0.0, Math.Log(4), 1.2);
        for (var round = 0; round < 14; round++, step *= 0.6)
        {
            (logit, size) = (
                from one in Enumerable.Range(-3, 7)
                from other in Enumerable.Range(-3, 7)
                let at = (Logit: logit + (one * step), Size: size + (other * step))
                orderby LogPosterior(known, at.Logit, at.Size) descending
                select at).First();
        }

        var (a, b) = Parameters(logit, size);
        return new StudioRate(a, b, count);
    }

    /// <summary>How likely a student’s own share is above the studio’s mean, after what was seen of it.</summary>
    /// <param name="count">The student’s own count.</param>
    /// <returns>From 0 to 1.</returns>
    public double ProbabilityAbove(WorthCount count) =>
        1 - Beta.CDF(A + count.Found, B + Math.Max(0, count.Looked - count.Found), Mean);

    /// <summary>The student’s own share after what was seen of it, with its middle 95 %.</summary>
    /// <param name="count">The student’s own count.</param>
    /// <returns>Mean, lower and upper end.</returns>
    public (double Mean, double Low, double High) ShareOf(WorthCount count)
    {
        var (a, b) = (A + count.Found, B + Math.Max(0, count.Looked - count.Found));
        return (a / (a + b), Beta.InvCDF(a, b, 0.025), Beta.InvCDF(a, b, 0.975));
    }

    private static double LogPosterior(List<StudentsWith> students, double logit, double size)
    {
        var (a, b) = Parameters(logit, size);
        var away = (size - Math.Log(4)) / 1;
        return students.Sum(group => group.Students * BetaBinomial.LogWeight(group.Count.Found, group.Count.Looked, a, b))
            - (logit * logit / 8) - (away * away / 2);
    }

    private static (double A, double B) Parameters(double logit, double size)
    {
        var mean = 1 / (1 + Math.Exp(-Math.Clamp(logit, -9, 9)));
        var worth = Math.Exp(Math.Clamp(size, -4, 9));
        return (mean * worth, (1 - mean) * worth);
    }
}
