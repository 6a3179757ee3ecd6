using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>
/// What was noted as damaged when a reed arrived, read as the bench line reads: what of it names a finding of the catalogue, and stands in
/// the log neither as found nor as looked for and missing. It becomes a finding only when a teacher says so.
/// </summary>
public static class ArrivalFindings
{
    private static readonly char[] Ends = ['\n', ';', '.'];
    private static readonly char[] Gaps = [' ', '\t', '\n', ',', ';', '.', ':', '(', ')', '-', '–', '—'];

    /// <summary>The findings that a teacher may still make of it.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="tuning">What the student tunes to.</param>
    /// <param name="own">What the studio added.</param>
    public static IReadOnlyList<Finding> Open(Reed reed, BenchLog log, Tuning tuning, OwnKinds? own = null)
    {
        ArgumentNullException.ThrowIfNull(reed);
        ArgumentNullException.ThrowIfNull(log);
        return reed is not { IsHere: true, Damage: { } damage } ? [] :
        [
            .. Read(InOneLine(damage), tuning, own).Select(finding => OnItsBlade(finding, damage, tuning, own)).Where(finding => !Stands(log, finding)),
        ];
    }

    /// <summary>What was noted, in one line.</summary>
    /// <param name="damage">As it was typed.</param>
    public static string InOneLine(string damage)
    {
        ArgumentNullException.ThrowIfNull(damage);
        return string.Join("; ", damage.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
    }

    private static List<Finding> Read(string words, Tuning tuning, OwnKinds? own) =>
        [.. HeardLine.Of(words, BenchLog.Empty, tuning, own).Entries.Select(heard => heard.Entry).OfType<Finding>().Where(finding => finding.FindingKind != FindingKindId.SomethingElse)];

    // Where words name one finding and one blade, it is on that blade, however far apart the two are said.
    private static Finding OnItsBlade(Finding finding, string damage, Tuning tuning, OwnKinds? own) =>
        finding is { Blades: Blades.Both, Relation: null }
        && damage.Split(Ends, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Prepend(InOneLine(damage))
            .FirstOrDefault(words => OneBlade(words) is not null && Read(words, tuning, own) is [var only] && (only.FindingKind, only.Sides) == (finding.FindingKind, finding.Sides)) is { } said
        && Finding.Of(finding.FindingKind, finding.Character, finding.Place with { Blades = OneBlade(said)!.Value }, finding.Shape, knownBy: finding.KnownBy, certainty: finding.Certainty, arose: finding.Arose, words: OwnId.Remark(finding.FindingKind.Value, finding.Words)) is Outcome<Finding>.Done(var placed)
            ? placed
            : finding;

    private static Blades? OneBlade(string words)
    {
        var said = words.Split(Gaps, StringSplitOptions.RemoveEmptyEntries).Select(word => word.ToLowerInvariant()).ToList();
        var (upper, lower) = (said.Exists(word => word is "upper" or "top"), said.Exists(word => word is "lower" or "bottom"));
        return !said.Exists(word => word is "blade" or "blade's" or "blade’s") || upper == lower ? null : upper ? Blades.Upper : Blades.Lower;
    }

    private static bool Stands(BenchLog log, Finding finding) =>
        log.Live<LookedFor>().Any(looked => looked.Now.FindingKind == finding.FindingKind)
        || log.Live<Finding>().Any(found => found.Now.FindingKind == finding.FindingKind && Meets(found.Now, finding));

    private static bool Meets(Finding one, Finding other) =>
        (one.Blades == other.Blades || one.Blades == Blades.Both || other.Blades == Blades.Both)
        && (one.Sides == other.Sides || one.Sides == Sides.Both || other.Sides == Sides.Both);
}
