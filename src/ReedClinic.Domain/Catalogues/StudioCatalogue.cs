using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Catalogues;

/// <summary>
/// The shipped catalogue with a studio’s own entries laid over it. Nothing that was shipped is ever changed or left out. Every number
/// behind an own entry is this program’s default, and every statement is marked as the studio’s own.
/// </summary>
public static class StudioCatalogue
{
    private static readonly EvidenceMark Said = EvidenceMark.StudioOwn;

    /// <summary>Lays a studio’s entries over the shipped catalogue.</summary>
    /// <param name="entries">All of them, retired ones included.</param>
    /// <returns>The catalogue. What doesn’t fit into it any more is left out of the reasoning, and keeps its name at the bench.</returns>
    public static Catalogue Of(IReadOnlyCollection<StudioEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        if (entries.Count == 0)
        {
            return Catalogue.Shipped;
        }

        // Adjustments first: a fault may name one among its steps.
        List<StudioEntry> ordered = [.. entries.OrderBy(one => one.Kind switch { StudioEntryKind.Adjustment => 0, StudioEntryKind.Fault => 1, _ => 2 }).ThenBy(one => one.Id.Value)];
        Dictionary<string, string> leftOut = [];
        var all = Catalogue.Shipped.With([.. ordered.SelectMany(Changes)]) is Outcome<Catalogue>.Done(var whole) ? whole : OneByOne(ordered, leftOut);
        return all.WithOwn(new OwnKinds(
            entries.Where(one => one.Found is not null).Select(one => (Finding(one), one.RetiredAt is null)),
            entries.Where(one => one.Kind == StudioEntryKind.Adjustment).Select(one => (Work(one), one.RetiredAt is null)),
            entries.Where(one => one.Kind != StudioEntryKind.Test).ToDictionary(one => one.Key, one => one.Line))
        {
            LeftOut = leftOut,
        });
    }

    // A fault may be seen by a test of the studio's own, and a test tell of such a fault: whichever rests on another waits for it.
    private static Catalogue OneByOne(List<StudioEntry> ordered, Dictionary<string, string> leftOut)
    {
        var all = Catalogue.Shipped;
        List<StudioEntry> waiting = [.. ordered];
        for (var before = -1; before != waiting.Count;)
        {
            before = waiting.Count;
            leftOut.Clear();
            foreach (var one in waiting.ToList())
            {
                switch (all.With([.. Changes(one)]))
                {
                    case Outcome<Catalogue>.Done(var more):
                        all = more;
                        waiting.Remove(one);
                        break;
                    case Outcome<Catalogue>.Refused(var problems):
                        leftOut[one.Key] = Named(problems[0].Message, ordered);
                        break;
                }
            }
        }

        return all;
    }

    // What is told to the owner says names, never ids.
    private static string Named(string sentence, List<StudioEntry> entries) =>
        entries.Aggregate(sentence, (said, one) => said.Replace($"“{one.Key}”", $"“{one.Name}”", StringComparison.Ordinal));

    private static FindingKind Finding(StudioEntry one) => new(
        new FindingKindId(one.Key), one.Found!, one.Zone, FindingCharacter.Fault, FindingShape.Spot, one.Line, Said);

    private static AdjustmentKind Work(StudioEntry one) => new(
        new AdjustmentKindId(one.Key), one.Name, one.Name, one.Zone, one.Undo!.Value, null, one.Caution!, Said);

    private static IEnumerable<CatalogueChange> Changes(StudioEntry one)
    {
        var (changes, lists) = one.Kind switch
        {
            StudioEntryKind.Fault => (Fault(one), new[] { CatalogueTable.Causes, CatalogueTable.Signs }),
            StudioEntryKind.Test => (Test(one), [CatalogueTable.Tests, CatalogueTable.Signs]),
            _ => ([new CatalogueChange.AddAdjustment(Adjustment(one))], [CatalogueTable.Adjustments]),
        };
        return one.RetiredAt is null ? changes : [.. changes, .. lists.Select(list => new CatalogueChange.Retire(list, one.Key))];
    }

    private static CatalogueChange[] Fault(StudioEntry one)
    {
        var id = new CauseId(one.Key);
        var finding = new FindingKindId(one.Key);
        var cause = new Cause(id, one.Name, finding, one.Line, Said, Number("prior", "sometimes"), one.Steps, Said, []);
        return
        [
            new CatalogueChange.AddSign(Shown(one, new TestCardId(one.SeenBy!), one.Name), []),
            new CatalogueChange.AddCause(cause, [Link(id, new SignId(one.Key), Belonging.Itself), .. one.Signs.Select(sign => Link(id, sign, Belonging.Typical))]),
        ];
    }

    private static CatalogueChange[] Test(StudioEntry one)
    {
        var (id, sign) = (new TestCardId(one.Key), new SignId(one.Key));
        return
        [
            new CatalogueChange.AddTest(new TestCard(id, one.Name, one.Line, one.Right!, one.Shows!, null, Said)),
            new CatalogueChange.AddSign(Shown(one, id, one.Shows!), [.. one.Causes.Select(cause => Link(cause, sign, Belonging.Typical))]),
        ];
    }

    private static AdjustmentEntry Adjustment(StudioEntry one) => new(
        new AdjustmentKindId(one.Key), one.Name, one.Zone, one.Undo!.Value, null, one.Caution!, Said, one.Line,
        new Marked<int>(one.Undo == Reversible.No ? CaneRisk : 1, EvidenceMark.OwnDefault),
        Enum.GetValues<EffectScale>().ToDictionary(scale => scale, _ => new Marked<EffectRange>(default, EvidenceMark.OwnDefault)),
        new Marked<bool>(false, Said), [], []);

    // What is taken off is a middling risk until the bench has shown otherwise.
    private const int CaneRisk = 3;

    private static Sign Shown(StudioEntry one, TestCardId test, string name) =>
        new(new SignId(one.Key), name, test, [new SignRoute.ByFinding(new FindingKindId(one.Key))], null, Number("unasked", "sometimes"));

    private static CauseLink Link(CauseId cause, SignId sign, Belonging belonging) =>
        new(cause, sign, belonging, Catalogue.Shipped.Defaults.StrengthOf(belonging), Said);

    private static Marked<double> Number(string of, string word) => Catalogue.Shipped.Defaults.Of(of, word)
        ?? throw new InvalidOperationException($"The program’s own catalogue has no default “{word}” for “{of}”.");
}
