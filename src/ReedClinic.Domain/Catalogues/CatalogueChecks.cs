using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Catalogues;

/// <summary>What an entry lacks.</summary>
/// <param name="Table">The list it stands in.</param>
/// <param name="Id">Its id; cause and sign for a link.</param>
/// <param name="Sentence">One plain sentence.</param>
internal readonly record struct EntryFault(CatalogueTable Table, string Id, string Sentence);

/// <summary>What must hold between the entries of a catalogue.</summary>
internal static class CatalogueChecks
{
    private const int LongestLine = 160;

    /// <summary>What is wrong.</summary>
    /// <param name="parts">The entries.</param>
    /// <param name="shipped">True where every id must also be used: a studio may note something down before it uses it.</param>
    internal static IEnumerable<EntryFault> Of(CatalogueParts parts, bool shipped) =>
        [.. Names(parts), .. Numbers(parts), .. References(parts), .. Links(parts), .. Steps(parts), .. Lines(parts), .. shipped ? Unused(parts) : []];

    private static IEnumerable<EntryFault> Names(CatalogueParts parts) =>
        from list in new[]
        {
            (Table: CatalogueTable.Tests, Names: parts.Tests.Where(one => !one.Retired).Select(one => (one.Id.Value, one.Name))),
            (Table: CatalogueTable.Signs, Names: parts.Signs.Where(one => !one.Retired).Select(one => (one.Id.Value, one.Name))),
            (Table: CatalogueTable.Causes, Names: parts.Causes.Where(one => !one.Retired).Select(one => (one.Id.Value, one.Name))),
            (Table: CatalogueTable.Adjustments, Names: parts.Adjustments.Where(one => !one.Retired).Select(one => (one.Id.Value, one.Name))),
        }
        from twice in list.Names.GroupBy(one => one.Name, StringComparer.OrdinalIgnoreCase).Where(alike => alike.Count() > 1)
        select new EntryFault(list.Table, twice.Last().Value, $"There is another entry called “{twice.Key}”.");

    private static IEnumerable<EntryFault> Numbers(CatalogueParts parts) =>
    [
        .. parts.Causes.Where(one => one.Prior.Value is not (>= 0 and < 1))
            .Select(one => new EntryFault(CatalogueTable.Causes, one.Id.Value, "How often it is met must be from 0 to below 1.")),
        .. parts.Signs.Where(one => one.Unasked.Value is not (> 0 and < 1))
            .Select(one => new EntryFault(CatalogueTable.Signs, one.Id.Value, "How often it turns up unasked must be between 0 and 1.")),
        .. parts.Links.Where(one => one.Strength.Value is not (>= 0 and < 1))
            .Select(one => new EntryFault(CatalogueTable.Links, NameOf(one), "A strength must be from 0 to below 1.")),
        .. parts.Adjustments.Where(one => one.Risk.Value is < 0 or > 5 || Enum.GetValues<EffectScale>().Any(scale => !one.Effects.ContainsKey(scale)))
            .Select(one => new EntryFault(CatalogueTable.Adjustments, one.Id.Value, "The risk must be from 0 to 5, and there must be an effect on each scale.")),
    ];

    private static IEnumerable<EntryFault> References(CatalogueParts parts)
    {
        var signs = parts.Signs.ToDictionary(sign => sign.Id);
        var tests = parts.Tests.Select(test => test.Id).ToHashSet();
        foreach (var sign in parts.Signs)
        {
            if (!tests.Contains(sign.Test))
            {
                yield return new EntryFault(CatalogueTable.Signs, sign.Id.Value, $"There is no test “{sign.Test.Value}”.");
            }

            if (sign.Opposite is { } other && (!signs.TryGetValue(other, out var opposite) || opposite.Opposite != sign.Id || other == sign.Id))
            {
                yield return new EntryFault(CatalogueTable.Signs, sign.Id.Value, $"“{other.Value}” isn’t its opposite in turn.");
            }
        }

        foreach (var (adjustment, unknown) in from one in parts.Adjustments
                                              from id in one.NotWhile.Concat(one.Unless)
                                              where !signs.ContainsKey(id)
                                              select (one, id))
        {
            yield return new EntryFault(CatalogueTable.Adjustments, adjustment.Id.Value, $"There is no sign “{unknown.Value}”.");
        }
    }

    private static IEnumerable<EntryFault> Links(CatalogueParts parts)
    {
        var signs = parts.Signs.Select(sign => sign.Id).ToHashSet();
        var causes = parts.Causes.Select(cause => cause.Id).ToHashSet();
        HashSet<(CauseId, SignId)> seen = [];
        foreach (var link in parts.Links)
        {
            if (!causes.Contains(link.Cause) || !signs.Contains(link.Sign))
            {
                yield return new EntryFault(CatalogueTable.Links, NameOf(link), $"There is no “{(causes.Contains(link.Cause) ? link.Sign.Value : link.Cause.Value)}”.");
            }

            if (!seen.Add((link.Cause, link.Sign)))
            {
                yield return new EntryFault(CatalogueTable.Links, NameOf(link), "This link stands here a second time.");
            }
        }
    }

    private static IEnumerable<EntryFault> Steps(CatalogueParts parts)
    {
        var adjustments = parts.Adjustments.Select(one => one.Id).ToHashSet();
        var linked = parts.Links.Select(link => link.Cause).ToHashSet();
        foreach (var cause in parts.Causes)
        {
            foreach (var unknown in cause.Steps.Concat(cause.NeverFirst).Where(id => !adjustments.Contains(id)))
            {
                yield return new EntryFault(CatalogueTable.Causes, cause.Id.Value, $"There is no adjustment “{unknown.Value}”.");
            }

            if (cause.Steps.Count == 0 || cause.NeverFirst.Contains(cause.Steps[0]))
            {
                yield return new EntryFault(CatalogueTable.Causes, cause.Id.Value, "It needs a first step, and that one must not be among those never to begin with.");
            }

            if (!linked.Contains(cause.Id))
            {
                yield return new EntryFault(CatalogueTable.Causes, cause.Id.Value, "It shows itself in no sign.");
            }
        }
    }

    private static IEnumerable<EntryFault> Lines(CatalogueParts parts) =>
        from line in parts.Causes.Select(one => (Table: CatalogueTable.Causes, one.Id.Value, Text: one.Line))
            .Concat(parts.Adjustments.Select(one => (Table: CatalogueTable.Adjustments, one.Id.Value, Text: one.Does)))
            .Concat(parts.Adjustments.Select(one => (Table: CatalogueTable.Adjustments, one.Id.Value, Text: one.Caution)))
        where line.Text.Length is 0 or > LongestLine || !char.IsUpper(line.Text[0]) || !line.Text.EndsWith('.')
        select new EntryFault(line.Table, line.Value, $"“{line.Text}” must be a whole sentence of at most {LongestLine} characters.");

    private static IEnumerable<EntryFault> Unused(CatalogueParts parts)
    {
        var tests = parts.Signs.Select(sign => sign.Test).ToHashSet();
        var signs = parts.Links.Select(link => link.Sign).ToHashSet();
        var steps = parts.Causes.SelectMany(cause => cause.Steps.Concat(cause.NeverFirst)).ToHashSet();
        var told = parts.Signs.SelectMany(sign => sign.KnownBy).Select(route => route switch
        {
            SignRoute.ByFinding finding => finding.Finding,
            SignRoute.ByStrength strength => strength.Finding,
            _ => FindingKindId.SomethingElse,
        }).ToHashSet();
        return
        [
            .. parts.Tests.Where(one => !tests.Contains(one.Id)).Select(one => new EntryFault(CatalogueTable.Tests, one.Id.Value, "No sign shows by this test.")),
            .. parts.Signs.Where(one => !signs.Contains(one.Id)).Select(one => new EntryFault(CatalogueTable.Signs, one.Id.Value, "No cause shows itself in this sign.")),
            .. parts.Adjustments.Where(one => !steps.Contains(one.Id) && !one.ByChoice.Value)
                .Select(one => new EntryFault(CatalogueTable.Adjustments, one.Id.Value, "No cause asks for it or warns of it.")),
            .. AdjustmentCatalogue.All.Where(kind => parts.Adjustments.All(one => one.Id != kind.Id))
                .Select(kind => new EntryFault(CatalogueTable.Adjustments, kind.Id.Value, "The bench log knows this adjustment, and the catalogue doesn’t.")),
            .. FindingCatalogue.All.Where(kind => kind.Usually != FindingCharacter.Taste && !told.Contains(kind.Id))
                .Select(kind => new EntryFault(CatalogueTable.Signs, kind.Id.Value, "This finding tells of no sign.")),
        ];
    }

    internal static string NameOf(CauseLink link) => $"{link.Cause.Value} {link.Sign.Value}";
}
