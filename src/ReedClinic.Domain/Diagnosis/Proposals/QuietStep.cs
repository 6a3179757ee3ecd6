using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>One quiet line at the bench: what isn’t checked yet, or the next step with how little and what it may cost. It never stops anybody.</summary>
/// <param name="Id">Its own name on this reed; set aside under it, it isn’t shown again.</param>
/// <param name="Kind">What sort of thing it is.</param>
/// <param name="Words">What isn’t checked, or what to do.</param>
/// <param name="HowLittle">How little of it; empty where nothing is done.</param>
/// <param name="MayCost">What it may cost; empty where nothing is done.</param>
/// <param name="Proposal">All of it.</param>
public sealed record QuietStep(AdviceId Id, ProposalKind Kind, string Words, string HowLittle, string MayCost, Proposal Proposal)
{
    /// <summary>
    /// The line that is due; null where none is. What was set aside on this reed doesn’t come back, nor does what was done just now and not
    /// tried yet; a reed that is stopped or has its verdict is left in peace until it is worked again.
    /// </summary>
    /// <param name="evidence">What is reasoned of the reed.</param>
    /// <param name="log">Its log.</param>
    public static QuietStep? Of(ReedEvidence evidence, BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(log);
        if (log.IsStopped || ReedStates.Of(log) == ReedState.HasVerdict)
        {
            return null;
        }

        var aside = log.Live<AdviceSetAside>().Select(fact => fact.Now.AdviceId).ToHashSet();
        var tried = log.Live<Test>().Select(test => test.Sequence).DefaultIfEmpty().Max();
        var untried = log.Live<Adjustment>().Where(work => work.Sequence > tried).Select(work => work.Now.AdjustmentKind).ToHashSet();
        return evidence.Next.Proposals.Where(one => one.Adjustment is not { } kind || !untried.Contains(kind))
            .Select(one => Say(evidence, one)).FirstOrDefault(line => !aside.Contains(line.Id));
    }

    private static QuietStep Say(ReedEvidence evidence, Proposal one)
    {
        var name = one.Adjustment?.Value ?? one.Test?.Value;
        var id = new AdviceId($"next/{one.Kind.ToString().ToLowerInvariant()}{(name is null ? string.Empty : "-" + name)}");
        return one.Kind switch
        {
            ProposalKind.Look => new QuietStep(id, one.Kind, evidence.Now.Catalogue.Find(one.Test!.Value)!.Name, string.Empty, string.Empty, one),
            ProposalKind.Stop => new QuietStep(id, one.Kind, one.Words.Do, one.Words.Expect, string.Empty, one),
            _ => new QuietStep(id, one.Kind, one.Words.Do, one.Words.HowLittle, First(one.Words.MayCost), one),
        };
    }

    /// <summary>The first sentence: side effects where there are any, else the caution.</summary>
    private static string First(string words)
    {
        var end = words.IndexOf(". ", StringComparison.Ordinal);
        return end < 0 ? words : words[..(end + 1)];
    }
}
