namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>
/// Weighs the rules against the judge. How far each reader of the rules can be trusted was learned on phrases that the rules had not been
/// made with. Nothing is taken for a deed unless both together make it likely enough; in doubt it becomes a remark.
/// </summary>
internal static class Balance
{
    /// <summary>The kinds of entries, and nothing new.</summary>
    internal static readonly string[] Kinds = [Judge.Nothing, "adjustment", "ended", "finding", "leavealone", "lookedfor", "note", "risk", "riskclosed", "stopped", "test", "verdict"];

    private const string Deed = "adjustment";
    private const double SureOfDeed = 0.6;
    private const double SureInTalk = 0.85;

    /// <summary>A deed that is less likely is shown as one that may not have been done.</summary>
    internal const double BeyondDoubt = 0.98;

    /// <summary>The kind that is taken, and how likely the segment tells a deed, or is a remark.</summary>
    internal static (string Kind, double Deed, double Remark) Choose(Weights weights, Sight sight)
    {
        var chances = Chances(sight, sign => weights.Of(Questions.Balance, sign));
        var order = Enumerable.Range(0, Kinds.Length).OrderByDescending(at => chances[at]).ToList();
        var deed = chances[Array.IndexOf(Kinds, Deed)];
        return (Choose(sight, Kinds[order[0]], Kinds[order[1]], deed), deed, chances[Array.IndexOf(Kinds, "note")]);
    }

    // What isn’t sure enough to be a deed is what the rules say, or the next likely, and a remark where neither says more.
    private static string Choose(Sight sight, string best, string next, double deed)
    {
        var talked = sight.Said != Deed && sight.IsOnlyTalkedOf;
        if (best != Deed || deed >= (talked ? SureInTalk : SureOfDeed))
        {
            return best;
        }

        return talked ? sight.Said == Judge.Nothing ? "note" : sight.Said : sight.Said == Deed || next == Judge.Nothing ? "note" : next;
    }

    /// <summary>How likely each kind is, with both in view.</summary>
    internal static double[] Chances(Sight sight, Func<string, double> weight)
    {
        var sums = new double[Kinds.Length];
        for (var at = 0; at < sums.Length; at++)
        {
            foreach (var (sign, value) in Signs(sight, Kinds[at]))
            {
                sums[at] += weight(sign) * value;
            }
        }

        var most = sums.Max();
        var all = sums.Sum(sum => Math.Exp(sum - most));
        return [.. sums.Select(sum => Math.Exp(sum - most) / all)];
    }

    /// <summary>What speaks for a kind.</summary>
    internal static IEnumerable<(string Sign, double Value)> Signs(Sight sight, string kind)
    {
        var judged = Math.Log(sight.Opinion.Chance(Questions.Kind, kind) + 0.001);
        yield return ("judge", judged);
        yield return ($"judge {kind}", judged);
        if (Questions.Of(kind) is { } question)
        {
            // What looks like no test in particular is hardly one.
            var said = sight.Opinion.Best(question);
            yield return ($"what {kind}", Math.Log(sight.Opinion.Chance(question, said) + 0.001));
            if (kind == sight.Said && sight.What is { } what)
            {
                yield return ($"{(said.StartsWith(what, StringComparison.Ordinal) ? "agreed" : "otherwise")} {kind}", 1);
            }
        }

        foreach (var circumstance in sight.Circumstances)
        {
            yield return ($"{circumstance} {kind}", 1);
        }

        yield return ($"kind {kind}", 1);
        yield return ($"kind {kind} {sight.Standing}", 1);
        if (kind == sight.Said)
        {
            yield return ("rules", 1);
            yield return ($"rules {kind}", 1);
            yield return ($"rules {sight.Way} {kind}", 1);
            yield return ($"rules {sight.Way} {kind} {sight.Standing}", 1);
        }
        else
        {
            yield return ($"over {sight.Way} {sight.Said} {kind}", 1);
        }
    }
}
