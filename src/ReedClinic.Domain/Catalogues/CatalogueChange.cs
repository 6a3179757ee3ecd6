using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Catalogues;

/// <summary>One thing in which a studio’s catalogue differs from the one that comes with the program.</summary>
public abstract record CatalogueChange
{
    private const int LongestName = 80;

    private CatalogueChange()
    {
    }

    /// <summary>The id that is changed or added.</summary>
    public abstract string Target { get; }

    /// <summary>Why it can’t be laid over these entries; null when it can.</summary>
    internal abstract string? Refusal(CatalogueParts parts);

    /// <summary>The entries with this change.</summary>
    internal abstract CatalogueParts LayOver(CatalogueParts parts);

    private static string? TakenOr(bool taken, string id) => taken ? $"There is an entry “{id}” already; retired ones keep their id." : null;

    private static string? UnknownOr(bool known, string id) => known ? null : $"There is no entry “{id}”.";

    private static T[] Changed<T>(IReadOnlyList<T> list, Func<T, bool> which, Func<T, T> change) => [.. list.Select(one => which(one) ? change(one) : one)];

    /// <summary>A cause of the studio’s own.</summary>
    /// <param name="Cause">The cause.</param>
    /// <param name="Links">The signs in which it shows itself.</param>
    public sealed record AddCause(Cause Cause, IReadOnlyList<CauseLink> Links) : CatalogueChange
    {
        /// <inheritdoc/>
        public override string Target => Cause.Id.Value;

        internal override string? Refusal(CatalogueParts parts) => TakenOr(parts.Causes.Any(one => one.Id == Cause.Id), Target)
            ?? (Links.All(link => link.Cause == Cause.Id) ? null : "Every link of a new cause must be its own.");

        internal override CatalogueParts LayOver(CatalogueParts parts) =>
            parts with { Causes = [.. parts.Causes, Cause], Links = [.. parts.Links, .. Links] };
    }

    /// <summary>A sign of the studio’s own.</summary>
    /// <param name="Sign">The sign.</param>
    /// <param name="Links">The causes that show themselves in it.</param>
    public sealed record AddSign(Sign Sign, IReadOnlyList<CauseLink> Links) : CatalogueChange
    {
        /// <inheritdoc/>
        public override string Target => Sign.Id.Value;

        internal override string? Refusal(CatalogueParts parts) => TakenOr(parts.Signs.Any(one => one.Id == Sign.Id), Target)
            ?? (Links.All(link => link.Sign == Sign.Id) ? null : "Every link of a new sign must be its own.");

        internal override CatalogueParts LayOver(CatalogueParts parts) =>
            parts with { Signs = [.. parts.Signs, Sign], Links = [.. parts.Links, .. Links] };
    }

    /// <summary>A way to try a reed of the studio’s own.</summary>
    /// <param name="Test">The test.</param>
    public sealed record AddTest(TestCard Test) : CatalogueChange
    {
        /// <inheritdoc/>
        public override string Target => Test.Id.Value;

        internal override string? Refusal(CatalogueParts parts) => TakenOr(parts.Tests.Any(one => one.Id == Test.Id), Target);

        internal override CatalogueParts LayOver(CatalogueParts parts) => parts with { Tests = [.. parts.Tests, Test] };
    }

    /// <summary>An adjustment of the studio’s own.</summary>
    /// <param name="Adjustment">The adjustment.</param>
    public sealed record AddAdjustment(AdjustmentEntry Adjustment) : CatalogueChange
    {
        /// <inheritdoc/>
        public override string Target => Adjustment.Id.Value;

        internal override string? Refusal(CatalogueParts parts) => TakenOr(parts.Adjustments.Any(one => one.Id == Adjustment.Id), Target);

        internal override CatalogueParts LayOver(CatalogueParts parts) => parts with { Adjustments = [.. parts.Adjustments, Adjustment] };
    }

    /// <summary>Another name for an entry; its id stays.</summary>
    /// <param name="Table">Which list.</param>
    /// <param name="Target">The id.</param>
    /// <param name="Name">The new name.</param>
    public sealed record Rename(CatalogueTable Table, string Target, string Name) : CatalogueChange
    {
        /// <inheritdoc/>
        public override string Target { get; } = Target;

        internal override string? Refusal(CatalogueParts parts) => UnknownOr(Has(parts, Table, Target), Target)
            ?? PlainText.CheckRequired(Target, Name, "Give it a name.", LongestName).Select(problem => problem.Message).FirstOrDefault();

        internal override CatalogueParts LayOver(CatalogueParts parts)
        {
            var name = Name.Trim();
            return Table switch
            {
                CatalogueTable.Tests => parts with { Tests = Changed(parts.Tests, one => one.Id.Value == Target, one => one with { Name = name }) },
                CatalogueTable.Signs => parts with { Signs = Changed(parts.Signs, one => one.Id.Value == Target, one => one with { Name = name }) },
                CatalogueTable.Causes => parts with { Causes = Changed(parts.Causes, one => one.Id.Value == Target, one => one with { Name = name }) },
                _ => parts with { Adjustments = Changed(parts.Adjustments, one => one.Id.Value == Target, one => one with { Name = name }) },
            };
        }
    }

    /// <summary>An entry that the studio no longer uses; it is still found by its id.</summary>
    /// <param name="Table">Which list.</param>
    /// <param name="Target">The id.</param>
    public sealed record Retire(CatalogueTable Table, string Target) : CatalogueChange
    {
        /// <inheritdoc/>
        public override string Target { get; } = Target;

        internal override string? Refusal(CatalogueParts parts) => UnknownOr(Has(parts, Table, Target), Target);

        internal override CatalogueParts LayOver(CatalogueParts parts) => Table switch
        {
            CatalogueTable.Tests => parts with { Tests = Changed(parts.Tests, one => one.Id.Value == Target, one => one with { Retired = true }) },
            CatalogueTable.Signs => parts with { Signs = Changed(parts.Signs, one => one.Id.Value == Target, one => one with { Retired = true }) },
            CatalogueTable.Causes => parts with { Causes = Changed(parts.Causes, one => one.Id.Value == Target, one => one with { Retired = true }) },
            _ => parts with { Adjustments = Changed(parts.Adjustments, one => one.Id.Value == Target, one => one with { Retired = true }) },
        };
    }

    private static bool Has(CatalogueParts parts, CatalogueTable table, string id) => table switch
    {
        CatalogueTable.Tests => parts.Tests.Any(one => one.Id.Value == id),
        CatalogueTable.Signs => parts.Signs.Any(one => one.Id.Value == id),
        CatalogueTable.Causes => parts.Causes.Any(one => one.Id.Value == id),
        _ => parts.Adjustments.Any(one => one.Id == new AdjustmentKindId(id)),
    };
}

/// <summary>The lists of a catalogue.</summary>
public enum CatalogueTable
{
    /// <summary>Ways to try a reed.</summary>
    Tests,

    /// <summary>What can be seen, heard or felt.</summary>
    Signs,

    /// <summary>What can be behind it.</summary>
    Causes,

    /// <summary>What can be done.</summary>
    Adjustments,

    /// <summary>Which cause shows itself in which sign.</summary>
    Links,
}
