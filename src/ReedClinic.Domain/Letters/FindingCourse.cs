using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>What became of a fault at the bench, as far as the log tells it.</summary>
internal enum FindingCourse
{
    /// <summary>It is as it was, or nothing was said of it.</summary>
    Still = 0,

    /// <summary>Nobody said how it ended, but it was worked on, and the reed has tested better since.</summary>
    TestedBetter,

    /// <summary>It was said to be better, not gone.</summary>
    Better,

    /// <summary>It was said to be gone.</summary>
    PutRight,
}

/// <summary>Reads it from the log.</summary>
internal static class FindingCourses
{
    /// <summary>What became of a fault.</summary>
    /// <param name="now">The fault as it stands.</param>
    /// <param name="log">The log it stands in.</param>
    internal static FindingCourse CourseIn(this FindingNow now, BenchLog log) => now.Ended?.Now.Ending switch
    {
        FindingEnding.Gone => FindingCourse.PutRight,
        FindingEnding.Better => FindingCourse.Better,
        null when now.DoneForIt.Count > 0 && HasTestedBetter(log, now.DoneForIt.Max(work => work.Sequence)) => FindingCourse.TestedBetter,
        _ => FindingCourse.Still,
    };

    private static bool HasTestedBetter(BenchLog log, int worked)
    {
        var since = log.Moves.Where(move => move.Now is { } test && test.Sequence > worked).ToList();
        return since.Exists(move => move.Movement == Movement.Nearer) && !since.Exists(move => move.Movement == Movement.Further);
    }
}
