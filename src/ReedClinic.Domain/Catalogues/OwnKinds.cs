using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Catalogues;

/// <summary>
/// What a studio’s own entries are at the bench: kinds of finding and of adjustment beside the shipped ones. The log keeps what a kind was
/// called when it was noted; here stands what it is called now.
/// </summary>
public sealed class OwnKinds
{
    private const string Retired = " (retired)";

    private readonly Dictionary<FindingKindId, (FindingKind Kind, bool Living)> findings;
    private readonly Dictionary<AdjustmentKindId, (AdjustmentKind Kind, bool Living)> adjustments;

    private readonly IReadOnlyDictionary<string, string> lines;

    internal OwnKinds(
        IEnumerable<(FindingKind Kind, bool Living)> findings, IEnumerable<(AdjustmentKind Kind, bool Living)> adjustments, IReadOnlyDictionary<string, string>? lines = null)
    {
        this.lines = lines ?? new Dictionary<string, string>();
        this.findings = findings.ToDictionary(one => one.Kind.Id);
        this.adjustments = adjustments.ToDictionary(one => one.Kind.Id);
        Findings = [.. this.findings.Values.Where(one => one.Living).Select(one => one.Kind).OrderBy(kind => kind.Name, StringComparer.OrdinalIgnoreCase)];
        Adjustments = [.. this.adjustments.Values.Where(one => one.Living).Select(one => one.Kind).OrderBy(kind => kind.Name, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>A studio that added nothing.</summary>
    public static OwnKinds None { get; } = new([], []);

    /// <summary>The kinds of finding that are offered, by name.</summary>
    public IReadOnlyList<FindingKind> Findings { get; }

    /// <summary>The adjustments that are offered, by name.</summary>
    public IReadOnlyList<AdjustmentKind> Adjustments { get; }

    /// <summary>By lasting name, in a sentence, why an entry isn’t weighed: it doesn’t fit beside what else is in the catalogue now.</summary>
    public IReadOnlyDictionary<string, string> LeftOut { get; init; } = new Dictionary<string, string>();

    /// <summary>All the sentences for students.</summary>
    internal IEnumerable<string> Lines => lines.Values;

    /// <summary>The sentence for students that the owner wrote about a fault or an adjustment of the studio’s own.</summary>
    /// <param name="name">Its lasting name.</param>
    /// <returns>The sentence; null for whatever else, and for what a test of the studio’s own shows.</returns>
    public string? LineOf(string? name) => name is null ? null : lines.GetValueOrDefault(name);

    /// <summary>A kind of finding: a shipped one, or the studio’s own, in use or retired.</summary>
    /// <param name="id">Its lasting name.</param>
    public FindingKind? Find(FindingKindId id) => FindingCatalogue.Find(id) ?? (id.Value is not null && findings.TryGetValue(id, out var own) ? own.Kind : null);

    /// <summary>An adjustment: a shipped one, or the studio’s own, in use or retired.</summary>
    /// <param name="id">Its lasting name.</param>
    public AdjustmentKind? Find(AdjustmentKindId id) => AdjustmentCatalogue.Find(id) ?? (id.Value is not null && adjustments.TryGetValue(id, out var own) ? own.Kind : null);

    /// <summary>What a kind of finding is called now; of a retired one, that it is retired.</summary>
    /// <param name="id">Its lasting name.</param>
    /// <returns>The name; “something else” for what has none.</returns>
    public string NameOf(FindingKindId id) => id.Value is not null && findings.TryGetValue(id, out var own)
        ? own.Kind.Name + (own.Living ? "" : Retired)
        : FindingCatalogue.NameOf(id);

    /// <summary>What an adjustment is called now; of a retired one, that it is retired.</summary>
    /// <param name="id">Its lasting name.</param>
    /// <returns>The name; “something else” for what has none.</returns>
    public string NameOf(AdjustmentKindId id) => id.Value is not null && adjustments.TryGetValue(id, out var own)
        ? own.Kind.Name + (own.Living ? "" : Retired)
        : AdjustmentCatalogue.NameOf(id);

    /// <summary>Hears a line that is nothing but the name of a kind of the studio’s own, or “no” before it: looked for, and not there.</summary>
    /// <param name="line">What was typed.</param>
    /// <returns>The entry, at the kind’s usual place; null for any other line.</returns>
    public BenchEntry? Hear(string? line)
    {
        var said = line?.Trim().TrimEnd('.', '!', ',', ' ') ?? "";
        var without = said.StartsWith("no ", StringComparison.OrdinalIgnoreCase) ? said[3..].TrimStart() : null;
        if (Findings.FirstOrDefault(kind => Is(kind.Name, said)) is { } found)
        {
            return Finding.Of(found.Id, found.Usually, new Place(found.Zone), found.Shape, words: found.Name) is Outcome<Finding>.Done(var finding) ? finding : null;
        }

        if (Findings.FirstOrDefault(kind => Is(kind.Name, without)) is { } sought)
        {
            return LookedFor.Of(sought.Id, words: sought.Name) is Outcome<LookedFor>.Done(var looked) ? looked : null;
        }

        return Adjustments.FirstOrDefault(kind => Is(kind.Name, said)) is { } done
            && Adjustment.Of(done.Id, new Place(done.Zone), words: done.Name) is Outcome<Adjustment>.Done(var work) ? work : null;
    }

    /// <summary>Takes a line apart where it says a name of the studio’s own, in any tense, with a side, a blade or an amount around it.</summary>
    /// <param name="line">What was typed.</param>
    /// <returns>The pieces in order; one without an entry is for the reader of phrases.</returns>
    public IReadOnlyList<OwnPiece> HearWithin(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return OwnHearing.Pieces(line, this);
    }

    private static bool Is(string name, string? said) => name.Equals(said, StringComparison.OrdinalIgnoreCase);

    /// <summary>An entry with what its kind is called now, if that is the studio’s own; any other entry as it is.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="log">The log that it goes into: a retired kind that stands there can still be told better.</param>
    /// <returns>The entry; refused where its kind isn’t here or was retired.</returns>
    public Outcome<BenchEntry> Named(BenchEntry entry, BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(log);
        return entry switch
        {
            Finding finding when OwnId.Is(finding.FindingKind.Value) => Offered(finding.FindingKind, log) is { } kind
                ? Whole(finding.Called(kind.Name), one => one.Words) : Gone(nameof(Finding.FindingKind), finding.FindingKind),
            LookedFor looked when OwnId.Is(looked.FindingKind.Value) => Offered(looked.FindingKind, log) is { } kind
                ? Whole(looked.Called(kind.Name), one => one.Words) : Gone(nameof(LookedFor.FindingKind), looked.FindingKind),
            Adjustment work when OwnId.Is(work.AdjustmentKind.Value) => Offered(work.AdjustmentKind, log) is { } kind
                ? Whole(work.Called(kind.Name), one => one.Words) : Gone(nameof(Adjustment.AdjustmentKind), work.AdjustmentKind),
            _ => new Outcome<BenchEntry>.Done(entry),
        };
    }

    private FindingKind? Offered(FindingKindId id, BenchLog log) => findings.TryGetValue(id, out var own)
        && (own.Living || log.Facts.Any(fact => fact.Now is Finding found && found.FindingKind == id) || log.Facts.Any(fact => fact.Now is LookedFor looked && looked.FindingKind == id))
            ? own.Kind : null;

    private AdjustmentKind? Offered(AdjustmentKindId id, BenchLog log) => adjustments.TryGetValue(id, out var own)
        && (own.Living || log.Facts.Any(fact => fact.Now is Adjustment work && work.AdjustmentKind == id))
            ? own.Kind : null;

    private Outcome<BenchEntry> Gone(string field, FindingKindId id) => Gone(field, findings.TryGetValue(id, out var own) ? own.Kind.Name : null);

    private Outcome<BenchEntry> Gone(string field, AdjustmentKindId id) => Gone(field, adjustments.TryGetValue(id, out var own) ? own.Kind.Name : null);

    private static Outcome<BenchEntry> Gone(string field, string? name) => new Outcome<BenchEntry>.Refused([new Problem(field, name is null
        ? "This isn’t on the list. Choose another, or “something else”."
        : $"“{name}” was retired from the list. Choose another, or “something else”.")]);

    private static Outcome<BenchEntry> Whole<T>(T named, Func<T, string?> words)
        where T : BenchEntry => PlainText.Check(nameof(Finding.Words), words(named)).ToList() is { Count: > 0 } problems
        ? new Outcome<BenchEntry>.Refused(problems)
        : new Outcome<BenchEntry>.Done(named);
}
