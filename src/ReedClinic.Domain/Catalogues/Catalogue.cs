using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Catalogues;

/// <summary>
/// What the trade knows, as data: how a reed is tried, what can be seen, what can be behind it, and what can be done. It never changes;
/// a studio’s own entries are laid over it and give another one. What was retired is still found by its id, so that old records can
/// be read.
/// </summary>
public sealed class Catalogue
{
    private readonly Dictionary<TestCardId, TestCard> tests;
    private readonly Dictionary<SignId, Sign> signs;
    private readonly Dictionary<CauseId, Cause> causes;
    private readonly Dictionary<AdjustmentKindId, AdjustmentEntry> adjustments;
    private readonly ILookup<CauseId, CauseLink> linksOfCause;
    private readonly ILookup<SignId, CauseLink> linksOfSign;

    internal Catalogue(CatalogueParts parts)
    {
        Parts = parts;
        tests = parts.Tests.ToDictionary(one => one.Id);
        signs = parts.Signs.ToDictionary(one => one.Id);
        causes = parts.Causes.ToDictionary(one => one.Id);
        adjustments = parts.Adjustments.ToDictionary(one => one.Id);
        linksOfCause = parts.Links.ToLookup(link => link.Cause);
        linksOfSign = parts.Links.ToLookup(link => link.Sign);
        Tests = [.. parts.Tests.Where(one => !one.Retired)];
        Signs = [.. parts.Signs.Where(one => !one.Retired)];
        Causes = [.. parts.Causes.Where(one => !one.Retired)];
        Adjustments = [.. parts.Adjustments.Where(one => !one.Retired)];
    }

    /// <summary>The catalogue that comes with the program.</summary>
    public static Catalogue Shipped { get; } = ShippedFiles.Load();

    /// <summary>The ways to try a reed that are in use.</summary>
    public IReadOnlyList<TestCard> Tests { get; }

    /// <summary>The signs that are in use.</summary>
    public IReadOnlyList<Sign> Signs { get; }

    /// <summary>The causes that are in use.</summary>
    public IReadOnlyList<Cause> Causes { get; }

    /// <summary>The adjustments that are in use.</summary>
    public IReadOnlyList<AdjustmentEntry> Adjustments { get; }

    /// <summary>Which cause shows itself in which sign, retired ones included.</summary>
    public IReadOnlyList<CauseLink> Links => Parts.Links;

    /// <summary>The numbers behind the words.</summary>
    public CatalogueDefaults Defaults => Parts.Defaults;

    /// <summary>What the studio added, as it is at the bench.</summary>
    public OwnKinds Own => Parts.Own;

    internal CatalogueParts Parts { get; }

    /// <summary>A way to try a reed, in use or retired.</summary>
    /// <param name="id">Its lasting name.</param>
    public TestCard? Find(TestCardId id) => id.Value is null ? null : tests.GetValueOrDefault(id);

    /// <summary>A sign, in use or retired.</summary>
    /// <param name="id">Its lasting name.</param>
    public Sign? Find(SignId id) => id.Value is null ? null : signs.GetValueOrDefault(id);

    /// <summary>A cause, in use or retired.</summary>
    /// <param name="id">Its lasting name.</param>
    public Cause? Find(CauseId id) => id.Value is null ? null : causes.GetValueOrDefault(id);

    /// <summary>An adjustment, in use or retired.</summary>
    /// <param name="id">Its lasting name.</param>
    public AdjustmentEntry? Find(AdjustmentKindId id) => id.Value is null ? null : adjustments.GetValueOrDefault(id);

    /// <summary>The signs in which a cause shows itself.</summary>
    /// <param name="cause">The cause.</param>
    public IEnumerable<CauseLink> LinksOf(CauseId cause) => linksOfCause[cause];

    /// <summary>The causes that show themselves in a sign.</summary>
    /// <param name="sign">The sign.</param>
    public IEnumerable<CauseLink> LinksOf(SignId sign) => linksOfSign[sign];

    /// <summary>This catalogue with other numbers for how often causes are met. This one stays as it is.</summary>
    /// <param name="prior">The number for each cause.</param>
    internal Catalogue WithPriors(Func<Cause, Marked<double>> prior) =>
        new(Parts with { Causes = [.. Parts.Causes.Select(cause => cause with { Prior = prior(cause) })] });

    /// <summary>What is called so, among all that can be chosen from a list; null when nothing is.</summary>
    /// <param name="name">A name, in capitals or not.</param>
    internal (string Name, bool Own)? Called(string name)
    {
        var names = Tests.Select(one => (one.Name, one.Id.Value)).Concat(Signs.Select(one => (one.Name, one.Id.Value)))
            .Concat(Causes.Select(one => (one.Name, one.Id.Value))).Concat(Adjustments.Select(one => (one.Name, one.Id.Value)))
            .Concat(FindingCatalogue.All.Select(one => (one.Name, one.Id.Value))).Concat(Own.Findings.Select(one => (one.Name, one.Id.Value)));
        return names.Where(one => one.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
            .Select(one => ((string, bool)?)(one.Name, OwnId.Is(one.Value))).FirstOrDefault();
    }

    /// <summary>This catalogue with what a studio added to the bench.</summary>
    internal Catalogue WithOwn(OwnKinds own) => new(Parts with { Own = own });

    /// <summary>This catalogue with a studio’s own changes laid over it, in their order. This one stays as it is.</summary>
    /// <param name="changes">What is added, renamed or retired.</param>
    /// <returns>The new catalogue; or what is wrong, and nothing is changed.</returns>
    public Outcome<Catalogue> With(params IReadOnlyList<CatalogueChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        List<Problem> problems = [];
        var parts = Parts;
        foreach (var change in changes)
        {
            if (change.Refusal(parts) is { } refusal)
            {
                problems.Add(new Problem(change.Target, refusal));
            }
            else
            {
                parts = change.LayOver(parts);
            }
        }

        if (problems.Count == 0)
        {
            problems.AddRange(CatalogueChecks.Of(parts, shipped: false).Select(fault => new Problem(fault.Id, fault.Sentence)));
        }

        return problems.Count > 0 ? new Outcome<Catalogue>.Refused(problems) : new Outcome<Catalogue>.Done(new Catalogue(parts));
    }
}

/// <summary>The entries that a catalogue is made of.</summary>
internal sealed record CatalogueParts(
    IReadOnlyList<TestCard> Tests,
    IReadOnlyList<Sign> Signs,
    IReadOnlyList<Cause> Causes,
    IReadOnlyList<CauseLink> Links,
    IReadOnlyList<AdjustmentEntry> Adjustments,
    CatalogueDefaults Defaults)
{
    /// <summary>What a studio added, as it is at the bench.</summary>
    internal OwnKinds Own { get; init; } = OwnKinds.None;
}
