using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Bench;

/// <summary>What comes next on a reed, by its log alone: how the work goes on, and no advice on what to do to the cane.</summary>
public enum NextMove
{
    /// <summary>Nothing was tried yet.</summary>
    Try,

    /// <summary>It wasn’t tried since the last work.</summary>
    TryAgain,

    /// <summary>A fault stands, and it was tried since the last work.</summary>
    SmallStep,

    /// <summary>It was tried since the last work, and no fault stands.</summary>
    GoOnOrStop,

    /// <summary>It was tried, and the student wants advice only.</summary>
    AdviceOnly,

    /// <summary>The work has ended without a verdict.</summary>
    Verdict,

    /// <summary>Its verdict is given.</summary>
    Done,

    /// <summary>It was put aside.</summary>
    Aside,

    /// <summary>Nothing: it didn’t come, or nobody has said that it is fit to be played.</summary>
    OffTheBench,
}

/// <summary>Finds what comes next. The order of try, one small step, try again is common practice, with no source.</summary>
public static class ComesNext
{
    /// <summary>What comes next on a reed.</summary>
    /// <param name="log">Its log.</param>
    /// <param name="reed">The reed, with what the student allowed.</param>
    public static NextMove Of(BenchLog log, Reed reed)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(reed);
        var worked = log.Work.Select(work => work.Sequence).DefaultIfEmpty(0).Max();
        var tried = log.Live<Test>().Select(test => test.Sequence).DefaultIfEmpty(0).Max();
        return log switch
        {
            _ when !reed.MayBePlayed => NextMove.OffTheBench,
            { IsParked: true } => NextMove.Aside,
            { Verdict: { } verdict } when verdict.Sequence > worked => NextMove.Done,
            { IsStopped: true } => NextMove.Verdict,
            _ when worked == 0 && tried == 0 => NextMove.Try,
            _ when tried < worked => NextMove.TryAgain,
            _ when reed.Permission == Permission.AdviseOnly => NextMove.AdviceOnly,
            _ when log.Findings.Any(found => found.Finding.Character == FindingCharacter.Fault && Stands(found.Ended?.Now.Ending)) => NextMove.SmallStep,
            _ => NextMove.GoOnOrStop,
        };
    }

    // What was left on purpose asks for no step.
    private static bool Stands(FindingEnding? ending) => ending is not (FindingEnding.Gone or FindingEnding.LeftOnPurpose);
}
