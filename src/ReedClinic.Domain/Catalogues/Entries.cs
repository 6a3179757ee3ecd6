using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Catalogues;

/// <summary>A way to try a reed.</summary>
/// <param name="Id">Its lasting name.</param>
/// <param name="Name">Its plain name.</param>
/// <param name="How">How it is done.</param>
/// <param name="Right">What is wished for.</param>
/// <param name="Otherwise">What another result points to first.</param>
/// <param name="Bench">The test of the bench log in which the result is told; null where it has none of its own.</param>
/// <param name="Mark">How it is known.</param>
/// <param name="Retired">True when the studio no longer offers it.</param>
public sealed record TestCard(
    TestCardId Id, string Name, string How, string Right, string Otherwise, TestKind? Bench, EvidenceMark Mark, bool Retired = false);

/// <summary>Something that can be seen, heard or felt: evidence for causes.</summary>
/// <param name="Id">Its lasting name.</param>
/// <param name="Name">What is the case, in small letters.</param>
/// <param name="Test">The test by which it shows.</param>
/// <param name="KnownBy">What in the records tells of it; empty where it is asked for by itself.</param>
/// <param name="Opposite">The sign that can’t hold at the same time; null for none.</param>
/// <param name="Unasked">How likely it is with none of its causes, from 0 to 1, both excluded.</param>
/// <param name="Retired">True when the studio no longer uses it.</param>
public sealed record Sign(
    SignId Id, string Name, TestCardId Test, IReadOnlyList<SignRoute> KnownBy, SignId? Opposite, Marked<double> Unasked, bool Retired = false);

/// <summary>What can be behind a reed’s trouble: a fault of the reed, of the instrument, or the way it is played.</summary>
/// <param name="Id">Its lasting name.</param>
/// <param name="Name">Its plain name, in small letters.</param>
/// <param name="Finding">The finding that is this very fault; null where no single one is.</param>
/// <param name="Line">One line that explains it to a student.</param>
/// <param name="Mark">How that line is known.</param>
/// <param name="Prior">How likely it is before anything is known, from 0 to below 1.</param>
/// <param name="Steps">What to try, in this order; stop as soon as the test is passed.</param>
/// <param name="StepsMark">How the order is known.</param>
/// <param name="NeverFirst">What not to begin with.</param>
/// <param name="Retired">True when the studio no longer uses it.</param>
public sealed record Cause(
    CauseId Id,
    string Name,
    FindingKindId? Finding,
    string Line,
    EvidenceMark Mark,
    Marked<double> Prior,
    IReadOnlyList<AdjustmentKindId> Steps,
    EvidenceMark StepsMark,
    IReadOnlyList<AdjustmentKindId> NeverFirst,
    bool Retired = false);

/// <summary>How closely a sign belongs to a cause. The numbers behind the words are in the file of defaults.</summary>
public enum Belonging
{
    /// <summary>The sign is a fault of its own, which may lie behind this one; this one hardly brings it about.</summary>
    Behind,

    /// <summary>In some reeds.</summary>
    Possible,

    /// <summary>In most reeds.</summary>
    Typical,

    /// <summary>The sign is the fault, seen or heard directly.</summary>
    Itself,
}

/// <summary>One cause shows itself in one sign.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Sign">The sign.</param>
/// <param name="Belonging">How closely they belong together.</param>
/// <param name="Strength">How likely this cause alone brings the sign about, from 0 to below 1.</param>
/// <param name="Mark">How it is known that they belong together.</param>
public sealed record CauseLink(CauseId Cause, SignId Sign, Belonging Belonging, Marked<double> Strength, EvidenceMark Mark);

/// <summary>Something that can be done, with what it usually does.</summary>
/// <param name="Id">Its lasting name: that of the bench log’s own kind where there is one.</param>
/// <param name="Name">Its plain name, as a thing to do.</param>
/// <param name="Zone">The part of the reed that is usually worked.</param>
/// <param name="Undo">Whether it can be undone.</param>
/// <param name="Amount">How much is usual, in words.</param>
/// <param name="Caution">One sentence of caution.</param>
/// <param name="Mark">How it is known.</param>
/// <param name="Does">One line that explains it to a student.</param>
/// <param name="Risk">0 (none) to 5 (often ends the reed).</param>
/// <param name="Effects">What one pass usually does, on each of the six scales.</param>
/// <param name="ByChoice">True for what is never offered unasked: it is an adjuster’s own choice.</param>
/// <param name="NotWhile">Signs that hold it back, of the reed as it stands now.</param>
/// <param name="Unless">Signs that let it through all the same.</param>
/// <param name="Retired">True when the studio no longer uses it.</param>
public sealed record AdjustmentEntry(
    AdjustmentKindId Id,
    string Name,
    Zone Zone,
    Reversible Undo,
    string? Amount,
    string Caution,
    EvidenceMark Mark,
    string Does,
    Marked<int> Risk,
    IReadOnlyDictionary<EffectScale, Marked<EffectRange>> Effects,
    Marked<bool> ByChoice,
    IReadOnlyList<SignId> NotWhile,
    IReadOnlyList<SignId> Unless,
    bool Retired = false)
{
    /// <summary>
    /// Whether the reed as it stands now holds this back. How it arrived doesn’t count: a reed that came in high is rightly
    /// clipped once its crow has been brought down (common practice).
    /// </summary>
    /// <param name="now">What holds by the latest tests.</param>
    public bool IsHeldBack(IReadOnlySet<SignId> now) => NotWhile.Any(now.Contains) && !Unless.Any(now.Contains);
}
