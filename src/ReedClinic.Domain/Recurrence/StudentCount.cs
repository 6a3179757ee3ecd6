namespace ReedClinic.Domain.Recurrence;

/// <summary>One student’s count of one theme, all batches together.</summary>
/// <param name="Found">The reeds on which it was found.</param>
/// <param name="Looked">The reeds on which it was looked for.</param>
/// <param name="Squares">The batches’ looked-for reeds, each squared, added up: it tells how the reeds were spread over batches.</param>
public readonly record struct StudentCount(int Found, int Looked, int Squares)
{
    /// <summary>Adds batches up.</summary>
    /// <param name="batches">The counts of the batches.</param>
    public static StudentCount Of(IReadOnlyCollection<BatchCount> batches)
    {
        ArgumentNullException.ThrowIfNull(batches);
        return new StudentCount(batches.Sum(one => one.Found), batches.Sum(one => one.Looked), batches.Sum(one => one.Looked * one.Looked));
    }
}

/// <summary>What a studio’s rate of one theme is for a student who has this count themselves: that of all others.</summary>
/// <param name="Theme">The theme’s lasting name.</param>
/// <param name="Without">The count of the one who is left out; nothing for a student who wasn’t counted.</param>
/// <param name="Rate">The rate of the others.</param>
public sealed record RateWithout(string Theme, StudentCount Without, StudioRate Rate);

/// <summary>
/// Rolls a studio’s rates up, one student after another. It keeps how many students have which count and nothing of who they are; a
/// student’s own count is taken out again by its size, so that nobody is held against themselves.
/// </summary>
public sealed class StudioTally
{
    /// <summary>
    /// With more students than this one of them hardly moves the rate, and none is taken out any more. Our own default.
    /// </summary>
    public const int MostTakenOut = 30;

    private readonly Dictionary<string, Dictionary<StudentCount, int>> students = [];
    private readonly LikenessSums likenesses = new();

    /// <summary>Takes a student into account.</summary>
    /// <param name="student">Their sheets.</param>
    public void Add(StudentHistory student)
    {
        ArgumentNullException.ThrowIfNull(student);
        foreach (var theme in Themes.All.Concat(Themes.OwnIn(student)))
        {
            var batches = student.Counts(theme);
            var count = StudentCount.Of(batches);
            if (count.Looked == 0)
            {
                continue;
            }

            if (!students.TryGetValue(theme.Id, out var same))
            {
                students[theme.Id] = same = [];
            }

            same[count] = same.GetValueOrDefault(count) + 1;
            if (!theme.IsFamily)
            {
                likenesses.Add(batches);
            }
        }
    }

    /// <summary>How alike the reeds of one batch are here.</summary>
    public BatchLikeness Likeness() => likenesses.Learned();

    /// <summary>The rates: for each theme that of all students, and in a small studio that of the others for each count that somebody has.</summary>
    /// <returns>The rates; none where there are too few students.</returns>
    public IEnumerable<RateWithout> Rates()
    {
        var likeness = Likeness();
        foreach (var (theme, counts) in students)
        {
            List<(StudentCount Count, StudentsWith Group)> groups = [.. counts.Select(one => (one.Key, new StudentsWith(likeness.Worth(one.Key), one.Value)))];
            if (StudioRate.Fit(Alike(groups.Select(one => one.Group))) is { } all)
            {
                yield return new RateWithout(theme, default, all);
            }

            foreach (var (own, _) in groups.Sum(one => one.Group.Students) <= MostTakenOut ? groups : [])
            {
                var others = groups.Select(one => one.Count == own ? one.Group with { Students = one.Group.Students - 1 } : one.Group);
                if (StudioRate.Fit(Alike(others)) is { } rate)
                {
                    yield return new RateWithout(theme, own, rate);
                }
            }
        }
    }

    private static IEnumerable<StudentsWith> Alike(IEnumerable<StudentsWith> groups) =>
        groups.GroupBy(one => one.Count).Select(group => new StudentsWith(group.Key, group.Sum(one => one.Students)));
}
